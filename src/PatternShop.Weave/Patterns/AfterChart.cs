namespace PatternShop.Weave;

/// <summary>A part of the printed sheets after chart and rows that a maker may leave out. Cautions and a licence always stand there.</summary>
public enum SheetPart
{
    /// <summary>Sampling, arch, beating, joins and tails.</summary>
    MakingUp,

    /// <summary>The corrections so far.</summary>
    Corrections,

    /// <summary>The maker's notes.</summary>
    Notes,
}

/// <summary>What the sheets say after chart and rows, as far as that is the maker's choice.</summary>
/// <param name="MakingUp">Whether making up is printed.</param>
/// <param name="Corrections">Whether the corrections so far are printed, where there are any.</param>
/// <param name="Notes">Whether the maker's notes are printed, where there are any.</param>
public sealed record AfterChart(bool MakingUp, bool Corrections, bool Notes)
{
    /// <summary>Everything, as long as the maker does not choose otherwise.</summary>
    public static AfterChart All { get; } = new(true, true, true);

    /// <summary>Whether a part is printed.</summary>
    public bool Has(SheetPart part) => part switch
    {
        SheetPart.MakingUp => MakingUp,
        SheetPart.Corrections => Corrections,
        SheetPart.Notes => Notes,
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "There is no such part."),
    };

    /// <summary>The same with a part printed or left out.</summary>
    public AfterChart With(SheetPart part, bool isPrinted) => part switch
    {
        SheetPart.MakingUp => this with { MakingUp = isPrinted },
        SheetPart.Corrections => this with { Corrections = isPrinted },
        SheetPart.Notes => this with { Notes = isPrinted },
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "There is no such part."),
    };
}
