namespace PatternShop.Weave;

/// <summary>Why rows are ordered anew; it names the step of undo.</summary>
public enum OrderWay
{
    /// <summary>Closing rows make top and bottom mirror; the number counts them.</summary>
    Close,

    /// <summary>The same weaving order with the fewest items; the number counts them.</summary>
    Shorten,
}

/// <summary>Takes a row plan that was worked out from the one before.</summary>
/// <param name="Way">What it is for.</param>
/// <param name="Number">Closing rows or items, as <paramref name="Way"/> says.</param>
/// <param name="Rows">The plan.</param>
public sealed record OrderRows(OrderWay Way, int Number, RowPlan Rows) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with { Rows = Rows });
}
