namespace PatternShop.Weave;

/// <summary>Something that an edit changed besides what was asked for; <see cref="Wording.ConsequenceText"/> says it in words.</summary>
public abstract record Consequence
{
    private protected Consequence()
    {
    }
}

/// <summary>Cells fell away of which some were over.</summary>
/// <param name="Over">How many of them were over, at least 1.</param>
public sealed record CellsCut(int Over) : Consequence;

/// <summary>The pattern begins at another end of the motif, or at the same one under another number; offsets, from 0.</summary>
public sealed record OffsetMoved(int From, int To) : Consequence;

/// <summary>A step of the row plan wove rows that are gone.</summary>
/// <param name="Step">Its step in the row plan, from 1; for a step inside a repeat, that of the repeat.</param>
/// <param name="Before">The rows that it wove.</param>
/// <param name="After">The rows that it weaves now; null when none was left and the step was removed.</param>
public sealed record StepCut(int Step, ChartRows Before, ChartRows? After) : Consequence;

/// <summary>New rows came between those that a step of the row plan wove, and it weaves them too.</summary>
/// <param name="Step">As in <see cref="StepCut"/>.</param>
public sealed record StepGrown(int Step, ChartRows Before, ChartRows After) : Consequence;

/// <summary>The rows that a step of the row plan weaves are the same and have other numbers.</summary>
/// <param name="Step">As in <see cref="StepCut"/>.</param>
public sealed record StepRenumbered(int Step, ChartRows Before, ChartRows After) : Consequence;

/// <summary>No step of the row plan weaves the new rows.</summary>
public sealed record RowsNotWoven(int First, int Last) : Consequence;

/// <summary>The row plan had nothing left to weave, and now weaves every row of the motif once.</summary>
public sealed record PlanBegunAnew(int Rows) : Consequence;

/// <summary>The chart row that the maker's words stood at is gone, and the words with it.</summary>
/// <param name="Words">What they said.</param>
public sealed record RowWordsCut(RowWords Words) : Consequence;

/// <summary>The chart row that a video stood at is gone; it stands with the whole pattern now.</summary>
/// <param name="Video">As it stood before.</param>
public sealed record VideoMoved(Video Video) : Consequence;

/// <summary>The chart row that a photo stood at is gone; it stands with the whole pattern now.</summary>
/// <param name="Photo">As it stood before.</param>
public sealed record PhotoMoved(Photo Photo) : Consequence;
