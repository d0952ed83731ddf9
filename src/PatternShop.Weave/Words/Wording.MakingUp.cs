namespace PatternShop.Weave;

/// <summary>A part of the advice on making up.</summary>
/// <param name="Name">One word or two.</param>
/// <param name="Text">A few sentences.</param>
public sealed record MakingUpPart(string Name, string Text);

/// <summary>
/// What a beginner needs beside the chart: sample, arch, beat, joins, tails. Common practice with needle and frame, no source; every number
/// follows from the piece.
/// </summary>
public partial class Wording
{
    // Lengths by hand, in centimetres and in inches.
    private static readonly Hand Metric = new(LengthUnit.Centimetre, 10, 20, 150, 2.5m, 5, 0.5m);
    private static readonly Hand Imperial = new(LengthUnit.Inch, 4, 8, 60, 1, 2, 0.25m);

    public string MakingUpTitle => "Making up";

    /// <summary>Where the advice comes from and what goes before it.</summary>
    public string MakingUpMark => "Usual practice with a needle on a frame; the numbers follow from this chart. What your own sample shows goes before them.";

    /// <summary>Sample, arch, beat, joins and tails, in the order in which they are needed.</summary>
    public Sequence<MakingUpPart> MakingUp(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return
        [
            new MakingUpPart("Sample", SampleText(piece, HandOf(piece.Document.Gauge.Sett))),
            new MakingUpPart("Arch", ArchText(piece, HandOf(piece.Document.Gauge.Sett))),
            new MakingUpPart("Beat", BeatText(piece, HandOf(piece.Document.Gauge.Rows))),
            new MakingUpPart("Joins", JoinsText(piece, HandOf(piece.Document.Gauge.Sett))),
            new MakingUpPart("Tails", TailsText(piece, HandOf(piece.Document.Gauge.Rows))),
        ];
    }

    private string SampleText(Piece piece, Hand hand)
    {
        var (ends, rows) = SampleOf(piece, hand);
        var sett = piece.Document.Gauge.Sett;
        var size = ends == piece.Ends && rows == piece.Rows.Count
            ? $"This piece is small: weave it once as its own sample ({Count(ends, "end", "ends")}, {LengthShort(Lengths.Of(ends, sett))} on the loom)."
            : $"Warp {Count(ends, "end", "ends")} ({LengthShort(Lengths.Of(ends, sett))} on the loom) with the yarns of the piece and weave the first {Rows(rows)}.";
        return $"{size} Measure it on the loom, cut it off, wash it as the piece will be washed, and measure again: the piece shrinks by the same part.";
    }

    // As few whole motifs as make a hand's breadth.
    private static (int Ends, int Rows) SampleOf(Piece piece, Hand hand)
    {
        var (width, gauge) = (piece.Document.Width, piece.Document.Gauge);
        var extras = piece.Ends - (width.Repeats * piece.Document.Motif.Columns);
        var repeats = Enumerable.Range(1, width.Repeats)
            .Select(count => (count * piece.Document.Motif.Columns) + extras)
            .FirstOrDefault(count => Lengths.Of(count, gauge.Sett).In(hand.Unit).Amount >= hand.Breadth, piece.Ends);
        return (repeats, Math.Min(piece.Rows.Count, Threads(hand.Breadth, hand.Unit, gauge.Rows)));
    }

    private string ArchText(Piece piece, Hand hand)
    {
        var width = piece.WidthOnLoom().In(hand.Unit);
        var arches = (int)Math.Min(1_000, decimal.Ceiling(width.Amount / hand.Span));
        var (least, most) = RuleOfThumb.TakeUp;
        var each = width with { Amount = width.Amount / arches };
        var low = Stepped(RuleOfThumb.Arch(each, least), hand.Step);
        var high = Stepped(RuleOfThumb.Arch(each, most), hand.Step);
        var height = low == high ? $"about {LengthShort(low)}" : $"{Number(low.Amount)} to {LengthShort(high)}";
        var lay = arches == 1
            ? $"lay it as an arch, {height} high in the middle"
            : $"lay it in {Number(arches)} arches side by side, each {height} high in the middle";
        return $"Never pull the weft straight, or the edges draw in. Before you beat, {lay}; it then has {Number(least * 100)} to {Number(most * 100)} % to spare for the way over and under.";
    }

    private string BeatText(Piece piece, Hand hand)
    {
        var density = piece.Document.Gauge.Rows;
        var rows = Threads(hand.Ruler, hand.Unit, density);
        return $"Press every row down evenly, at the edges as in the middle, and do not force it. {Capital(Rows(rows))} should measure {LengthShort(Lengths.Of(rows, density))}; lay a ruler on it now and then.";
    }

    private string JoinsText(Piece piece, Hand hand)
    {
        var (least, most) = RuleOfThumb.TakeUp;
        var width = piece.WidthOnLoom().In(hand.Unit);
        var (shortest, longest) = (Up(RuleOfThumb.Weft(1, width, least)), Up(RuleOfThumb.Weft(1, width, most)));
        var row = shortest == longest ? $"about {LengthShort(longest)}" : $"{Number(shortest.Amount)} to {LengthShort(longest)}";
        var tails = 2 * hand.Breadth;
        var rows = (int)Math.Min(piece.Rows.Count, decimal.Floor((hand.Working - tails) / Math.Max(longest.Amount, 0.01m)));
        var working = rows >= 1
            ? $"{LengthShort(new Length(hand.Working, hand.Unit))} with both tails is enough for about {Rows(rows)}"
            : $"cut {LengthShort(longest with { Amount = longest.Amount + tails })}, a row with both tails, or join within the row";
        var over = Math.Min(piece.Ends, Math.Max(2, Threads(hand.Overlap, hand.Unit, piece.Document.Gauge.Sett)));
        return $"A row takes {row} of weft by rule of thumb; {working}. Begin a new length where the old one ends: let both run together under and over the same {Count(over, "end", "ends")}, away from the edges, and not above an earlier join.";
    }

    private string TailsText(Piece piece, Hand hand)
    {
        var rows = Math.Min(piece.Rows.Count, Math.Max(2, Threads(hand.Overlap, hand.Unit, piece.Document.Gauge.Rows)));
        return $"Leave {LengthShort(new Length(hand.Breadth, hand.Unit))} at every beginning and end. Off the loom, lead each tail with the needle along an end, over and under as it goes, through {Rows(rows)}; cut it after washing.";
    }

    private static Hand HandOf(Density density) => density.Unit == DensityUnit.PerInch ? Imperial : Metric;

    // The nearest whole number of threads in a length, at least one.
    private static int Threads(decimal length, LengthUnit unit, Density density)
    {
        var one = Lengths.Of(1, density).In(unit).Amount;
        return (int)Math.Clamp(decimal.Round(length / Math.Max(one, 0.0000001m), MidpointRounding.AwayFromZero), 1, Bounds.PieceRows);
    }

    private static Length Stepped(Length length, decimal step) => length with
    {
        Amount = length.Amount < step
            ? Math.Max(0.1m, decimal.Round(length.Amount, 1, MidpointRounding.AwayFromZero))
            : decimal.Round(length.Amount / step, MidpointRounding.AwayFromZero) * step,
    };

    private static Length Up(Length length) => length with { Amount = decimal.Ceiling(length.Amount * 2) / 2 };

    /// <summary>Handy lengths in one unit: a hand's breadth, the span of an arch, a working length, an overlap, what one lays a ruler on, the step of heights.</summary>
    private sealed record Hand(LengthUnit Unit, decimal Breadth, decimal Span, decimal Working, decimal Overlap, decimal Ruler, decimal Step);
}
