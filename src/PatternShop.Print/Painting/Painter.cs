using PdfSharp.Pdf;

namespace PatternShop.Print;

/// <summary>Paints planned pages into a tagged PDF file.</summary>
internal sealed class Painter
{
    private const double PointsPerMillimetre = 72 / 25.4;

    private readonly PageContent _content = new();
    private readonly EmbeddedFonts _fonts;
    private readonly StructureTree _structure;
    private readonly Bookmarks _bookmarks;
    private readonly PdfDictionary _pages;
    private readonly PdfArray _kids;
    private readonly Paper _paper;

    private Painter(PrintPlan plan, EmbeddedFonts fonts)
    {
        (_fonts, _paper) = (fonts, plan.Paper);
        _structure = new StructureTree(File, plan.Pages.Count);
        _bookmarks = new Bookmarks(File);
        _pages = new PdfDictionary(File);
        _pages.Elements.SetName("/Type", "/Pages");
        _pages.Elements["/Kids"] = _kids = new PdfArray(File);
        _pages.Elements.SetInteger("/Count", plan.Pages.Count);
        File.Internals.AddObject(_pages);
    }

    private PdfDocument File => _fonts.Document;

    /// <summary>The file of a plan. The same plan gives the same bytes.</summary>
    public static byte[] Paint(PrintPlan plan)
    {
        using var fonts = EmbeddedFonts.Of(UsedCharacters.Of(plan));
        var painter = new Painter(plan, fonts);
        foreach (var page in plan.Pages)
        {
            painter.PaintPage(page);
        }

        return FinishedFile.Of(fonts.Document, plan.Facts, (painter._pages, painter._structure.Finish(), painter._bookmarks.Finish()));
    }

    private void PaintPage(PagePlan plan)
    {
        var page = new PdfDictionary(File);
        File.Internals.AddObject(page);
        page.Elements.SetName("/Type", "/Page");
        page.Elements.SetReference("/Parent", _pages);
        page.Elements["/MediaBox"] = new PdfArray(File, new PdfInteger(0), new PdfInteger(0), new PdfReal(_paper.Width * PointsPerMillimetre), new PdfReal(_paper.Height * PointsPerMillimetre));
        page.Elements.SetReference("/Resources", _fonts.Resources);
        page.Elements.SetName("/Tabs", "/S");
        _kids.Elements.Add(page.Reference!);
        _structure.BeginPage(page, plan, _paper);
        _content.Clear(_paper.Height);
        PaintItems(plan, page);
        page.Elements.SetReference("/Contents", Packed());
    }

    private void PaintItems(PagePlan plan, PdfDictionary page)
    {
        Placed? before = null;
        foreach (var item in plan.Items)
        {
            if (before is null || before.Tag != item.Tag)
            {
                if (before is not null)
                {
                    _content.EndMarked();
                }

                _bookmarks.Meet(item, page, _paper);
                Begin(item.Tag);
            }

            PaintMark(item.Mark);
            before = item;
        }

        if (before is not null)
        {
            _content.EndMarked();
        }
    }

    private void Begin(Tag? tag)
    {
        if (tag is null)
        {
            _content.BeginDecoration();
        }
        else
        {
            _content.BeginMarked(tag.Name, _structure.Enter(tag));
        }
    }

    private void PaintMark(Mark mark)
    {
        switch (mark)
        {
            case TextMark text:
                _content.Text(text, _fonts.NameOf(text.Piece.Face!));
                break;
            case AreaMark area:
                _content.Fill(area);
                break;
            case StrokeMark stroke:
                _content.Stroke(stroke);
                break;
            default:
                throw new InvalidOperationException($"No way to paint {mark.GetType().Name}.");
        }
    }

    // Packed at once: of a long file, what is painted takes much more room than anything else.
    private PdfDictionary Packed()
    {
        var stream = new PdfDictionary(File);
        File.Internals.AddObject(stream);
        stream.CreateStream(Flate.Pack(_content.Bytes));
        stream.Elements.SetName("/Filter", Flate.FilterName);
        return stream;
    }
}
