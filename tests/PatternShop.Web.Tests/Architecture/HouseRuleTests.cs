using System.Text.Json;
using System.Xml.Linq;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>Every project keeps the rules that stand in Directory.Build.props.</summary>
public sealed class HouseRuleTests
{
    private static readonly string[] HouseProperties =
        ["TreatWarningsAsErrors", "WarningsNotAsErrors", "NoWarn", "Nullable", "AnalysisLevel", "LangVersion", "RunAnalyzers", "RestorePackagesWithLockFile"];

    public static TheoryData<string> ProjectFiles => [.. Checkout.ProjectFiles];

    [Theory]
    [MemberData(nameof(ProjectFiles))]
    public void Warnings_are_errors_and_versions_are_locked(string file)
    {
        var folder = Checkout.Path(Path.GetDirectoryName(file)!);
        Assert.True(WarnsWithErrors(File.ReadAllText(Path.Combine(folder, "obj", "project.assets.json"))));
        Assert.True(File.Exists(Path.Combine(folder, "packages.lock.json")));
    }

    [Theory]
    [MemberData(nameof(ProjectFiles))]
    public void No_project_makes_rules_of_its_own(string file) => Assert.Empty(OwnRules(ProjectFile.Load(file)));

    [Theory]
    [MemberData(nameof(ProjectFiles))]
    public void Every_project_stands_in_the_solution(string file) =>
        Assert.Contains(file.Replace('/', '\\'), File.ReadAllText(Checkout.Path("PatternShop.sln")), StringComparison.Ordinal);

    [Fact]
    public void The_properties_of_a_folder_add_to_those_of_the_house() =>
        Assert.All(
            Checkout.Files.Where(file => Path.GetFileName(file) == "Directory.Build.props" && file != "Directory.Build.props"),
            file => Assert.Single(XDocument.Load(Checkout.Path(file)).Descendants("Import")));

    [Fact]
    public void Each_rule_can_be_broken()
    {
        var loose = XDocument.Parse("<Project><PropertyGroup><NoWarn>RS0030</NoWarn></PropertyGroup><ItemGroup><PackageReference Include=\"X\" Version=\"1\" /></ItemGroup></Project>");
        Assert.Equal(["NoWarn", "a version of its own: X"], OwnRules(ProjectFile.Parse("Loose", loose)));
        Assert.False(WarnsWithErrors("""{ "project": { "restore": { "warningProperties": { "warnAsError": [ "NU1605" ] } } } }"""));
    }

    private static List<string> OwnRules(ProjectFile project) =>
    [
        .. HouseProperties.Where(project.Sets),
        .. from package in project.Text.Descendants("PackageReference")
           where package.Attribute("Version") is not null || package.Attribute("VersionOverride") is not null
           select $"a version of its own: {(string?)package.Attribute("Include")}",
    ];

    private static bool WarnsWithErrors(string assets)
    {
        using var json = JsonDocument.Parse(assets);
        var warnings = json.RootElement.GetProperty("project").GetProperty("restore").GetProperty("warningProperties");
        return warnings.TryGetProperty("allWarningsAsErrors", out var all) && all.GetBoolean();
    }
}
