namespace PatternShop.Weave;

/// <summary>Edits of cells.</summary>
internal static class CellMends
{
    private const int LayerTries = 16;

    /// <summary>The whole motif in plain weave, to begin with.</summary>
    public static IEnumerable<Mend> PlainEverywhere(Piece piece) => [Plain(piece, 0, (_, _) => true)];

    /// <summary>Threads that never interlace, woven plain, beginning over or under: one of the two may leave threads across them loose.</summary>
    public static IEnumerable<Mend> Plain(Piece piece, LooseThreads loose)
    {
        if (loose.Within == AreaOf.Piece)
        {
            return [];
        }

        var threads = LooseThreadsCheck.InMotif(piece.Document.Motif, loose.Kind);
        return from under in (int[])[0, 1]
               select Plain(piece, under, (row, end) => threads.Contains(loose.Kind == ThreadKind.Row ? row : end));
    }

    /// <summary>One cell between the uppermost layer and the lowest is turned over: the layers between are caught with them.</summary>
    public static IEnumerable<Mend> TieLayers(Piece piece)
    {
        var motif = piece.Document.Motif;
        var upside = BitGrid.Create(motif.Rows, motif.Columns, (row, end) => !motif[row, end]);
        if (HangsTogether.LooseLayer(motif) is not { } top || HangsTogether.LooseLayer(upside) is not { } bottom)
        {
            return [];
        }

        var cells = top.Rows.SelectMany(row => bottom.Ends.Select(end => (row, end)))
            .Concat(bottom.Rows.SelectMany(row => top.Ends.Select(end => (row, end))));
        return cells.Take(LayerTries)
            .Where(cell => HangsTogether.Test(motif.With(cell.row, cell.end, !motif[cell.row, cell.end])))
            .Take(1)
            .Select(cell => Turn(motif, [cell]));
    }

    /// <summary>
    /// The first float that is too long is tied down so that every part of it is short enough: as evenly as can be, and a thread beside that, for a tie
    /// may lengthen a float across it.
    /// </summary>
    public static IEnumerable<Mend> TieFloats(Piece piece, FloatsTooLong floats) =>
        from area in floats.Areas.Take(1)
        from shift in (int[])[0, -1, 1]
        select Tie(piece, floats, area, shift) into mend
        where mend is not null
        select mend;

    private static Mend? Tie(Piece piece, FloatsTooLong floats, Area area, int shift)
    {
        var threads = floats.Kind.IsWeft() ? area.LastEnd - area.FirstEnd + 1 : area.LastRow - area.FirstRow + 1;
        var ties = threads / (floats.Most + 1);
        var (first, last) = (Evenly(threads, ties, 1) + shift, Evenly(threads, ties, ties) + shift);
        if (first < 0 || first > floats.Most || last >= threads || threads - 1 - last > floats.Most)
        {
            return null;
        }

        var cells = Enumerable.Range(1, ties)
            .Select(tie => Evenly(threads, ties, tie) + shift)
            .Select(at => floats.Kind.IsWeft() ? (area.FirstRow, area.FirstEnd + at) : (area.FirstRow + at, area.FirstEnd))
            .Select(cell => InMotif(piece, cell.Item1, cell.Item2))
            .ToList();
        return cells.Contains(null) ? null : Turn(piece.Document.Motif, cells.Select(cell => cell!.Value));
    }

    // where the ties lie within so many threads, from 0, when they part it as evenly as can be
    private static int Evenly(int threads, int ties, int tie) => ((threads + 1) * tie / (ties + 1)) - 1;

    private static (int Row, int End)? InMotif(Piece piece, int number, int column) =>
        piece.Rows[number - 1].ChartRow is { } row && !piece.IsFloating(column)
            ? (row - 1, piece.MotifEnd(column - piece.FloatingPerSide))
            : null;

    private static Mend Turn(BitGrid motif, IEnumerable<(int Row, int End)> cells)
    {
        var chosen = BitGrid.FromWords(motif.Rows, motif.Columns, new ulong[motif.Rows * motif.WordsPerRow]);
        var turned = motif;
        foreach (var (row, end) in cells)
        {
            (chosen, turned) = (chosen.With(row, end, true), turned.With(row, end, !motif[row, end]));
        }

        return new Mend(MendKind.TieDown, 0, new SetCells(chosen, turned));
    }

    private static Mend Plain(Piece piece, int under, Func<int, int, bool> chosen)
    {
        var motif = piece.Document.Motif;
        return new Mend(MendKind.WeavePlain, 0, new SetCells(
            BitGrid.Create(motif.Rows, motif.Columns, chosen),
            BitGrid.Create(motif.Rows, motif.Columns, (row, end) => (row + end) % 2 == under)));
    }
}
