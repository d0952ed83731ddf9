namespace PatternShop.Weave;

/// <summary>What a band of rows is.</summary>
public enum BandKind
{
    /// <summary>Rows woven once before or between repeated rows, or in a piece that repeats nothing.</summary>
    Once,

    /// <summary>Rows woven again and again.</summary>
    Repeated,

    /// <summary>Rows woven once after the last repeated rows, so that the last figure is whole.</summary>
    Closing,
}

/// <summary>A stretch of the weaving order that is printed together.</summary>
/// <param name="Kind">Whether it is repeated.</param>
/// <param name="FirstRow">Number of its first row, from 1.</param>
/// <param name="RowsEachTime">Rows once through.</param>
/// <param name="Times">Times through; 1 unless repeated.</param>
/// <param name="RowsDiffer">Whether some row reads differently the second time: another side, other floating ends or the other plain row.</param>
/// <param name="StitchesDiffer">Whether an edge stitch among the rows begins at the other side the second time.</param>
public sealed record Band(BandKind Kind, int FirstRow, int RowsEachTime, int Times, bool RowsDiffer, bool StitchesDiffer)
{
    /// <summary>Whether a weaver does something else the second time, in a row or in an edge stitch.</summary>
    public bool ReadsDifferently => RowsDiffer || StitchesDiffer;

    /// <summary>Rows in all.</summary>
    public int Rows => RowsEachTime * Times;

    /// <summary>Number of the last row.</summary>
    public int LastRow => FirstRow + Rows - 1;

    /// <summary>Whether the number of all rows once through, plain ones included, is odd and they are woven more than once.</summary>
    public bool IsOdd => Times > 1 && RowsEachTime % 2 != 0;

    /// <summary>Times through that are printed: two when the second time reads differently, else one.</summary>
    public int PrintedTimes => ReadsDifferently ? 2 : 1;

    /// <summary>Rows that are printed.</summary>
    public int PrintedRows => RowsEachTime * PrintedTimes;

    /// <summary>The number of the first row of one time through.</summary>
    /// <param name="time">From 1.</param>
    public int FirstRowOf(int time) => FirstRow + ((time - 1) * RowsEachTime);
}

/// <summary>A place in the weaving order as a reader speaks of it: "row 4 of 10, time 2 of 3 (row 14 of 32)".</summary>
public sealed record Place(int Number, int Within, int RowsEachTime, int Time, int Times);

internal static class PieceBands
{
    public static Sequence<Band> Of(Piece piece)
    {
        var bands = new List<Band>();
        for (var first = 0; first < piece.Rows.Count;)
        {
            var step = RepeatedStep(piece, first);
            var next = first + 1;
            while (next < piece.Rows.Count && RepeatedStep(piece, next) == step)
            {
                next++;
            }

            var times = step is { } at ? ((Repeat)piece.Document.Rows.Steps[at]).Times : 1;
            var each = (next - first) / times;
            bands.Add(times > 1
                ? new Band(BandKind.Repeated, first + 1, each, times, RowsDiffer(piece, first, each), StitchesDiffer(piece, step))
                : new Band(BandKind.Once, first + 1, each, 1, false, false));
            first = next;
        }

        var lastRepeated = bands.FindLastIndex(band => band.Kind == BandKind.Repeated);
        return bands
            .Select((band, i) => lastRepeated >= 0 && i > lastRepeated ? band with { Kind = BandKind.Closing } : band)
            .ToSequence();
    }

    // A repeat that is woven through once is no repeat to a reader.
    private static int? RepeatedStep(Piece piece, int row) =>
        piece.Document.Rows.Steps[piece.Rows[row].Step] is Repeat { Times: > 1 } ? piece.Rows[row].Step : null;

    private static bool RowsDiffer(Piece piece, int first, int each) =>
        Enumerable.Range(first, each).Any(i => piece.Rows[i].Reading != piece.Rows[i + each].Reading);

    // A weft that only stitches here may end at the other side although every row reads the same.
    private static bool StitchesDiffer(Piece piece, int? step) => !SidesAt(piece, step, 1).SequenceEqual(SidesAt(piece, step, 2));

    private static IEnumerable<Side> SidesAt(Piece piece, int? step, int time) =>
        piece.Stitches.Where(stitch => stitch.Step == step && stitch.Time == time).Select(stitch => stitch.From);
}
