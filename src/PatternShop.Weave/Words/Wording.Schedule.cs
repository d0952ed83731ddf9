namespace PatternShop.Weave;

public partial class Wording
{
    /// <summary>One line of the schedule: "Rows 1–8, twice: chart rows 1–8", "Closing row 17, once: chart row 1".</summary>
    public string ScheduleText(Piece piece, ScheduleLine line)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return line switch
        {
            RowsOnce { Kind: BandKind.Closing } rows => $"{Capital(Range("closing row", "closing rows", rows.First, rows.Last))}, {Times(1)}: {SourcesText(piece, rows.First, rows.Last)}",
            RowsOnce rows => $"{Capital(Range("row", "rows", rows.First, rows.Last))}, {Times(1)}: {SourcesText(piece, rows.First, rows.Last)}",
            RowsAgain { Band: var band } again => $"{Capital(TimeText(band, 1))}, {Times(band.Times)}: {SourcesText(piece, band.FirstRow, band.FirstRowOf(2) - 1)}{InnerStitches(piece, again)}",
            StitchOnce stitch => Capital(StitchText(piece, stitch.Stitch, stitch.Times)),
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

        var (first, second) = (TimeText(band, 1), TimeText(band, 2));
        var are = band.RowsEachTime == 1 ? "is" : "are";
        var odd = band.IsOdd ? $"There {are} {Number(band.RowsEachTime)} repeated {(band.RowsEachTime == 1 ? "row" : "rows")}, an odd number, so every" : "Every";
        return $"{odd} other time {WhatDiffers(piece, band)}: {first} {are} for {PrintedTimeText(band, 1)}, {second} for {PrintedTimeText(band, 2)}.";
    }

    /// <summary>The same without the reason: "rows 1–6 are for time 1, rows 7–12 for time 2"; empty elsewhere.</summary>
    public string ShortTwoReadingsText(Band band)
    {
        ArgumentNullException.ThrowIfNull(band);
        return band.ReadsDifferently
            ? $"{Capital(TimeText(band, 1))} {(band.RowsEachTime == 1 ? "is" : "are")} for {PrintedTimeText(band, 1)}, {TimeText(band, 2)} for {PrintedTimeText(band, 2)}."
            : "";
    }

    private string WhatDiffers(Piece piece, Band band)
    {
        var pairs = Enumerable.Range(band.FirstRow, band.RowsEachTime)
            .Select(number => (First: piece.Rows[number - 1], Second: piece.Rows[number - 1 + band.RowsEachTime]))
            .ToList();
        var turned = pairs.Where(pair => pair.First.From != pair.Second.From).Select(pair => pair.First.Weft).Distinct().Order().ToList();
        if (turned.Count > 0)
        {
            return turned.Count == pairs.Select(pair => pair.First.Weft).Distinct().Count()
                ? "starts from the other side"
                : $"{Listed("weft", "wefts", turned)} {(turned.Count == 1 ? "starts" : "start")} from the other side";
        }

        if (pairs.Exists(pair => piece.Keys[pair.First.Reading].LeftFloating != piece.Keys[pair.Second.Reading].LeftFloating))
        {
            return "the floating selvedges go the other way";
        }

        return pairs.Exists(pair => pair.First.Source != pair.Second.Source)
            ? "the plain rows go the other way"
            : "an edge stitch begins at the other side";
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

    /// <summary>An edge stitch: "twining, once across from the left, with its own yarn; leave the floating selvedges alone".</summary>
    public string StitchText(Piece piece, WovenStitch stitch, int times = 1) => StitchAlone(piece, stitch, times) + LeaveFloating(piece);

    private string StitchAlone(Piece piece, WovenStitch stitch, int times)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(stitch);
        var again = times > 1 ? $", {Times(times)}" : "";
        return $"{stitch.Stitch.Name}, {Times(stitch.Stitch.Across)} across from the {Name(stitch.From)}, {StitchYarnText(piece, stitch.Stitch)}{again}";
    }

    private string StitchYarnText(Piece piece, EdgeStitch stitch)
    {
        if (stitch.Yarn == StitchYarn.Own)
        {
            return "with its own yarn";
        }

        var weft = WeftName(piece, stitch.Weft);
        return weft.Length > 0 ? $"with {weft}" : "with the weft you are weaving with";
    }

    private static string LeaveFloating(Piece piece) => piece.FloatingPerSide > 0 ? "; leave the floating selvedges alone" : "";

    /// <summary>Where the rows of a stretch come from: "chart rows 1–8, then 2 plain rows"; with several wefts also which weaves them.</summary>
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

    // How the source changes from a row to the next where the two belong together: up or down one chart row, or plain to plain, with one weft.
    private static int Stride(Piece piece, int number)
    {
        var (row, next) = (piece.Rows[number - 1], piece.Rows[number]);
        if (row.Weft != next.Weft)
        {
            return 0;
        }

        return (row.ChartRow, next.ChartRow) switch
        {
            (null, null) => 2,
            ({ } a, { } b) when Math.Abs(a - b) == 1 => b - a,
            _ => 0,
        };
    }

    private string SourcePart(Piece piece, int first, int last)
    {
        var weft = WeftName(piece, piece.Rows[first - 1].Weft);
        var with = weft.Length > 0 ? $" with {weft}" : "";
        var (from, to) = (piece.Rows[first - 1].ChartRow, piece.Rows[last - 1].ChartRow);
        if (from is null || to is null)
        {
            return Count(last - first + 1, "plain row", "plain rows") + with;
        }

        return Range("chart row", "chart rows", from.Value, to.Value) + with + (from > to ? " (downwards)" : "");
    }

    // Stitches among repeated rows, at every printed row where they are worked. One that begins at the same side both times is said once, for both rows.
    private string InnerStitches(Piece piece, RowsAgain again)
    {
        var (once, twice) = (again.Stitches.Where(stitch => stitch.Time == 1).ToList(), again.Stitches.Where(stitch => stitch.Time == 2).ToList());
        bool IsSame(int at) => twice.Count > 0 && twice[at].From == once[at].From;
        var shown = once.Select((stitch, at) => IsSame(at) ? new[] { stitch, twice[at] } : [stitch])
            .Concat(twice.Where((_, at) => !IsSame(at)).Select(stitch => new[] { stitch }));
        var text = string.Concat(shown.Select(stitches => $"; {WhenText(again.Band, stitches)} {StitchAlone(piece, stitches[0], 1)}"));
        return text.Length == 0 ? "" : text + LeaveFloating(piece);
    }

    private string WhenText(Band band, WovenStitch[] stitches)
    {
        var isBefore = stitches[0].AfterRow < band.FirstRowOf(stitches[0].Time ?? 1);
        var rows = stitches.Select(stitch => isBefore ? stitch.AfterRow + 1 : stitch.AfterRow).ToList();
        return $"{(isBefore ? "before" : "after")} {Listed("row", "rows", rows)}";
    }

    private string Listed(string one, string many, IReadOnlyList<int> numbers) => numbers.Count == 1
        ? $"{one} {Number(numbers[0])}"
        : $"{many} {string.Join(", ", numbers.SkipLast(1).Select(Number))} and {Number(numbers[^1])}";

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
