using PatternShop.Weave;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.UniversalAccessibility;

namespace PatternShop.Print;

/// <summary>Paints planned pages into a tagged PDF file.</summary>
internal sealed class Painter : IDisposable
{
    private const double PointsPerMillimetre = 72 / 25.4;

    private readonly PdfDocument _file = new();
    private readonly UAManager _accessibility;
    private readonly TagWriter _tags;
    private readonly UsedCharacters _used = new();
    private readonly Bookmarks _bookmarks;
    private readonly Dictionary<(Typeface Face, double Points, XFontStyleEx Style), XFont> _fonts = [];
    private XGraphics? _page;

    private Painter()
    {
        _file.Options.ColorMode = PdfColorMode.Undefined;
        // what is written first is read back and packed by ourselves
        _file.Options.NoCompression = true;
        _file.Options.CompressContentStreams = false;
        _accessibility = UAManager.ForDocument(_file);
        _tags = new TagWriter(_accessibility);
        _bookmarks = new Bookmarks(_file.Outlines);
    }

    /// <summary>The file of a plan. The same plan gives the same bytes.</summary>
    public static byte[] Paint(PrintPlan plan)
    {
        HouseFonts.Install();
        using var painter = new Painter();
        foreach (var page in plan.Pages)
        {
            painter.PaintPage(page, plan.Paper);
        }

        painter._tags.CloseAll();
        painter._page?.Dispose();
        painter._page = null;
        return FinishedFile.Of(painter._file, plan.Facts, painter._used);
    }

    public void Dispose()
    {
        _page?.Dispose();
        _file.Dispose();
    }

    private void PaintPage(PagePlan plan, Paper paper)
    {
        _page?.Dispose();
        var page = _file.AddPage();
        page.Width = XUnit.FromMillimeter(paper.Width);
        page.Height = XUnit.FromMillimeter(paper.Height);
        _page = XGraphics.FromPdfPage(page);
        _page.Save();
        _tags.BeginPage(page, plan, paper);
        foreach (var item in plan.Items)
        {
            _bookmarks.Meet(item, page, paper);
            PaintItem(item);
        }

        _tags.EndPage();
    }

    private void PaintItem(Placed item)
    {
        _tags.Enter(item.Tag, item.Mark is TextMark, () => DrawText(new TextMark(item.Mark.X, item.Mark.Y, Blank, BlankStyle)));
        switch (item.Mark)
        {
            case TextMark text:
                DrawText(text);
                break;
            case AreaMark area:
                _page!.DrawPath(Brush(area.Grey), Outlines(area.X, area.Y, area.Outlines));
                break;
            case StrokeMark stroke:
                DrawStrokes(stroke, Pen(stroke.Grey, stroke.Width));
                break;
            default:
                throw new InvalidOperationException($"No way to paint {item.Mark.GetType().Name}.");
        }
    }

    private static TextPiece Blank { get; } = new(" ", Typeface.Regular);

    private static TextStyle BlankStyle { get; } = new(1);

    private void DrawText(TextMark text)
    {
        var face = text.Piece.Face ?? throw new InvalidOperationException("A piece without a font is drawn, not written.");
        var style = text.Piece.Thickened ? XFontStyleEx.Bold : XFontStyleEx.Regular;
        if (!_fonts.TryGetValue((face, text.Style.Points, style), out var font))
        {
            font = new XFont(face.Name, text.Style.Points, style, new XPdfFontOptions(PdfFontEncoding.Unicode));
            _fonts.Add((face, text.Style.Points, style), font);
        }

        _used.Add(face, text.Piece.Text);
        _page!.DrawString(text.Piece.Text, font, Brush(text.Style.Grey), text.X * PointsPerMillimetre, text.Y * PointsPerMillimetre, XStringFormats.BaseLineLeft);
    }

    // The library joins the open lines of a path to each other, so each is painted by itself.
    private void DrawStrokes(StrokeMark stroke, XPen pen)
    {
        if (stroke.Closed)
        {
            _page!.DrawPath(pen, Outlines(stroke.X, stroke.Y, stroke.Lines));
            return;
        }

        foreach (var line in stroke.Lines)
        {
            _page!.DrawLines(pen, Points(stroke.X, stroke.Y, line));
        }
    }

    private static XGraphicsPath Outlines(double x, double y, Sequence<Sequence<Spot>> outlines)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Winding };
        foreach (var outline in outlines)
        {
            path.AddLines(Points(x, y, outline));
            path.CloseFigure();
        }

        return path;
    }

    private static XPoint[] Points(double x, double y, Sequence<Spot> line) =>
        [.. line.Select(p => new XPoint((x + p.X) * PointsPerMillimetre, (y + p.Y) * PointsPerMillimetre))];

    private static XSolidBrush Brush(double grey) => new(XColor.FromGrayScale(grey));

    private static XPen Pen(double grey, double millimetres) => new(XColor.FromGrayScale(grey), millimetres * PointsPerMillimetre);
}
