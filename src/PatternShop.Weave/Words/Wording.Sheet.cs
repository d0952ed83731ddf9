namespace PatternShop.Weave;

public sealed partial class Wording
{
    public string OverLegend => "over: the weft passes over this end";

    public string UnderLegend => "under: the weft passes under; the end shows";

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

    /// <summary>Both kinds of stretch across the piece in a sentence.</summary>
    public string FloatsText(LongestFloats floats)
    {
        ArgumentNullException.ThrowIfNull(floats);
        return $"Longest floats: weft over {Count(floats.WeftOver, "end", "ends")}, weft under {Count(floats.WeftUnder, "end", "ends")}, end over {Rows(floats.WarpOver)}, end under {Rows(floats.WarpUnder)}.";
    }

    /// <summary>How much weft by rule of thumb: "about 3.73 to 4.07 yd by rule of thumb…".</summary>
    public string WeftEstimate(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var width = piece.WidthOnLoom();
        var (least, most) = RuleOfThumb.TakeUp;
        return $"Weft: about {UpTo(RuleOfThumb.Weft(piece.Rows.Count, width, least))} to {UpTo(RuleOfThumb.Weft(piece.Rows.Count, width, most))}, by rule of thumb (one width and {Number(least * 100)} to {Number(most * 100)} % a row; tails not counted). Weave a sample to be sure.";
    }

    // Lengths of yarn are rounded up, in the unit that yarn is sold by.
    private string UpTo(Length length) => length.Unit == LengthUnit.Inch
        ? $"{Number(decimal.Ceiling(length.Amount / 36 * 10) / 10)} yd"
        : $"{Number(decimal.Ceiling(length.Amount / 100 * 10) / 10)} m";
}
