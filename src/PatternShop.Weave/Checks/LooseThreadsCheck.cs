using System.Numerics;

namespace PatternShop.Weave;

/// <summary>Rows or ends.</summary>
public enum ThreadKind
{
    Row,
    End,
}

/// <summary>Threads that never interlace: rows that pass every end on one side, or ends that every row passes on one side.</summary>
/// <param name="Kind">Rows or ends.</param>
/// <param name="Within">The motif, or, for ends that only the rows in the row plan leave loose, the piece.</param>
/// <param name="HeldByPlain">Whether plain rows hold the ends all the same.</param>
/// <param name="Numbers">The first of them, from 1, at most <see cref="Finding.MostAreas"/>; in the piece they are numbers of pattern ends.</param>
public sealed record LooseThreads(ThreadKind Kind, AreaOf Within, bool HeldByPlain, int Count, Sequence<int> Numbers, Sequence<Area> Areas)
    : Finding(CheckKind.LooseThreads, HeldByPlain ? Weight.Caution : Weight.Fault, Count, Areas)
{
    internal override int Which => Within == AreaOf.Piece ? 2 : (int)Kind;
}

/// <summary>Looks for rows and ends that never interlace. What floating ends do is judged by <see cref="IdleFloatingCheck"/>.</summary>
internal static class LooseThreadsCheck
{
    public static IEnumerable<Finding> Of(Piece piece)
    {
        var motif = piece.Document.Motif;
        var looseInMotif = Constant(motif);
        if (WovenChart.Any(piece))
        {
            var rows = InMotif(motif, ThreadKind.Row);
            if (rows.Count > 0)
            {
                yield return Found(ThreadKind.Row, AreaOf.Motif, false, rows, ThreadAreas.MotifRows(motif, rows));
            }

            var ends = InMotif(motif, ThreadKind.End);
            if (ends.Count > 0)
            {
                yield return Found(ThreadKind.End, AreaOf.Motif, WovenChart.HasPlain(piece), ends, ThreadAreas.MotifEnds(motif, ends));
            }
        }

        var looseInPiece = Constant(piece.Cells);
        var columns = Enumerable.Range(piece.FloatingPerSide, piece.PatternEnds)
            .Where(column => Has(looseInPiece, column) && !(WovenChart.Any(piece) && Has(looseInMotif, piece.MotifEnd(column - piece.FloatingPerSide))))
            .ToList();
        if (columns.Count > 0)
        {
            yield return Found(ThreadKind.End, AreaOf.Piece, false, columns.ConvertAll(column => column - piece.FloatingPerSide), ThreadAreas.Columns(piece, columns));
        }
    }

    /// <summary>Rows or ends of a motif (from 0) that never interlace in it.</summary>
    internal static List<int> InMotif(BitGrid motif, ThreadKind kind)
    {
        if (kind == ThreadKind.Row)
        {
            return [.. Enumerable.Range(0, motif.Rows).Where(row => IsConstant(motif, row))];
        }

        var loose = Constant(motif);
        return [.. Enumerable.Range(0, motif.Columns).Where(end => Has(loose, end))];
    }

    private static LooseThreads Found(ThreadKind kind, AreaOf within, bool heldByPlain, List<int> threads, IEnumerable<Area> areas) =>
        new(kind, within, heldByPlain, threads.Count, threads.Take(Finding.MostAreas).Select(thread => thread + 1).ToSequence(), areas.Bounded());

    private static bool IsConstant(BitGrid grid, int row)
    {
        var over = 0;
        foreach (var word in grid.RowWords(row))
        {
            over += BitOperations.PopCount(word);
        }

        return over == 0 || over == grid.Columns;
    }

    // a bit for every column that is alike in all rows; bits past the last column are set
    private static ulong[] Constant(BitGrid grid)
    {
        var (all, any) = (new ulong[grid.WordsPerRow], new ulong[grid.WordsPerRow]);
        Array.Fill(all, ulong.MaxValue);
        for (var row = 0; row < grid.Rows; row++)
        {
            var words = grid.RowWords(row);
            for (var i = 0; i < words.Length; i++)
            {
                all[i] &= words[i];
                any[i] |= words[i];
            }
        }

        return [.. all.Zip(any, (a, o) => a | ~o)];
    }

    private static bool Has(ulong[] bits, int at) => (bits[at >> 6] >> (at & 63) & 1) != 0;
}
