using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>Turns a request into the rows of a version.</summary>
internal static class Issuing
{
    /// <summary>What a maker typed and can mend.</summary>
    public static IReadOnlyList<FieldProblem> Check(IssueRequest request) =>
    [
        .. request.Note.Length > IssueRequest.NoteMost
            ? [new FieldProblem(nameof(IssueRequest.Note), FormattableString.Invariant($"The note has more than {IssueRequest.NoteMost} characters."), "Make it shorter.")]
            : Array.Empty<FieldProblem>(),
        .. FormText.Unfit(nameof(IssueRequest.Note), "the note", request.Note, mayBreakLines: true) is { } unfit ? [unfit] : Array.Empty<FieldProblem>(),
    ];

    /// <exception cref="ArgumentException">Hash, bytes and files do not fit together: whoever made them has a mistake.</exception>
    public static void Require(IssueRequest request)
    {
        Require(request, request.Hash == PatternWriter.Hash(request.Canonical), "The hash is not that of the canonical bytes.");
        Require(request, request.Files.Select(file => file.Edition).Distinct(StringComparer.Ordinal).Count() == request.Files.Count, "An edition stands in the list twice.");
        foreach (var file in request.Files)
        {
            Require(request, file.Edition.Length > 0 && file.Name.Length > 0 && file.MediaType.Length > 0 && file.Bytes.Length > 0, "A file lacks its edition, name, kind or bytes.");
            Require(request, !file.Name.Any(sign => char.IsControl(sign) || sign is '/' or '\\' or '"'), "A file has a name that cannot be one.");
        }
    }

    /// <exception cref="ArgumentException">The canonical bytes are not those of the document at that revision.</exception>
    public static void RequireSame(IssueRequest request, PatternDocument document) =>
        Require(request, request.Canonical.AsSpan().SequenceEqual(PatternWriter.CanonicalBytes(document)), "The canonical bytes are not those of the present document.");

    public static async Task AddAsync(StoreContext context, PatternRow pattern, IssueRequest request, DateTimeOffset now, CancellationToken cancellationToken)
    {
        context.Versions.Add(new VersionRow
        {
            PatternId = pattern.Id,
            Number = request.Number,
            Date = request.Date,
            Note = request.Note,
            Title = pattern.Title,
            Format = PatternWriter.Format,
            Hash = request.Hash,
            Canonical = request.Canonical,
            Files = request.Files.Count,
            IssuedAt = now,
            Kind = request.Number == 1 ? VersionKind.Edition : request.Kind,
            Code = request.Code?.Value,
            Mends = request is { Kind: VersionKind.Correction, Number: > 1 } ? await ReportDesk.MendsAsync(context, pattern.Id, request.Mends, cancellationToken) : "",
        });
        foreach (var (place, file) in request.Files.Index())
        {
            var hash = PatternWriter.Hash(file.Bytes);
            if (context.Files.Local.All(row => row.Hash != hash) && !await context.Files.AnyAsync(row => row.Hash == hash, cancellationToken))
            {
                context.Files.Add(new FileRow { Hash = hash, Bytes = file.Bytes });
            }

            context.VersionFiles.Add(new VersionFileRow
            {
                PatternId = pattern.Id,
                Number = request.Number,
                Edition = file.Edition,
                Place = place,
                Name = file.Name,
                MediaType = file.MediaType,
                Hash = hash,
                Size = file.Bytes.Length,
            });
        }
    }

    private static void Require(IssueRequest request, bool holds, string otherwise)
    {
        if (!holds)
        {
            throw new ArgumentException(otherwise, nameof(request));
        }
    }
}
