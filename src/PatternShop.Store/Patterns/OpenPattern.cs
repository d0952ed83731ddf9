using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>Where a pattern stands now.</summary>
/// <param name="Revision">Grows with every step, undo and redo; from 1.</param>
/// <param name="Document">What the maker has before them.</param>
/// <param name="UndoName">The step that undo would take back; null when there is none.</param>
/// <param name="RedoName">The step that redo would bring back; null when there is none.</param>
public sealed record PatternState(long Revision, PatternDocument Document, string? UndoName, string? RedoName)
{
    public bool CanUndo => UndoName is not null;

    public bool CanRedo => RedoName is not null;
}

/// <summary>What readers have of a pattern, beside what the maker has.</summary>
public enum Standing
{
    /// <summary>Nothing: no version was issued.</summary>
    Unpublished,

    /// <summary>The same: the newest version holds what the maker has.</summary>
    Published,

    /// <summary>
    /// Something else: the canonical content of the present document, in the format of today, is not that of the newest version. Which
    /// steps led there does not matter, so what was changed and taken back counts as the same.
    /// </summary>
    CorrectionWaiting,
}

/// <summary>One line of a maker's list of patterns.</summary>
/// <param name="Revision">As in <see cref="PatternState"/>.</param>
/// <param name="NewestNumber">Number of the newest version; null when none was issued.</param>
/// <param name="NewestDate">Date of the newest version.</param>
/// <param name="Withdrawn">Readers do not see it, whatever was issued.</param>
public sealed record PatternCard(
    PatternId Id,
    string Title,
    DateTimeOffset ChangedAt,
    long Revision,
    int? NewestNumber,
    DateOnly? NewestDate,
    bool Withdrawn,
    Standing Standing)
{
    /// <summary>Readers do not have what the maker has.</summary>
    public bool HasUnissuedChanges => Standing != Standing.Published;
}

/// <summary>A pattern that was thrown away and can be brought back.</summary>
/// <param name="KeptUntil">From then on it is gone.</param>
public sealed record DeletedCard(PatternId Id, string Title, long Revision, DateTimeOffset DeletedAt, DateTimeOffset KeptUntil);

/// <summary>A version as its maker sees it.</summary>
public sealed record VersionCard(int Number, DateOnly Date, string Note, string Hash, DateTimeOffset IssuedAt)
{
    /// <summary>What it is to the one before.</summary>
    public VersionKind Kind { get; init; }
}

/// <summary>A pattern on the maker's table.</summary>
/// <param name="Versions">What was issued, the newest first.</param>
public sealed record OpenPattern(PatternId Id, PatternState Now, bool Withdrawn, Standing Standing, IReadOnlyList<VersionCard> Versions)
{
    /// <summary>Readers do not have what the maker has.</summary>
    public bool HasUnissuedChanges => Standing != Standing.Published;

    public PatternDocument Document => Now.Document;

    public long Revision => Now.Revision;

    public bool CanUndo => Now.CanUndo;

    public bool CanRedo => Now.CanRedo;

    public string? UndoName => Now.UndoName;

    public string? RedoName => Now.RedoName;
}

/// <summary>A step that a client asks to be taken.</summary>
/// <param name="Client">Names the window that asks, 1 to 64 characters.</param>
/// <param name="Sequence">The client's own number for it; the same number is never carried out twice.</param>
/// <param name="BaseRevision">The revision that the step was made on.</param>
/// <param name="Name">What was done, in the maker's language; undo and redo show it.</param>
/// <param name="Document">The whole document after the step.</param>
public sealed record StepRequest(string Client, long Sequence, long BaseRevision, string Name, PatternDocument Document);

/// <summary>What came of a step, an undo or a redo.</summary>
public abstract record SaveResult
{
    private SaveResult()
    {
    }

    /// <summary>It is done and on disk.</summary>
    public sealed record Saved(PatternState Now) : SaveResult
    {
        public long Revision => Now.Revision;
    }

    /// <summary>It was done before, under the same client and sequence, and is not done again.</summary>
    /// <param name="Revision">The revision that it made then.</param>
    /// <param name="Now">Where the pattern stands now.</param>
    public sealed record HadAlready(long Revision, PatternState Now) : SaveResult;

    /// <summary>Nothing was done: others went on since the revision that it was made on.</summary>
    public sealed record Moved(PatternState Now) : SaveResult
    {
        public long Revision => Now.Revision;

        public PatternDocument Document => Now.Document;
    }

    /// <summary>There is nothing to undo or redo.</summary>
    public sealed record Nothing(PatternState Now) : SaveResult;

    /// <summary>The maker has no such pattern.</summary>
    public sealed record Missing : SaveResult;

    /// <summary>The document breaks rules.</summary>
    /// <param name="Problems">Everything that is wrong; at least one.</param>
    public sealed record Refused(Sequence<Problem> Problems) : SaveResult;
}
