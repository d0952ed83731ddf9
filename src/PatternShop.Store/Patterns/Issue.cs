namespace PatternShop.Store;

/// <summary>One file of a version to be issued.</summary>
/// <param name="Edition">Names the kind within the version, such as "a4".</param>
/// <param name="Name">The name under which it is downloaded.</param>
public sealed record IssuedFile(string Edition, string Name, string MediaType, byte[] Bytes);

/// <summary>What a version is to the one before.</summary>
public enum VersionKind
{
    /// <summary>The first version, or the design made anew.</summary>
    Edition,

    /// <summary>It mends a mistake of an earlier version.</summary>
    Correction,
}

/// <summary>A version to be issued.</summary>
/// <param name="BaseRevision">The revision that the files were made from.</param>
/// <param name="Number">The number that the files name.</param>
/// <param name="Date">Calendar date in the maker's zone.</param>
/// <param name="Note">What changed, in the maker's words; may be empty, at most <see cref="NoteMost"/> characters.</param>
/// <param name="Canonical">The document's canonical bytes.</param>
/// <param name="Hash">Their hash, as printed.</param>
/// <param name="Files">In the order in which they shall be listed.</param>
public sealed record IssueRequest(long BaseRevision, int Number, DateOnly Date, string Note, byte[] Canonical, string Hash, IReadOnlyList<IssuedFile> Files)
{
    public const int NoteMost = 2000;

    /// <summary>Only a version after the first can be a correction.</summary>
    public VersionKind Kind { get; init; }

    /// <summary>The code that the sheets name; null when they name none.</summary>
    public CopyCode? Code { get; init; }

    /// <summary>Reports of the pattern that a correction answers; others are left out.</summary>
    public IReadOnlyList<long> Mends { get; init; } = [];
}

/// <summary>What came of issuing.</summary>
public abstract record IssueResult
{
    private IssueResult()
    {
    }

    /// <summary>Readers have it, unless the pattern is withdrawn.</summary>
    public sealed record Issued(int Number) : IssueResult;

    /// <summary>The number is not the next one: somebody was faster.</summary>
    public sealed record NumberTaken(int Next) : IssueResult;

    /// <summary>The document went on since the files were made.</summary>
    public sealed record Moved(PatternState Now) : IssueResult
    {
        public long Revision => Now.Revision;
    }

    /// <summary>The maker has no such pattern.</summary>
    public sealed record Missing : IssueResult;

    /// <param name="Problems">Everything that is wrong; at least one.</param>
    public sealed record Refused(IReadOnlyList<FieldProblem> Problems) : IssueResult;
}
