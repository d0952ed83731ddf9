namespace PatternShop.Weave;

public partial class Wording
{
    public string OverLegend => "over: the weft passes over this end";

    public string UnderLegend => "under: the weft passes under; the end shows";

    public string ShortOverLegend => "weft over the end";

    public string ShortUnderLegend => "weft under; the end shows";

    public string ShortFloatingLegend => "floating selvedge";

    public string FloatingLegend => "floating selvedge, not numbered";

    public string ClosingLabel => "closing, once";

    /// <summary>The label of the bracket under balance ends.</summary>
    public string BalanceLabel(int count) => Count(count, "balance end", "balance ends");

    public string ChartGoesUp => "The chart goes up: row 1 is at the bottom. In the written rows below, row 1 comes first.";

    public string NotIssued => "not issued";

    public string WarpTitle => "Warp";

    public string ChartTitle => "Chart";

    public string ScheduleTitle => "Order of work";

    public string RowsTitle => "Rows";

    public string CautionsTitle => "Take care";

    /// <summary>The usual cautions for needle work under tension. Common practice, no source.</summary>
    public Sequence<string> Cautions =>
    [
        "Needles, hooks and scissors are sharp: cut away from yourself and keep them from children and pets.",
        "A warp under tension can spring back: slacken it before you cut it off, and keep your face out of its line.",
        "Rest your hands, eyes and back often. Stop if something hurts.",
        "Rules of your workplace and advice of a doctor or therapist come before this sheet.",
    ];

    /// <summary>What the picture of the chart shows, for those who cannot see it.</summary>
    public string ChartDescription(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return $"Chart of {piece.Document.Title}: {Count(piece.Ends, "end", "ends")} across, {Rows(piece.PrintedRows().Count())} printed, row 1 at the bottom. The written rows say the same in words.";
    }

    /// <summary>The longest floats of each kind in a sentence. A single over or under is no float.</summary>
    public string FloatsText(LongestFloats floats)
    {
        ArgumentNullException.ThrowIfNull(floats);
        var parts = new[]
        {
            (Threads: floats.WeftOver, Text: $"weft over {Count(floats.WeftOver, "end", "ends")}"),
            (Threads: floats.WeftUnder, Text: $"weft under {Count(floats.WeftUnder, "end", "ends")}"),
            (Threads: floats.WarpOver, Text: $"end over {Rows(floats.WarpOver)}"),
            (Threads: floats.WarpUnder, Text: $"end under {Rows(floats.WarpUnder)}"),
        }.Where(part => part.Threads > 1).Select(part => part.Text).ToList();
        return parts.Count == 0 ? "No floats." : $"Longest floats: {string.Join(", ", parts)}.";
    }

    /// <summary>How much weft by rule of thumb: "Weft: about 3.8 yd to 4.1 yd, by rule of thumb (…)".</summary>
    public string WeftEstimate(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var width = piece.WidthOnLoom();
        var (least, most) = RuleOfThumb.TakeUp;
        var weft = piece.UsedWefts.Count == 1 ? "Weft" : "All wefts together";
        var left = piece.Stitches.Any(stitch => stitch.Stitch.Yarn == StitchYarn.Working) ? "tails and edge stitches" : "tails";
        return $"{weft}: about {UpTo(RuleOfThumb.Weft(piece.Rows.Count, width, least))} to {UpTo(RuleOfThumb.Weft(piece.Rows.Count, width, most))}, by rule of thumb (one width and {Number(least * 100)} to {Number(most * 100)} % a row; {left} not counted). Weave a sample to be sure.";
    }

    // Lengths of yarn are rounded up, in the unit that yarn is sold by.
    private string UpTo(Length length) => length.Unit == LengthUnit.Inch
        ? $"{Number(decimal.Ceiling(length.Amount / 36 * 10) / 10)} yd"
        : $"{Number(decimal.Ceiling(length.Amount / 100 * 10) / 10)} m";
}
