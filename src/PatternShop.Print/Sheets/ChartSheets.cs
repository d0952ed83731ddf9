using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>
/// The chart: whole where its cells stay large enough, else cut into parts, the lowest rows first and each from left to
/// right. Cells are as large as the room allows.
/// </summary>
/// <param name="Piece">Whose chart.</param>
/// <param name="Wording">Its words.</param>
/// <param name="Cut">What is left to draw of a chart that was cut; null while nothing is drawn.</param>
internal sealed record ChartSheets(Piece Piece, Wording Wording, CutChart? Cut = null) : Block
{
    /// <summary>No cell is smaller, or the chart is cut.</summary>
    public const double SmallestCell = 4;

    private const double LargestCell = 8;

    // Rather a fresh page than cells so much smaller than they could be there.
    private const double LeastOfBest = 0.8;
    private static readonly TextStyle CaptionStyle = new(11, true);

    public override Fit Fit(double width, double height, bool fresh)
    {
        if (Cut is not null)
        {
            return FitParts(Cut, width, height, fresh);
        }

        var whole = ChartWindow.Whole(Piece);
        var best = CellFor([whole], width, double.PositiveInfinity);
        if (best < SmallestCell)
        {
            return FitCut(width, height, fresh);
        }

        var cell = CellFor([whole], width, height);
        if (cell >= Math.Max(SmallestCell, fresh ? 0 : best * LeastOfBest))
        {
            return new Fit(Draw(whole, cell, width), new ChartLayout(Piece, whole, cell, true, Wording).Height, null);
        }

        return fresh ? FitCut(width, height, fresh) : Print.Fit.Nothing(this);
    }

    // Only once a page is fresh is it known how many rows a sheet holds. As few parts as can be, then cells as large as fit all of them.
    private Fit FitCut(double width, double height, bool fresh)
    {
        if (!fresh)
        {
            return Print.Fit.Nothing(this);
        }

        var room = height - CaptionStyle.LineHeight;
        var parts = ChartParts.Of(Piece, SmallestCell, width, room, Wording);
        return FitParts(new CutChart(parts, Math.Max(SmallestCell, CellFor(parts, width, room))), width, height, fresh);
    }

    private Fit FitParts(CutChart cut, double width, double height, bool fresh)
    {
        var needed = CaptionStyle.LineHeight + new ChartLayout(Piece, cut.Parts[0], cut.Cell, true, Wording).Height;
        if (needed > height && !fresh)
        {
            return Print.Fit.Nothing(this);
        }

        var caption = new Words(Wording.ChartPartText(Piece, cut.Parts[0]), CaptionStyle, new Tag(TagKind.Paragraph)).Fit(width, needed, true);
        var drawn = Draw(cut.Parts[0], cut.Cell, width).Select(item => item.Moved(0, CaptionStyle.LineHeight));
        var rest = cut.Parts.Count == 1 ? null : this with { Cut = cut with { Parts = cut.Parts.Skip(1).ToSequence() } };
        return new Fit([.. caption.Items, .. drawn], needed, rest);
    }

    private Sequence<Placed> Draw(ChartWindow window, double cell, double width)
    {
        var drawing = ChartDrawing.Of(new ChartLayout(Piece, window, cell, true, Wording), Wording);
        var figure = new Tag(TagKind.Figure) { Alternative = Wording.ChartDescription(Piece) };
        var left = Math.Max(0, (width - drawing.Width) / 2);
        return ShapeMarks.Of(drawing).Select(mark => new Placed(mark, figure).Moved(left, 0)).ToSequence();
    }

    // The layout grows with the cell, so the largest cell is found by halving.
    private double CellFor(Sequence<ChartWindow> windows, double width, double height)
    {
        var (low, high) = (0.0, LargestCell);
        if (windows.All(window => Fits(window, high, width, height)))
        {
            return high;
        }

        while (high - low > 0.02)
        {
            var middle = (low + high) / 2;
            (low, high) = windows.All(window => Fits(window, middle, width, height)) ? (middle, high) : (low, middle);
        }

        return low;
    }

    private bool Fits(ChartWindow window, double cell, double width, double height)
    {
        var layout = new ChartLayout(Piece, window, cell, true, Wording);
        return layout.Width <= width && layout.Height <= height;
    }
}

/// <summary>Parts of a chart that are still to be drawn, all with cells of one size.</summary>
internal sealed record CutChart(Sequence<ChartWindow> Parts, double Cell);
