namespace PatternShop.Weave;

/// <summary>What a remedy brings that was not there, or not as often, or not as grave.</summary>
/// <param name="Check">The check that would find it.</param>
/// <param name="Weight">How much it would matter.</param>
/// <param name="More">In how many places more.</param>
public readonly record struct Brought(CheckKind Check, Weight Weight, int More);

/// <summary>What a remedy changes besides the finding that it mends.</summary>
/// <param name="Left">Places of the finding that would be left, and places elsewhere where the same check would find more than now; 0 when it mends it whole.</param>
/// <param name="Ends">Ends of the piece afterwards, floating ones included.</param>
/// <param name="Width">Width on the loom afterwards.</param>
/// <param name="Rows">Rows of the piece afterwards.</param>
/// <param name="RowsOtherwise">Rows that would read otherwise; all of them where the number of ends or rows changes.</param>
/// <param name="AlsoMends">Other checks of which findings would go.</param>
/// <param name="Brings">What it would bring, of other checks than that of the finding.</param>
public sealed record Aftermath(int Left, int Ends, Length Width, int Rows, int RowsOtherwise, Sequence<CheckKind> AlsoMends, Sequence<Brought> Brings)
{
    /// <summary>Whether it would bring a fault.</summary>
    public bool BringsFault => Brings.Any(brought => brought.Weight == Weight.Fault);
}

/// <summary>An edit that was tried and does mend a finding, at least in some of its places, with what else it changes.</summary>
public sealed record Remedy(Mend Edit, Aftermath Aftermath);

/// <summary>A finding with what mends it, the best remedy first; none where nothing was found that does.</summary>
public sealed record Advice(Finding Finding, Sequence<Remedy> Remedies);
