using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace PatternShop.Weave.Tests;

/// <summary>A text of a picture.</summary>
internal sealed record PictureText(double X, double Y, double Size, string Text, string Anchor, bool Bold);

/// <summary>A straight line of a picture.</summary>
internal sealed record PictureLine(double X1, double Y1, double X2, double Y2, double Thickness, string Colour);

/// <summary>An SVG picture as an eye meets it: what colour is at a point, which words stand where. Made for charts: filled boxes and triangles, straight lines, texts.</summary>
internal sealed partial class SvgPicture
{
    public const string Paper = "#fff";
    private readonly List<(Func<double, double, bool> Covers, string Colour)> _paint = [];

    private SvgPicture(XDocument document)
    {
        Document = document;
        foreach (var element in document.Descendants())
        {
            switch (element.Name.LocalName)
            {
                case "path" when element.Attribute("stroke") is { } stroke:
                    AddLines(element.Attribute("d")!.Value, Number(element.Attribute("stroke-width")!.Value), stroke.Value);
                    break;
                case "path":
                    AddFilled(element.Attribute("d")!.Value, element.Attribute("fill")!.Value);
                    break;
                case "text":
                    Texts.Add(ReadText(element));
                    break;
            }
        }
    }

    public XDocument Document { get; }

    public List<PictureText> Texts { get; } = [];

    public List<PictureLine> Lines { get; } = [];

    /// <summary>Middles of the triangles, at which arrows point.</summary>
    public List<(double TipX, double TipY)> Arrows { get; } = [];

    public static SvgPicture Parse(string svg) => new(XDocument.Parse(svg, LoadOptions.PreserveWhitespace));

    /// <summary>The colour that was painted last at a point.</summary>
    public string ColourAt(double x, double y) => _paint.FindLast(mark => mark.Covers(x, y)).Colour;

    private void AddLines(string path, double thickness, string colour)
    {
        foreach (Match match in LinePath().Matches(path))
        {
            var (x1, y1) = (Number(match.Groups["x"].Value), Number(match.Groups["y"].Value));
            var (a, b) = (Number(match.Groups["a"].Value), match.Groups["b"].Success ? Number(match.Groups["b"].Value) : 0);
            var (x2, y2) = match.Groups["how"].Value switch { "H" => (a, y1), "V" => (x1, a), _ => (a, b) };
            Lines.Add(new PictureLine(x1, y1, x2, y2, thickness, colour));
            var (left, right, top, bottom) = x1 == x2
                ? (x1 - (thickness / 2), x1 + (thickness / 2), Math.Min(y1, y2), Math.Max(y1, y2))
                : (Math.Min(x1, x2), Math.Max(x1, x2), y1 - (thickness / 2), y1 + (thickness / 2));
            _paint.Add(((x, y) => x >= left && x <= right && y >= top && y <= bottom, colour));
        }
    }

    private void AddFilled(string path, string colour)
    {
        foreach (Match match in FilledPath().Matches(path))
        {
            var (x, y) = (Number(match.Groups["x"].Value), Number(match.Groups["y"].Value));
            if (match.Groups["w"].Success)
            {
                var (right, bottom) = (x + Number(match.Groups["w"].Value), y + Number(match.Groups["h"].Value));
                _paint.Add(((px, py) => px >= x && px <= right && py >= y && py <= bottom, colour));
            }
            else
            {
                Arrows.Add((x, y));
            }
        }
    }

    private static PictureText ReadText(XElement element) => new(
        Number(element.Attribute("x")!.Value),
        Number(element.Attribute("y")!.Value),
        Number(element.Attribute("font-size")!.Value),
        element.Value,
        element.Attribute("text-anchor")!.Value,
        element.Attribute("font-weight") is not null);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    [GeneratedRegex("M(?<x>[-0-9.]+) (?<y>[-0-9.]+)(?<how>[HVL])(?<a>[-0-9.]+)( (?<b>[-0-9.]+))?", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex LinePath();

    [GeneratedRegex("M(?<x>[-0-9.]+) (?<y>[-0-9.]+)(h(?<w>[-0-9.]+)v(?<h>[-0-9.]+)h[-0-9.]+|(L[-0-9.]+ [-0-9.]+){2})z", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex FilledPath();
}
