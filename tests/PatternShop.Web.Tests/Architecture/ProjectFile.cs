using System.Xml.Linq;
using PatternShop.Tests.Shared;

namespace PatternShop.Web.Tests;

/// <summary>What stands in a project file.</summary>
internal sealed record ProjectFile(string Name, IReadOnlyList<string> Projects, IReadOnlyList<string> Packages, XDocument Text)
{
    public static ProjectFile Load(string relative) =>
        Parse(Path.GetFileNameWithoutExtension(relative), XDocument.Load(Checkout.Path(relative)));

    public static ProjectFile Parse(string name, XDocument text) => new(
        name,
        [.. Included(text, "ProjectReference").Select(path => Path.GetFileNameWithoutExtension(path.Replace('\\', '/')))],
        [.. Included(text, "PackageReference"), .. Included(text, "FrameworkReference")],
        text);

    /// <summary>Everything that the project refers to.</summary>
    public IEnumerable<string> References => Projects.Concat(Packages);

    /// <summary>Whether a property is set here.</summary>
    public bool Sets(string property) => Text.Descendants(property).Any();

    private static IEnumerable<string> Included(XDocument text, string item) =>
        text.Descendants(item).Select(element => (string?)element.Attribute("Include")).OfType<string>();
}
