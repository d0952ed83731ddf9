namespace PatternShop.Weave;

/// <summary>Nothing is drawn yet: every row goes the same way past every end.</summary>
/// <param name="Stroke">The way.</param>
public sealed record NothingDrawn(Stroke Stroke, Sequence<Area> Areas) : Finding(CheckKind.Blank, Weight.Fault, 1, Areas);

/// <summary>Sees a motif whose cells are all alike, where every other check would only say so in its own words.</summary>
internal static class BlankCheck
{
    public static NothingDrawn? Of(Piece piece)
    {
        var motif = piece.Document.Motif;
        var over = motif.Count;
        return WovenChart.Any(piece) && (over == 0 || over == motif.Rows * motif.Columns)
            ? new NothingDrawn(over == 0 ? Stroke.Under : Stroke.Over, [new Area(AreaOf.Motif, 1, motif.Rows, 0, motif.Columns - 1)])
            : null;
    }
}
