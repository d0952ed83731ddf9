using System.Xml.Linq;

namespace PatternShop.Web.Tests;

/// <summary>Reads an SVG file as another program would.</summary>
internal static class Svg
{
    private static readonly XNamespace Space = "http://www.w3.org/2000/svg";

    /// <summary>Everything that may stand in a picture of ours.</summary>
    private static readonly HashSet<string> Known = new(StringComparer.Ordinal) { "svg", "title", "desc", "g", "path", "text" };

    /// <summary>The texts of a picture, in order.</summary>
    public static IReadOnlyList<string> Texts(string svg) => [.. XDocument.Parse(svg).Descendants(Space + "text").Select(text => text.Value)];

    /// <summary>Elements and attributes that a picture of ours never has.</summary>
    public static IReadOnlyList<string> Strange(string svg)
    {
        var elements = XDocument.Parse(svg).Descendants().ToList();
        return
        [
            .. elements.Where(element => element.Name.Namespace != Space || !Known.Contains(element.Name.LocalName)).Select(element => element.Name.LocalName),
            .. elements.Attributes().Where(attribute => attribute.Name.LocalName is "style" or "href" || attribute.Name.LocalName.StartsWith("on", StringComparison.Ordinal)).Select(attribute => attribute.Name.LocalName),
        ];
    }
}
