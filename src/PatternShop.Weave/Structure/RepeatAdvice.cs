namespace PatternShop.Weave;

/// <summary>A way to mirror that looks otherwise than the rest.</summary>
/// <param name="Choice">Offset, balance ends and the middle.</param>
/// <param name="IsPresent">Whether the piece looks so already.</param>
/// <param name="Edit">What takes it: one step of undo.</param>
public sealed record MirrorOption(MirrorChoice Choice, bool IsPresent, Mend Edit);

/// <summary>What is known of repeat and symmetry of a piece, and what follows from it.</summary>
/// <param name="Symmetry">Of the motif repeated without end; null as long as nothing is drawn.</param>
/// <param name="Mirrors">
/// The ways to mirror left to right with the fewest balance ends, by offset: one for each look. Empty when none can, when nothing is
/// drawn or when no row of the motif is woven.
/// </param>
/// <param name="Alike">Further ways with as few balance ends, each of which looks like one of these.</param>
/// <param name="Closing">What makes top and bottom mirror; null when nothing does, or nothing is to be done.</param>
/// <param name="Shorter">The same weaving order with the fewest items; null when the plan has no more.</param>
public sealed record RepeatAdvice(Symmetry? Symmetry, Sequence<MirrorOption> Mirrors, int Alike, OrderRows? Closing, OrderRows? Shorter)
{
    /// <summary>Works everything out. The time grows with the cells of the motif and as <see cref="RowFolding"/> says.</summary>
    public static RepeatAdvice Of(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var motif = piece.Document.Motif;
        var symmetry = motif.Count > 0 ? Symmetry.Of(motif) : null;
        var ways = symmetry is null || !WovenChart.Any(piece) ? [] : Mirroring.Fewest(motif);
        var looks = ways.DistinctBy(way => way.Offset % symmetry!.Across)
            .Select(way => Option(piece.Document, symmetry!.Across, way))
            .Where(option => option.IsPresent || option.Edit.Apply(piece.Document) is EditResult.Done)
            .ToSequence();
        return new RepeatAdvice(symmetry, looks, looks.Count == 0 ? 0 : ways.Count - looks.Count, motif.Count > 0 ? ClosingPlan.Of(piece) : null, Shorten(piece.Document.Rows));
    }

    private static MirrorOption Option(PatternDocument document, int across, MirrorWay way)
    {
        var width = document.Width;
        var isPresent = way.Balance == width.Balance && way.Offset == width.Offset % across;
        var taken = isPresent ? way with { Offset = width.Offset } : way;
        var plan = width with { Offset = taken.Offset, Balance = taken.Balance };
        return new MirrorOption(Mirroring.ChoiceOf(document.Motif, width.Repeats, taken), isPresent, new Mend(MendKind.Mirror, 0, new SetWidth(plan)));
    }

    private static OrderRows? Shorten(RowPlan plan)
    {
        var steps = RowFolding.Fold(plan.Steps);
        var items = RowFolding.Items(steps);
        return items < RowFolding.Items(plan.Steps) ? new OrderRows(OrderWay.Shorten, items, plan with { Steps = steps }) : null;
    }
}
