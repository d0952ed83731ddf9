using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>What stands at the foot of every sheet: title, version and page, the copy, a scale bar, and a QR code at the right.</summary>
/// <param name="Piece">Whose sheet.</param>
/// <param name="Version">Which version.</param>
/// <param name="Paper">The paper.</param>
/// <param name="Style">The lettering.</param>
/// <param name="Wording">Its words.</param>
internal sealed record Footer(Piece Piece, VersionLine Version, Paper Paper, TextStyle Style, Wording Wording)
{
    /// <summary>Empty at the left and at the right of the sheet.</summary>
    public const double Side = 12;

    private const double Below = 9.5;
    private const double Above = 1.5;
    private const double QrModule = 0.5;
    private const double QrGap = 3;

    private double BarHeight => ScaleBar.HeightOf(Style, Width, Wording);

    private double LinesHeight => Style.LineHeight * (2 + (Version.Copy is null ? 0 : 1) + (Version.LicenceLine.Length > 0 ? 1 : 0) - 1);

    private double QrSide => Version.Copy?.Address is { } address ? QrPicture.Modules(address) * QrModule : 0;

    private double Width => Paper.Width - (2 * Side) - (QrSide > 0 ? QrSide + QrGap : 0);

    /// <summary>From the end of what a page says to the edge of the paper.</summary>
    public double Height => Above + Math.Max(QrSide, LinesHeight + BarHeight + 2) + Below;

    /// <summary>The marks, relative to the paper; all decoration.</summary>
    public IEnumerable<Placed> Marks(int page, int pages)
    {
        var top = Paper.Height - Height + Above;
        yield return new Placed(new StrokeMark(Side, top, [[new Spot(0, 0), new Spot(Width, 0)]], false, 0.12, 0.55), null);
        var y = top + 0.8;
        foreach (var line in Lines(page, pages))
        {
            foreach (var mark in TextLine.Set(line.Text, line.Right ? Side + Width - Lettering.Width(line.Text, Style) : Side, y + (line.Number * Style.LineHeight) + Style.Baseline, Style, null))
            {
                yield return mark;
            }
        }

        foreach (var mark in ScaleBar.Of(Style, Width, Wording))
        {
            yield return mark.Moved(Side, Paper.Height - Below - BarHeight);
        }

        foreach (var mark in Version.Copy?.Address is { } address ? ShapeMarks.Of(QrPicture.Of(address, QrModule)) : [])
        {
            yield return new Placed(mark, null).Moved(Paper.Width - Side - QrSide, Paper.Height - Below - QrSide);
        }
    }

    private IEnumerable<(string Text, bool Right, int Number)> Lines(int page, int pages)
    {
        var number = Wording.PageText(page, pages);
        var room = Width - Lettering.Width(number, Style) - 5;
        yield return (number, true, 0);
        yield return (Short($"{Piece.Document.Title} · {Version.FullText(Wording)}", room), false, 0);
        var next = 1;
        if (Version.Copy is { } copy)
        {
            yield return (Short(Wording.CopyText(copy.Code, copy.Address), Width), false, next++);
        }

        if (Version.LicenceLine.Length > 0)
        {
            yield return (Short(Version.LicenceLine, Width), false, next);
        }
    }

    private string Short(string text, double width) => Lettering.Lines(text, Style, width)[0].TrimEnd();
}
