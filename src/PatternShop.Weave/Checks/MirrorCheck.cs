namespace PatternShop.Weave;

/// <summary>Balance ends after which left and right still do not mirror each other, though this motif can.</summary>
/// <param name="Offset">The offset as it stands.</param>
/// <param name="Balance">Balance ends as they stand.</param>
public sealed record NotMirrored(int Offset, int Balance, Sequence<Area> Areas) : Finding(CheckKind.Mirror, Weight.Caution, 1, Areas);

/// <summary>
/// Judges symmetry only where it was asked for. A document holds no such wish but one: balance ends are there so that left and
/// right mirror each other. A motif that cannot mirror at all is left in peace: there they only fill the width.
/// </summary>
internal static class MirrorCheck
{
    public static IEnumerable<Finding> Of(Piece piece)
    {
        var (motif, width) = (piece.Document.Motif, piece.Document.Width);
        if (width.Balance > 0 && WovenChart.Any(piece) && !Mirroring.IsMirrored(motif, width) && Mirroring.EveryOffset(motif).Count > 0)
        {
            var last = piece.FloatingPerSide + piece.PatternEnds - 1;
            yield return new NotMirrored(width.Offset, width.Balance, [new Area(AreaOf.Piece, 1, piece.Rows.Count, last - width.Balance + 1, last)]);
        }
    }
}
