namespace PatternShop.Weave;

/// <summary>A floating selvedge that the weft passes on one side in every row, so that nothing ever wraps it.</summary>
/// <param name="Side">Which of the two.</param>
/// <param name="Stroke">How the weft passes it.</param>
public sealed record FloatingIdle(Side Side, Stroke Stroke, Sequence<Area> Areas) : Finding(CheckKind.IdleFloating, Weight.Fault, 1, Areas)
{
    internal override int Which => (int)Side;
}

/// <summary>Looks whether each floating selvedge is passed on both sides.</summary>
internal static class IdleFloatingCheck
{
    public static IEnumerable<Finding> Of(Piece piece)
    {
        if (piece.FloatingPerSide == 0)
        {
            yield break;
        }

        foreach (var side in (Side[])[Side.Left, Side.Right])
        {
            var column = side == Side.Left ? 0 : piece.Ends - 1;
            var strokes = piece.Keys.Select(key => side == Side.Left ? key.LeftFloating : key.RightFloating).Distinct().ToList();
            if (strokes is [{ } only])
            {
                yield return new FloatingIdle(side, only, ThreadAreas.Columns(piece, [column]).Bounded());
            }
        }
    }
}
