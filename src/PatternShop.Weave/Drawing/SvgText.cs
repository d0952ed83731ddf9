using System.Globalization;
using System.Text;

namespace PatternShop.Weave;

/// <summary>Writes a drawing as SVG text, one unit a millimetre.</summary>
public static class SvgText
{
    /// <summary>
    /// A complete SVG document with a title and a description. Neighbouring shapes of one tone share a path, so that a
    /// chart is a few elements and never one a cell. It carries no style sheet and no script.
    /// </summary>
    /// <param name="drawing">What to write.</param>
    /// <param name="title">The picture's name; escaped.</param>
    /// <param name="description">What the picture shows; escaped.</param>
    /// <param name="id">Prefix of the ids inside, unique on the page where it stands.</param>
    public static string Of(Drawing drawing, string title, string description, string id)
    {
        ArgumentNullException.ThrowIfNull(drawing);
        var svg = new StringBuilder();
        var (width, height) = (Number(drawing.Width), Number(drawing.Height));
        svg.Append(CultureInfo.InvariantCulture, $"<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"img\" aria-labelledby=\"{id}-title {id}-desc\" viewBox=\"0 0 {width} {height}\" width=\"{width}mm\" height=\"{height}mm\">")
            .Append(CultureInfo.InvariantCulture, $"<title id=\"{id}-title\">{Escape(title)}</title><desc id=\"{id}-desc\">{Escape(description)}</desc>")
            .Append("<g font-family=\"'Atkinson Hyperlegible Next',sans-serif\">");
        for (var at = 0; at < drawing.Shapes.Count;)
        {
            at = drawing.Shapes[at] switch
            {
                Line line => WriteLines(svg, drawing.Shapes, at, line),
                Strip strip => WriteStrips(svg, drawing.Shapes, at, strip),
                Label label => WriteLabel(svg, label, at),
                var shape => WriteFilled(svg, drawing.Shapes, at, ShadeOf(shape)),
            };
        }

        return svg.Append("</g></svg>\n").ToString();
    }

    private static int WriteLines(StringBuilder svg, Sequence<Shape> shapes, int at, Line first)
    {
        svg.Append(CultureInfo.InvariantCulture, $"<path stroke=\"{Colour(first.Shade)}\" stroke-width=\"{Number(first.Thickness)}\" d=\"");
        for (; at < shapes.Count && shapes[at] is Line line && line.Shade == first.Shade && line.Thickness == first.Thickness; at++)
        {
            svg.Append('M').Append(Number(line.X1)).Append(' ').Append(Number(line.Y1));
            _ = line.X1 == line.X2
                ? svg.Append('V').Append(Number(line.Y2))
                : line.Y1 == line.Y2
                    ? svg.Append('H').Append(Number(line.X2))
                    : svg.Append('L').Append(Number(line.X2)).Append(' ').Append(Number(line.Y2));
        }

        svg.Append("\"/>");
        return at;
    }

    private static int WriteStrips(StringBuilder svg, Sequence<Shape> shapes, int at, Strip first)
    {
        svg.Append(CultureInfo.InvariantCulture, $"<path stroke=\"{first.OnScreen.Text}\" stroke-width=\"{Number(first.Thickness)}\" d=\"");
        for (; at < shapes.Count && shapes[at] is Strip strip && (strip.Shade, strip.Colour, strip.Thickness) == (first.Shade, first.Colour, first.Thickness); at++)
        {
            svg.Append('M').Append(Number(strip.X1)).Append(' ').Append(Number(strip.Y1));
            _ = strip.X1 == strip.X2 ? svg.Append('V').Append(Number(strip.Y2)) : svg.Append('H').Append(Number(strip.X2));
        }

        svg.Append("\"/>");
        return at;
    }

    private static int WriteFilled(StringBuilder svg, Sequence<Shape> shapes, int at, Shade shade)
    {
        svg.Append(CultureInfo.InvariantCulture, $"<path fill=\"{Colour(shade)}\" d=\"");
        for (; at < shapes.Count && shapes[at] is Box or Triangle && ShadeOf(shapes[at]) == shade; at++)
        {
            _ = shapes[at] switch
            {
                Box box => svg.Append('M').Append(Number(box.X)).Append(' ').Append(Number(box.Y)).Append('h').Append(Number(box.Width))
                    .Append('v').Append(Number(box.Height)).Append('h').Append(Number(-box.Width)).Append('z'),
                Triangle t => svg.Append('M').Append(Number(t.X1)).Append(' ').Append(Number(t.Y1)).Append('L').Append(Number(t.X2)).Append(' ')
                    .Append(Number(t.Y2)).Append('L').Append(Number(t.X3)).Append(' ').Append(Number(t.Y3)).Append('z'),
                _ => svg,
            };
        }

        svg.Append("\"/>");
        return at;
    }

    private static int WriteLabel(StringBuilder svg, Label label, int at)
    {
        var anchor = label.Anchor switch { TextAnchor.Start => "start", TextAnchor.Middle => "middle", _ => "end" };
        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{Number(label.X)}\" y=\"{Number(label.Y)}\" font-size=\"{Number(label.Size)}\" text-anchor=\"{anchor}\"")
            .Append(label.Bold ? " font-weight=\"700\"" : "")
            .Append(CultureInfo.InvariantCulture, $" fill=\"{Colour(label.Shade)}\">{Escape(label.Text)}</text>");
        return at + 1;
    }

    private static Shade ShadeOf(Shape shape) => shape switch
    {
        Box box => box.Shade,
        Triangle triangle => triangle.Shade,
        _ => throw new InvalidOperationException($"No rule for {shape.GetType().Name}."),
    };

    private static string Colour(Shade shade) => shade switch
    {
        Shade.White => "#fff",
        Shade.Light => "#ccc",
        Shade.Middle => "#595959",
        Shade.Dark => "#2b2b2b",
        _ => "#111",
    };

    private static string Number(double value) => Math.Round(value, 3).ToString("0.###", CultureInfo.InvariantCulture);

    private static string Escape(string text)
    {
        var escaped = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            _ = c switch
            {
                '&' => escaped.Append("&amp;"),
                '<' => escaped.Append("&lt;"),
                '>' => escaped.Append("&gt;"),
                '"' => escaped.Append("&quot;"),
                '\'' => escaped.Append("&#39;"),
                _ => escaped.Append(c),
            };
        }

        return escaped.ToString();
    }
}
