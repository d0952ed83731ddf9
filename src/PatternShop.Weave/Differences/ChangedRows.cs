namespace PatternShop.Weave;

/// <summary>Rows of the weaving order that changed in the same way: what each read before, and what each reads now.</summary>
/// <param name="Fate">Never <see cref="RowFate.Same"/>.</param>
/// <param name="Old">Numbers in the old version, from 1, in order; empty for rows that are new.</param>
/// <param name="New">Numbers in the new version, as many and in the same order; empty for rows that are gone.</param>
public sealed record ChangedRows(RowFate Fate, Sequence<int> Old, Sequence<int> New);

/// <summary>Where somebody goes on in the new version, in the fewest figures.</summary>
/// <param name="Next">As in <see cref="MovedPlace"/>.</param>
/// <param name="Cut">How many of the compared rows lie behind the place.</param>
/// <param name="SideNow">As in <see cref="MovedPlace"/>.</param>
/// <param name="SideNext">As in <see cref="MovedPlace"/>.</param>
public readonly record struct PlaceMove(int Next, int Cut, Side? SideNow, Side? SideNext)
{
    /// <summary>Whether the weft lies where the next row starts.</summary>
    public bool SideFits => SideNow is null || SideNext is null || SideNow == SideNext;
}
