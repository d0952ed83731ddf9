namespace PatternShop.Store;

/// <summary>A pattern as it stands in the shop front.</summary>
/// <param name="Number">Number of the newest version.</param>
/// <param name="Date">Date of the newest version.</param>
/// <param name="Canonical">The newest version's document, canonical bytes.</param>
public sealed record ShelfCard(PatternId Id, string Title, string StudioName, string Handle, int Number, DateOnly Date, byte[] Canonical);

/// <summary>A pattern of which something was issued.</summary>
/// <param name="Title">That of the newest version.</param>
/// <param name="Withdrawn">Its maker hid it; then no versions are listed, and its page answers 410.</param>
/// <param name="Versions">The newest first.</param>
public sealed record ShelfPattern(PatternId Id, string Title, string StudioName, string Handle, bool Withdrawn, IReadOnlyList<ShelfVersion> Versions);

/// <summary>One line of the list of versions.</summary>
/// <param name="Kind">What it is to the one before.</param>
public sealed record ShelfVersion(int Number, DateOnly Date, string Note, string Hash, VersionKind Kind = VersionKind.Edition);

/// <summary>A version and what it consists of.</summary>
/// <param name="Canonical">Canonical bytes of the document.</param>
/// <param name="Format">Their format.</param>
/// <param name="Hash">Their hash.</param>
/// <param name="Files">In the order in which they were issued.</param>
public sealed record IssuedVersion(PatternId Id, int Number, DateOnly Date, string Note, string Title, byte[] Canonical, int Format, string Hash, IReadOnlyList<ShelfFileCard> Files)
{
    /// <summary>What it is to the one before.</summary>
    public VersionKind Kind { get; init; }

    /// <summary>The code on its sheets; null when they have none.</summary>
    public CopyCode? Code { get; init; }

    /// <summary>The photos that its document names.</summary>
    public IReadOnlyList<PhotoCard> Photos { get; init; } = [];

    /// <summary>The rows that readers reported and that it mends.</summary>
    public IReadOnlyList<MendedRow> Mends { get; init; } = [];
}

/// <summary>A report that a correction answers, as other readers may know of it.</summary>
/// <param name="Number">The version that was reported.</param>
/// <param name="Row">Its row; null when it was about no single row.</param>
public sealed record MendedRow(int Number, int? Row);

/// <summary>The version that a code on a sheet names.</summary>
/// <param name="Newest">Number of the newest version.</param>
/// <param name="Withdrawn">Readers cannot see it now.</param>
public sealed record FoundCopy(PatternId Id, int Number, int Newest, bool Withdrawn);

/// <summary>A file of a version, without its bytes.</summary>
/// <param name="Size">Bytes.</param>
public sealed record ShelfFileCard(string Edition, string Name, string MediaType, string Hash, long Size);

/// <summary>A file to be sent.</summary>
public sealed record ShelfFile(string Name, string MediaType, byte[] Bytes);
