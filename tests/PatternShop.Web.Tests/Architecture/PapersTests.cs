using System.Text.Json;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The map, the reasons for dependencies and the notices name what is really there.</summary>
public sealed class PapersTests
{
    [Fact]
    public void The_map_names_every_room_and_folder()
    {
        var folders = Folders(Checkout.Files).ToList();
        Assert.Contains("PatternShop.Weave/Piece", folders, StringComparer.Ordinal);
        Assert.Empty(NotOnMap(folders, File.ReadAllText(Checkout.Path("DEVELOPERS.md"))));
    }

    [Fact]
    public void The_map_says_why_each_package_is_there()
    {
        var packages = Checkout.ProjectFiles.Append("Directory.Build.props").SelectMany(file => ProjectFile.Load(file).Packages).Distinct(StringComparer.Ordinal).ToList();
        Assert.Contains("PDFsharp", packages, StringComparer.Ordinal);
        Assert.Empty(WithoutRow(packages.Where(package => package != "Microsoft.AspNetCore.App"), File.ReadAllText(Checkout.Path("DEVELOPERS.md"))));
    }

    [Fact]
    public void The_notices_name_every_package_that_ships()
    {
        var shipped = Shipped(File.ReadAllText(Checkout.Path("src/PatternShop.Web/obj/project.assets.json")));
        Assert.Contains("MudBlazor", shipped, StringComparer.Ordinal);
        Assert.Empty(NotNamed(shipped, File.ReadAllText(Checkout.Path("THIRD-PARTY-NOTICES.md"))));
    }

    [Fact]
    public void What_is_left_out_is_seen()
    {
        Assert.Equal(["PatternShop.Weave/Piece"], NotOnMap(["PatternShop.Weave/Grid", "PatternShop.Weave/Piece"], "**src/PatternShop.Weave**\n- `Grid/` cells"));
        Assert.Equal(["CsCheck"], WithoutRow(["CsCheck", "bunit"], "CsCheck is fine\n| bunit | MIT | components |"));
        Assert.Equal(["QRCoder"], NotNamed(["QRCoder", "PDFsharp"], "| PDFsharp | MIT |"));
        Assert.Equal(["Runs"], Shipped("""{"targets":{"net10.0":{"Runs/1":{"type":"package","runtime":{"a.dll":{}}},"Builds/1":{"type":"package"},"Empty/1":{"type":"package","runtime":{"lib/_._":{}}}}}}"""));
    }

    private static IEnumerable<string> Folders(IEnumerable<string> files) =>
        files.Select(file => file.Split('/')).Where(parts => parts is ["src", _, not "Properties", _, ..]).Select(parts => $"{parts[1]}/{parts[2]}").Distinct(StringComparer.Ordinal);

    private static List<string> NotOnMap(IEnumerable<string> folders, string map)
    {
        // a room's part of the map reaches to the next name in bold
        var rooms = map.Split("\n**", StringSplitOptions.None).Select(part => part.TrimStart('*')).ToList();
        return
        [
            .. from folder in folders
               let parts = folder.Split('/')
               where !rooms.Exists(room => room.StartsWith($"src/{parts[0]}**", StringComparison.Ordinal) && room.Contains($"`{parts[1]}/`", StringComparison.Ordinal))
               select folder,
        ];
    }

    private static List<string> WithoutRow(IEnumerable<string> packages, string map) =>
        [.. packages.Where(package => !map.Contains($"| {package} | ", StringComparison.Ordinal))];

    private static List<string> NotNamed(IEnumerable<string> packages, string notices) =>
        [.. packages.Where(package => !notices.Split(['|', ',', '\n'], StringSplitOptions.TrimEntries).Contains(package, StringComparer.Ordinal))];

    private static List<string> Shipped(string assets)
    {
        using var json = JsonDocument.Parse(assets);
        return
        [
            .. from target in json.RootElement.GetProperty("targets").EnumerateObject()
               from library in target.Value.EnumerateObject()
               where library.Value.GetProperty("type").GetString() == "package"
               where library.Value.TryGetProperty("runtime", out var files) && files.EnumerateObject().Any(file => !file.Name.EndsWith("_._", StringComparison.Ordinal))
               select library.Name[..library.Name.IndexOf('/', StringComparison.Ordinal)],
        ];
    }
}
