namespace PatternShop.Weave;

/// <summary>Floats of one kind that are longer than the maker allows.</summary>
/// <param name="Kind">Which thread floats on which side.</param>
/// <param name="Count">How many.</param>
/// <param name="Longest">Threads in the longest of them.</param>
/// <param name="Most">The most threads that are allowed, by count or by length.</param>
/// <param name="Length">Length of the longest.</param>
public sealed record FloatsTooLong(FloatKind Kind, int Count, int Longest, int Most, Length Length, Sequence<Area> Areas)
    : Finding(CheckKind.Floats, Weight.Caution, Count, Areas)
{
    internal override int Which => 1 + (int)Kind;
}

/// <summary>The longest float of the weft and of the warp, where the maker has set no limit by which to judge them.</summary>
/// <param name="Weft">On which side the longest of the weft is.</param>
/// <param name="WeftThreads">Its threads; 1 when no weft floats.</param>
/// <param name="WeftLength">Its length.</param>
/// <param name="Warp">On which side the longest of the ends is.</param>
/// <param name="WarpThreads">Its threads; 1 when no end floats.</param>
/// <param name="WarpLength">Its length.</param>
public sealed record LongestFloat(FloatKind Weft, int WeftThreads, Length WeftLength, FloatKind Warp, int WarpThreads, Length WarpLength, Sequence<Area> Areas)
    : Finding(CheckKind.Floats, Weight.Note, 1, Areas);

/// <summary>Measures floats by the maker's limits; without any it names the longest.</summary>
internal static class FloatsCheck
{
    public static IEnumerable<Finding> Of(Piece piece)
    {
        var (limits, gauge) = (piece.Document.Limits, piece.Document.Gauge);
        var floats = FloatScan.Of(piece, kind => kind.Most(limits, gauge));
        return limits is null ? Longest(floats, gauge) : TooLong(floats, limits, gauge);
    }

    private static IEnumerable<Finding> TooLong(KindOfFloat[] floats, Limits limits, Gauge gauge) =>
        from kind in Enum.GetValues<FloatKind>()
        let found = floats[(int)kind]
        where found.TooLong > 0
        select new FloatsTooLong(kind, found.TooLong, found.Longest, kind.Most(limits, gauge), kind.LengthOf(found.Longest, gauge), found.FirstTooLong);

    private static IEnumerable<Finding> Longest(KindOfFloat[] floats, Gauge gauge)
    {
        var weft = Longer(floats, FloatKind.WeftOver, FloatKind.WeftUnder);
        var warp = Longer(floats, FloatKind.WarpOver, FloatKind.WarpUnder);
        var (wefts, ends) = (floats[(int)weft], floats[(int)warp]);
        Area[] areas = [.. wefts.Longest > 1 ? (Area[])[wefts.LongestAt] : [], .. ends.Longest > 1 ? (Area[])[ends.LongestAt] : []];
        if (areas.Length > 0)
        {
            yield return new LongestFloat(weft, wefts.Longest, weft.LengthOf(wefts.Longest, gauge), warp, ends.Longest, warp.LengthOf(ends.Longest, gauge), [.. areas]);
        }
    }

    private static FloatKind Longer(KindOfFloat[] floats, FloatKind one, FloatKind other) =>
        floats[(int)other].Longest > floats[(int)one].Longest ? other : one;
}
