namespace PatternShop.Weave;

/// <summary>Edits of the width plan.</summary>
internal static class WidthMends
{
    /// <summary>Ways to mirror: with the offset as it is, then those with the fewest balance ends.</summary>
    public static IEnumerable<Mend> Mirror(Piece piece)
    {
        var (motif, width) = (piece.Document.Motif, piece.Document.Width);
        return Mirroring.EveryOffset(motif).Where(way => way.Offset == width.Offset)
            .Concat(Mirroring.Fewest(motif))
            .Select(way => new Mend(MendKind.Mirror, 0, new SetWidth(width with { Offset = way.Offset, Balance = way.Balance })));
    }
}
