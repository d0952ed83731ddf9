namespace PatternShop.Store;

/// <summary>A row that is part of a version, and so is written once and never changed or removed.</summary>
internal interface IIssuedRow;

internal sealed class MakerRow
{
    public long Id { get; init; }

    public required string StudioName { get; set; }

    public required string Handle { get; set; }

    public required string Email { get; set; }

    /// <summary>The address as it is looked up: without regard to case.</summary>
    public required string EmailKey { get; set; }

    public required string PassphraseHash { get; set; }

    /// <summary>Changes with the passphrase, and ends every session that was begun before.</summary>
    public required string Stamp { get; set; }

    public required string TimeZone { get; set; }

    public required DateTimeOffset MadeAt { get; init; }
}

internal sealed class SettingRow
{
    public required string Name { get; init; }

    public required string Value { get; set; }
}

internal sealed class PatternRow
{
    public required string Id { get; init; }

    public required long MakerId { get; init; }

    public required string Title { get; set; }

    /// <summary>Hash of the canonical bytes of the document at the cursor.</summary>
    public required string Hash { get; set; }

    /// <summary>Format of the canonical bytes that <see cref="Hash"/> is of; 0 in rows of programs that did not say.</summary>
    public required int Format { get; set; }

    /// <summary>Grows with every step, undo and redo.</summary>
    public required long Revision { get; set; }

    /// <summary>Position of the step whose document is the present one.</summary>
    public required long Cursor { get; set; }

    public required DateTimeOffset MadeAt { get; init; }

    public required DateTimeOffset ChangedAt { get; set; }

    public DateTimeOffset? WithdrawnAt { get; set; }

    /// <summary>When the maker threw it away; such rows are left out of every question that does not ask for them.</summary>
    public DateTimeOffset? DeletedAt { get; set; }
}

/// <summary>What a step made: the whole document. Positions of a pattern follow one another without a gap.</summary>
internal sealed class StepRow
{
    public required string PatternId { get; init; }

    public required long Position { get; init; }

    public required string Name { get; init; }

    public required DateTimeOffset TakenAt { get; init; }

    /// <summary>Canonical bytes, packed.</summary>
    public required byte[] Content { get; init; }
}

/// <summary>A step, undo or redo that was carried out, so that it is not carried out again when it is sent again.</summary>
internal sealed class CarriedOutRow
{
    public required string PatternId { get; init; }

    public required string Client { get; init; }

    public required long Sequence { get; init; }

    public required long Revision { get; init; }
}

/// <summary>A photo of a pattern, made anew by us, in two sizes. Written once.</summary>
internal sealed class PhotoRow
{
    public required string PatternId { get; init; }

    /// <summary>Hash of <see cref="Large"/>.</summary>
    public required string Hash { get; init; }

    public required int Width { get; init; }

    public required int Height { get; init; }

    public required byte[] Large { get; init; }

    /// <summary>Hash of <see cref="Small"/>.</summary>
    public required string SmallHash { get; init; }

    public required int SmallWidth { get; init; }

    public required int SmallHeight { get; init; }

    public required byte[] Small { get; init; }

    public required DateTimeOffset KeptAt { get; init; }
}

internal sealed class VersionRow : IIssuedRow
{
    public required string PatternId { get; init; }

    public required int Number { get; init; }

    public required DateOnly Date { get; init; }

    public required string Note { get; init; }

    public required string Title { get; init; }

    /// <summary>Format of the canonical bytes.</summary>
    public required int Format { get; init; }

    public required string Hash { get; init; }

    public required byte[] Canonical { get; init; }

    /// <summary>Number of its files; a version cannot be given more of them later.</summary>
    public required int Files { get; init; }

    public required DateTimeOffset IssuedAt { get; init; }

    public required VersionKind Kind { get; init; }

    /// <summary>The short code on its sheets; null for versions that were issued before there were codes.</summary>
    public required string? Code { get; init; }

    /// <summary>Ids of the reports that it answers, joined by commas.</summary>
    public required string Mends { get; init; }
}

/// <summary>The one preview of a pattern, by the hash of the secret in its address.</summary>
internal sealed class PreviewRow
{
    public required string PatternId { get; init; }

    public required string SecretHash { get; set; }

    public required DateTimeOffset BeganAt { get; set; }
}

/// <summary>What a reader says is wrong with a version.</summary>
internal sealed class ReportRow
{
    public long Id { get; init; }

    public required string PatternId { get; init; }

    public required int Number { get; init; }

    /// <summary>Row of the weaving order; null when it is about no single row.</summary>
    public required int? Row { get; init; }

    public required string Text { get; init; }

    public required string ReplyTo { get; init; }

    /// <summary>Hash of the secret in the address at which the reader finds the answer.</summary>
    public required string SecretHash { get; init; }

    public required DateTimeOffset SentAt { get; init; }

    public string? Answer { get; set; }

    public DateTimeOffset? AnsweredAt { get; set; }
}

internal sealed class VersionFileRow : IIssuedRow
{
    public required string PatternId { get; init; }

    public required int Number { get; init; }

    public required string Edition { get; init; }

    /// <summary>Place in the list of the version's files, from 0.</summary>
    public required int Place { get; init; }

    public required string Name { get; init; }

    public required string MediaType { get; init; }

    public required string Hash { get; init; }

    public required long Size { get; init; }
}

internal sealed class FileRow : IIssuedRow
{
    public required string Hash { get; init; }

    public required byte[] Bytes { get; init; }
}
