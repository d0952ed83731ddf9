using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Text.Json;
using System.Xml.Linq;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The arrows between the rooms, in the project files, in the assemblies, and in what the compiler is shown.</summary>
public sealed class ArrowTests
{
    public static TheoryData<string> ProjectFiles => [.. Checkout.ProjectFiles];

    [Fact]
    public void Every_project_has_a_rule_and_every_rule_a_project() =>
        Assert.Equal(
            Rooms.Names.Order(StringComparer.Ordinal),
            Checkout.ProjectFiles.Select(file => Path.GetFileNameWithoutExtension(file)!).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(ProjectFiles))]
    public void Project_files_keep_the_arrows(string file)
    {
        var project = ProjectFile.Load(file);
        Assert.Empty(Rooms.Faults(project.Name, project.References));
    }

    [Theory]
    [InlineData("PatternShop.Weave")]
    [InlineData("PatternShop.Print")]
    [InlineData("PatternShop.Store")]
    [InlineData("PatternShop.Web")]
    public void Assemblies_keep_the_arrows(string name)
    {
        var references = ReferencesOf(Path.Combine(AppContext.BaseDirectory, name + ".dll"));
        Assert.Contains("System.Runtime", references, StringComparer.Ordinal);
        Assert.Empty(Rooms.Faults(name, references));
    }

    [Fact]
    public void The_engine_has_no_package() => Assert.Empty(ProjectFile.Load("src/PatternShop.Weave/PatternShop.Weave.csproj").References);

    [Theory]
    [MemberData(nameof(ProjectFiles))]
    public void What_the_compiler_is_shown_keeps_the_arrows(string file)
    {
        var shown = ShownToCompiler(File.ReadAllText(AssetsOf(file)));
        Assert.Empty(Rooms.Faults(Path.GetFileNameWithoutExtension(file), shown.Where(IsPackage)));
    }

    [Theory]
    [InlineData("PatternShop.Print", "../PatternShop.Store/PatternShop.Store.csproj", "PatternShop.Print must not know PatternShop.Store")]
    [InlineData("PatternShop.Store", """..\PatternShop.Print\PatternShop.Print.csproj""", "PatternShop.Store must not know PatternShop.Print")]
    [InlineData("PatternShop.Weave", "../PatternShop.Print/PatternShop.Print.csproj", "PatternShop.Weave must not know PatternShop.Print")]
    [InlineData("PatternShop.EndToEnd", "../../src/PatternShop.Web/PatternShop.Web.csproj", "PatternShop.EndToEnd must not know PatternShop.Web")]
    public void An_arrow_the_wrong_way_is_seen(string name, string reference, string fault)
    {
        var text = new XDocument(new XElement("Project", new XElement("ItemGroup", new XElement("ProjectReference", new XAttribute("Include", reference)))));
        Assert.Equal([fault], Rooms.Faults(name, ProjectFile.Parse(name, text).References));
    }

    [Fact]
    public void A_project_without_a_rule_is_seen() => Assert.Single(Rooms.Faults("PatternShop.Cellar", []));

    [Fact]
    public void An_assembly_that_knows_too_much_is_seen() =>
        Assert.Contains("PatternShop.Weave must not know PatternShop.Tests.Shared", Rooms.Faults("PatternShop.Weave", ReferencesOf(typeof(ArrowTests).Assembly.Location)), StringComparer.Ordinal);

    [Theory]
    [InlineData("lib/net10.0/Microsoft.EntityFrameworkCore.dll", 1)]
    [InlineData("lib/net10.0/_._", 0)]
    public void A_database_library_that_the_compiler_is_shown_is_seen(string file, int faults)
    {
        var assets = $$"""
            { "targets": { "net10.0": { "Microsoft.EntityFrameworkCore/10.0.15": { "type": "package", "compile": { "{{file}}": {} }, "runtime": { "{{file}}": {} } } } } }
            """;
        Assert.Equal(faults, Rooms.Faults("PatternShop.Web", ShownToCompiler(assets)).Count);
    }

    private static bool IsPackage(string name) => !name.StartsWith("PatternShop.", StringComparison.Ordinal);

    private static string AssetsOf(string projectFile) =>
        Path.Combine(Checkout.Path(Path.GetDirectoryName(projectFile)!), "obj", "project.assets.json");

    private static List<string> ReferencesOf(string assemblyFile)
    {
        using var file = File.OpenRead(assemblyFile);
        using var image = new PEReader(file);
        var reader = image.GetMetadataReader();
        return [.. reader.AssemblyReferences.Select(handle => reader.GetString(reader.GetAssemblyReference(handle).Name))];
    }

    // "_._" stands where a package has nothing for the compiler, or where it is kept from it
    private static List<string> ShownToCompiler(string assets)
    {
        using var json = JsonDocument.Parse(assets);
        return
        [
            .. from target in json.RootElement.GetProperty("targets").EnumerateObject()
               from library in target.Value.EnumerateObject()
               where library.Value.TryGetProperty("compile", out var files) && files.EnumerateObject().Any(file => !file.Name.EndsWith("_._", StringComparison.Ordinal))
               select library.Name[..library.Name.IndexOf('/', StringComparison.Ordinal)],
        ];
    }
}
