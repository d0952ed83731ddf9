using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>
/// The chart: whole where its cells stay large enough, else cut into parts, the lowest rows first and each from left to
/// right. Cells are as large as the room allows.
/// </summary>
/// <param name="Piece">Whose chart.</param>
/// <param name="Rhythm">How it is set.</param>
/// <param name="Wording">Its words.</param>
/// <param name="PageHeight">The room of a whole page, in millimetres.</param>
/// <param name="Cut">What is left to draw of a chart that was cut; null while nothing is drawn.</param>
internal sealed record ChartSheets(Piece Piece, Rhythm Rhythm, Wording Wording, double PageHeight, CutChart? Cut = null) : Block
{
    // Rather a fresh page than cells so much smaller than they could be there.
    private const double LeastOfBest = 0.8;
    private const double MapGap = 3;
    private const double CaptionGap = 1.5;

    private TextStyle CaptionStyle => Rhythm.Styles.Strong;

    private double SmallestCell => Rhythm.Cells.Least;

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
            var layout = LayoutOf(whole, cell, whole.Columns);
            return new Fit(Draw(layout, width, _ => []), layout.Height, null);
        }

        return fresh ? FitCut(width, height, fresh) : Announced(width, height);
    }

    // In large print the words before a chart would leave half a page empty if they went with it.
    private Fit Announced(double width, double height)
    {
        var words = new Words(Wording.ChartNextText, Rhythm.Styles.Body, new Tag(TagKind.Paragraph)).Fit(width, height, false);
        return Rhythm.Styles == Styles.Large && words is { IsNothing: false, Rest: null } ? words with { Rest = this } : Print.Fit.Nothing(this);
    }

    /// <summary>The largest cell with which the whole chart fits a room.</summary>
    public double WholeCell(Room room) => CellFor([ChartWindow.Whole(Piece)], room.Width, room.Height);

    /// <summary>How wide the whole chart is with cells of a size.</summary>
    public double WidthWith(double cell) => LayoutOf(ChartWindow.Whole(Piece), cell, Piece.Ends).Width;

    // Where the page has room, the map of the sheets stands there and each sheet has a page; else the first one begins a fresh page.
    private Fit FitCut(double width, double height, bool fresh)
    {
        if (fresh)
        {
            return FitParts(CutFor(width, height), width, height, fresh);
        }

        var cut = CutFor(width, PageHeight);
        return SheetsMap.In(cut.Parts, Rhythm, Wording, cut.Cell, new Room(width, height)) is { } map
            ? map with { Rest = this with { Cut = cut } }
            : Print.Fit.Nothing(this);
    }

    // As few parts as can be, then cells as large as fit all of them.
    private CutChart CutFor(double width, double height)
    {
        // The map takes its part of the room, which depends on the parts, which depend on the room: a second try settles it.
        var parts = ChartParts.Of(Piece, SmallestCell, new Room(width, height - CaptionStyle.LineHeight), Wording, Rhythm.Look);
        for (var tries = 0; tries < 2; tries++)
        {
            var room = height - parts.Max(part => HeadOf(part, width).Height);
            parts = ChartParts.Of(Piece, SmallestCell, new Room(width, room), Wording, Rhythm.Look);
        }

        var left = height - parts.Max(part => HeadOf(part, width).Height);
        var cell = CellFor([.. parts.Select(part => part.Window)], width, left);
        return new CutChart(parts, Math.Max(SmallestCell, cell), parts.Min(part => part.Window.Columns));
    }

    private Fit FitParts(CutChart cut, double width, double height, bool fresh)
    {
        var part = cut.Parts[0];
        var head = HeadOf(part, width);
        var layout = LayoutOf(part.Window, cut.Cell, cut.Narrowest);
        var needed = head.Height + layout.Height;
        if (needed > height && !fresh)
        {
            return Print.Fit.Nothing(this);
        }

        var drawn = Draw(layout, width, left => SheetMarks.Edges(part, layout).Select(mark => mark.Moved(left, 0))).Moved(0, head.Height);
        var rest = cut.Parts.Count == 1 ? null : this with { Cut = cut with { Parts = cut.Parts.Skip(1).ToSequence() } };
        return new Fit(Items.Joined([head.Items, drawn]), needed, rest);
    }

    // Which sheet it is in words, and a map at the right.
    private Fit HeadOf(ChartPart part, double width)
    {
        var map = SheetMarks.Map(part);
        var words = new Stack(
        [
            new Stacked(0, new Words(Wording.ChartSheetText(part.Number, part.Of) + " " + Wording.ChartPartText(Piece, part.Window), CaptionStyle, new Tag(TagKind.Paragraph))),
            .. Wording.CutText(part.Column > 0 ? part.Number - 1 : null, part.Row > 0 ? part.Number - part.Columns : null) is { Length: > 0 } cut
                ? new[] { new Stacked(0, new Words(cut, Rhythm.Styles.Quiet, new Tag(TagKind.Paragraph))) } : [],
        ]).Fit(width - map.Width - MapGap, double.PositiveInfinity, true);
        return new Fit(Items.Joined([words.Items, ((Items)map.Items).Moved(width - map.Width, 0)]), Math.Max(words.Height, map.Height) + CaptionGap, null);
    }

    private ChartLayout LayoutOf(ChartWindow window, double cell, int narrowest) =>
        new(Piece, window, cell, true, Wording, window.Columns == narrowest ? Rhythm.Look : Rhythm.Look with { LegendPerEnd = Rhythm.Look.LegendPerEnd * narrowest / window.Columns });

    private Items Draw(ChartLayout layout, double width, Func<double, IEnumerable<Placed>> marks)
    {
        var figure = new Tag(TagKind.Figure) { Alternative = Wording.ChartDescription(Piece), Chart = layout };
        var left = Math.Max(0, (width - layout.Width) / 2);
        return Items.Later(() => [.. ShapeMarks.Of(ChartDrawing.Of(layout, Wording)).Select(mark => new Placed(mark, figure).Moved(left, 0)), .. marks(left)]);
    }

    // The layout grows with the cell, so the largest cell is found by halving.
    private double CellFor(Sequence<ChartWindow> windows, double width, double height)
    {
        var (low, high) = (0.0, Rhythm.Cells.Most);
        var narrowest = windows.Min(window => window.Columns);
        if (windows.All(window => Fits(window, high, narrowest, width, height)))
        {
            return high;
        }

        while (high - low > 0.01)
        {
            var middle = (low + high) / 2;
            (low, high) = windows.All(window => Fits(window, middle, narrowest, width, height)) ? (middle, high) : (low, middle);
        }

        return low;
    }

    private bool Fits(ChartWindow window, double cell, int narrowest, double width, double height)
    {
        var layout = LayoutOf(window, cell, narrowest);
        return layout.Width <= width && layout.Height <= height;
    }
}

/// <summary>Parts of a chart that are still to be drawn, all with cells of one size.</summary>
/// <param name="Parts">The parts.</param>
/// <param name="Cell">Side of a cell in millimetres.</param>
/// <param name="Narrowest">How many ends the narrowest of all parts shows: legends are broken alike on all sheets.</param>
internal sealed record CutChart(Sequence<ChartPart> Parts, double Cell, int Narrowest);
