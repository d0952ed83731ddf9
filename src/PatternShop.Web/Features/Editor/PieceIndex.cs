using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>
/// The whole piece as the script draws it: for every printed row which reading, for every reading where its cells come from.
/// The cells themselves are those of the motif, which the script has, so that the piece follows each stroke at once.
/// </summary>
/// <param name="Readings">For each distinct reading its source (the motif's row from 0; -1 or -2 for a plain row that begins under or over), what the left and right floating ends do (1 over), and the side it starts at (0 left).</param>
/// <param name="Rows">The reading of every printed row.</param>
/// <param name="Numbers">The number of every printed row.</param>
/// <param name="Bands">Printed rows that belong together, with what is said beside them.</param>
internal sealed record PieceIndex(
    IReadOnlyList<int[]> Readings,
    IReadOnlyList<int> Rows,
    IReadOnlyList<int> Numbers,
    int MotifEnds,
    int Offset,
    int PatternEnds,
    int Floating,
    int Balance,
    IReadOnlyList<PieceBand> Bands)
{
    /// <summary>Printed rows that are drawn at most.</summary>
    public const int MostRows = 2000;

    private const int PlainUnderFirst = -1;
    private const int PlainOverFirst = -2;

    public static PieceIndex Of(Piece piece, Wording wording)
    {
        int[] numbers = [.. piece.PrintedRows().Take(MostRows)];
        return new PieceIndex(
            [.. piece.Keys.Select(Reading)],
            [.. numbers.Select(number => piece.Rows[number - 1].Reading)],
            numbers,
            piece.Document.Motif.Columns,
            piece.Document.Width.Offset,
            piece.PatternEnds,
            piece.FloatingPerSide,
            piece.Document.Width.Balance,
            [.. BandsOf(piece, wording).Where(band => band.First < MostRows).Select(band => band with { Rows = Math.Min(band.Rows, MostRows - band.First) })]);
    }

    private static int[] Reading(ReadingKey key) =>
        [Source(key.Source), Code(key.LeftFloating), Code(key.RightFloating), key.From == Side.Left ? 0 : 1];

    private static int Source(RowSource source) =>
        source.Kind == RowKind.Chart ? source.Index : source.Index == 0 ? PlainUnderFirst : PlainOverFirst;

    private static int Code(Stroke? floating) => floating == Stroke.Over ? 1 : 0;

    private static IEnumerable<PieceBand> BandsOf(Piece piece, Wording wording)
    {
        var first = 0;
        foreach (var band in piece.Bands)
        {
            for (var time = 1; time <= band.PrintedTimes; time++)
            {
                var stretch = new ChartStretch(band, time, first, band.RowsEachTime);
                yield return new PieceBand(first, band.RowsEachTime, ChartLayout.HasBracket(stretch) ? ChartLayout.BracketLabel(stretch, wording) : "");
                first += band.RowsEachTime;
            }
        }
    }
}

/// <summary>Printed rows, from the first (from 0) on, with what is said beside them.</summary>
internal sealed record PieceBand(int First, int Rows, string Label);
