namespace PatternShop.Weave;

/// <summary>In which way an edit mends a finding; it names the step of undo.</summary>
public enum MendKind
{
    /// <summary>A weft starts at the other side; the number is that of the weft.</summary>
    OtherSide,

    /// <summary>Floating selvedges are added, or go another way.</summary>
    Edges,

    /// <summary>Threads are woven over one, under one.</summary>
    WeavePlain,

    /// <summary>Cells are turned over so that a thread is caught.</summary>
    TieDown,

    /// <summary>Repeated rows are written twice in each time through.</summary>
    DoubleRows,

    /// <summary>Each time through weaves the whole motif.</summary>
    WholeMotif,

    /// <summary>The last row of each time through is woven once only, after the last time.</summary>
    LastRowOnce,

    /// <summary>Offset and balance ends are chosen so that left and right mirror each other.</summary>
    Mirror,
}

/// <summary>An edit that mends a finding: one step of undo, named after what it mends.</summary>
/// <param name="Kind">In which way.</param>
/// <param name="Number">The weft or the step of the row plan that it concerns, from 1; 0 where there is none.</param>
/// <param name="Edit">What is changed.</param>
public sealed record Mend(MendKind Kind, int Number, Edit Edit) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Edit.Apply(document);
}
