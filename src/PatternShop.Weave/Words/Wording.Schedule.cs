namespace PatternShop.Weave;

public sealed partial class Wording
{
    /// <summary>One line of the schedule: "Rows 1–8, twice: chart rows 1–8".</summary>
    public string ScheduleText(Piece piece, ScheduleLine line)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return line switch
        {
            RowsOnce rows => $"{Capital(Range("row", "rows", rows.First, rows.Last))}, once: {SourcesText(piece, rows.First, rows.Last)}{(rows.Kind == BandKind.Closing ? " (closing)" : "")}",
            RowsAgain again => $"{Capital(Range("row", "rows", again.Band.FirstRow, again.Band.FirstRow + again.Band.RowsEachTime - 1))}, {Times(again.Band.Times)}: {SourcesText(piece, again.Band.FirstRow, again.Band.FirstRow + again.Band.RowsEachTime - 1)}{InnerStitches(again)}",
            StitchOnce stitch => Capital(StitchText(stitch.Stitch, stitch.Times)),
            _ => throw new InvalidOperationException(),
        };
    }

    /// <summary>The rows of one time through, for its box: "rows 9–16".</summary>
    public string TimeText(Band band, int time)
    {
        ArgumentNullException.ThrowIfNull(band);
        return Range("row", "rows", band.FirstRowOf(time), band.FirstRowOf(time) + band.RowsEachTime - 1);
    }

    /// <summary>What is said where repeated rows read differently every other time, and why; empty elsewhere.</summary>
    public string TwoReadingsText(Piece piece, Band band)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(band);
        if (!band.ReadsDifferently)
        {
            return "";
        }

        var odd = band.IsOdd ? $"There are {Number(band.RowsEachTime)} repeated rows, an odd number, so every" : "Every";
        var first = Range("row", "rows", band.FirstRow, band.FirstRow + band.RowsEachTime - 1);
        var second = Range("row", "rows", band.FirstRowOf(2), band.FirstRowOf(2) + band.RowsEachTime - 1);
        return $"{odd} other time {WhatDiffers(piece, band)}: {first} are for {PrintedTimeText(band, 1)}, {second} for {PrintedTimeText(band, 2)}.";
    }

    private static string WhatDiffers(Piece piece, Band band)
    {
        var pairs = Enumerable.Range(band.FirstRow, band.RowsEachTime)
            .Select(number => (First: piece.Rows[number - 1], Second: piece.Rows[number - 1 + band.RowsEachTime]))
            .ToList();
        if (pairs.Exists(pair => pair.First.From != pair.Second.From))
        {
            return "starts from the other side";
        }

        return pairs.Exists(pair => piece.Keys[pair.First.Reading].LeftFloating != piece.Keys[pair.Second.Reading].LeftFloating)
            ? "the floating selvedges go the other way"
            : "the plain rows go the other way";
    }

    /// <summary>The heading of a printed time through where both readings are printed: "times 1, 3 and 5".</summary>
    public string PrintedTimeText(Band band, int printedTime)
    {
        ArgumentNullException.ThrowIfNull(band);
        if (!band.ReadsDifferently)
        {
            return Times(band.Times);
        }

        var one = printedTime + 2 > band.Times;
        return $"{(one ? "time" : "times")} {EveryOther(printedTime, band.Times)}";
    }

    /// <summary>An edge stitch: "twining, once across from the left, with its own yarn".</summary>
    public string StitchText(WovenStitch stitch, int times = 1)
    {
        ArgumentNullException.ThrowIfNull(stitch);
        var yarn = stitch.Stitch.Yarn == StitchYarn.Own ? "with its own yarn" : "with the weft you are weaving with";
        var again = times > 1 ? $", {Times(times)}" : "";
        return $"{stitch.Stitch.Name}, {Times(stitch.Stitch.Across)} across from the {Name(stitch.From)}, {yarn}{again}; leave the floating selvedges alone";
    }

    /// <summary>Where the rows of a stretch come from: "chart rows 1–8, then 2 plain rows".</summary>
    public string SourcesText(Piece piece, int first, int last)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var parts = new List<string>();
        for (var at = first; at <= last;)
        {
            var end = at;
            var stride = end < last ? Stride(piece, at) : 0;
            while (stride != 0 && end < last && Stride(piece, end) == stride)
            {
                end++;
            }

            parts.Add(SourcePart(piece, at, end));
            at = end + 1;
        }

        return string.Join(", then ", parts);
    }

    // How the source changes from a row to the next where the two belong together: up or down one chart row, or plain to plain.
    private static int Stride(Piece piece, int number)
    {
        var (row, next) = (piece.Rows[number - 1], piece.Rows[number]);
        return (row.ChartRow, next.ChartRow) switch
        {
            (null, null) => 2,
            ({ } a, { } b) when Math.Abs(a - b) == 1 => b - a,
            _ => 0,
        };
    }

    private string SourcePart(Piece piece, int first, int last)
    {
        var (from, to) = (piece.Rows[first - 1].ChartRow, piece.Rows[last - 1].ChartRow);
        if (from is null || to is null)
        {
            return Count(last - first + 1, "plain row", "plain rows");
        }

        return from == to ? $"chart row {Number(from.Value)}" : $"chart rows {Number(from.Value)}–{Number(to.Value)}{(from > to ? " (downwards)" : "")}";
    }

    private string InnerStitches(RowsAgain again) => string.Concat(again.Stitches
        .Select(s => (s.Time == 2 ? $"; time 2, " : "; ") + $"{(s.AfterRow < again.Band.FirstRow ? "before the first row" : $"after row {Number(s.AfterRow)}")} {StitchText(s)}"));

    private string EveryOther(int first, int last)
    {
        var times = Enumerable.Range(first, Math.Max(1, last - first + 1)).Where(time => (time - first) % 2 == 0).ToList();
        return times.Count switch
        {
            1 => Number(times[0]),
            <= 4 => $"{string.Join(", ", times.SkipLast(1).Select(Number))} and {Number(times[^1])}",
            _ => $"{Number(times[0])}, {Number(times[1])}, {Number(times[2])} … {Number(times[^1])}",
        };
    }
}
