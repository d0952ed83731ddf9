namespace PatternShop.Weave;

/// <summary>How much a finding matters, the gravest first.</summary>
public enum Weight
{
    /// <summary>It will not hold, or cannot be woven.</summary>
    Fault,

    /// <summary>It will show, or annoy.</summary>
    Caution,

    /// <summary>Good to know.</summary>
    Note,
}

/// <summary>Which check found something; in this order findings of one weight are listed.</summary>
public enum CheckKind
{
    Blank,
    LooseThreads,
    FallsApart,
    IdleFloating,
    Turns,
    Seam,
    Floats,
    Repeats,
    Mirror,
}

/// <summary>The chart to which an area belongs.</summary>
public enum AreaOf
{
    /// <summary>The motif: rows from 1, ends from 0.</summary>
    Motif,

    /// <summary>The whole piece: rows of the weaving order from 1, columns from 0, floating ends included.</summary>
    Piece,
}

/// <summary>A block of cells, first and last counted.</summary>
public readonly record struct Area(AreaOf Of, int FirstRow, int LastRow, int FirstEnd, int LastEnd);

/// <summary>
/// Something that a check has to say of a piece. Equal by value and bounded in length however large the piece is;
/// <see cref="Wording.FindingWhat"/> and <see cref="Wording.FindingWhy"/> say it in words, <see cref="Remedies"/> finds what mends it.
/// </summary>
/// <param name="Check">The check.</param>
/// <param name="Weight">How much it matters.</param>
/// <param name="Count">Number of places: of turns, of threads, of floats; at least 1.</param>
/// <param name="Areas">The first of them as cells, at most <see cref="MostAreas"/>.</param>
public abstract record Finding(CheckKind Check, Weight Weight, int Count, Sequence<Area> Areas)
{
    /// <summary>Areas that one finding names at most.</summary>
    public const int MostAreas = 24;

    /// <summary>Tells findings of one check apart: each says the same thing of another weft, thread or step.</summary>
    internal virtual int Which => 0;

    /// <summary>A finding that an edit leaves standing has the same name before and after it.</summary>
    internal (CheckKind Check, int Which) Name => (Check, Which);
}
