using PatternShop.Print;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>What came of issuing.</summary>
internal abstract record IssueOutcome
{
    private IssueOutcome()
    {
    }

    public sealed record Issued(int Number) : IssueOutcome;

    /// <summary>The pattern changed since the maker looked at what would be issued.</summary>
    public sealed record Changed : IssueOutcome;

    /// <summary>Readers have exactly this already.</summary>
    public sealed record NothingNew : IssueOutcome;

    public sealed record Missing : IssueOutcome;

    public sealed record Refused(IReadOnlyList<FieldProblem> Problems) : IssueOutcome;
}

/// <summary>What the maker says about a version.</summary>
/// <param name="Note">A note for readers.</param>
/// <param name="Kind">What it is to the one before; null when they have not said.</param>
/// <param name="Mends">The reports that it answers.</param>
public sealed record IssueForm(string Note, VersionKind? Kind, IReadOnlyList<long> Mends)
{
    public static IssueForm Blank { get; } = new("", null, []);
}

/// <summary>Makes a version: reads document and number, makes the files while nobody waits for the store, then stores all of it at once.</summary>
internal sealed class Issuer(Workroom workroom, CorrectionsSoFar corrections, PieceFiles files, ShopAddress shop, ShopEvents events, TimeProvider time)
{
    /// <summary>Once more if somebody was faster.</summary>
    private const int Tries = 2;

    /// <summary>Today in the maker's time zone.</summary>
    public DateOnly Today(Maker maker) => TimeZones.DayOf(maker, time.GetUtcNow());

    public async Task<IssueOutcome> IssueAsync(Maker maker, PatternId id, long revision, IssueForm form, CancellationToken cancellationToken)
    {
        var address = await shop.CurrentAsync(cancellationToken);
        for (var tries = 1; ; tries++)
        {
            if (await workroom.OpenAsync(maker.Id, id, cancellationToken) is not { } pattern)
            {
                return new IssueOutcome.Missing();
            }

            if (!pattern.HasUnissuedChanges)
            {
                return new IssueOutcome.NothingNew();
            }

            if (pattern.Revision != revision)
            {
                return new IssueOutcome.Changed();
            }

            if (NextNumber(pattern) > 1 && form.Kind is null)
            {
                return new IssueOutcome.Refused([new FieldProblem("Kind", "You have not said what this version is.", "Choose a correction or a new edition.")]);
            }

            var request = await RequestAsync(maker, pattern, form, address, cancellationToken);
            switch (await workroom.IssueAsync(maker.Id, id, request, cancellationToken))
            {
                case IssueResult.Issued issued:
                    events.Published(maker.Id, id, issued.Number);
                    return new IssueOutcome.Issued(issued.Number);
                case IssueResult.Missing:
                    return new IssueOutcome.Missing();
                case IssueResult.Refused refused:
                    return new IssueOutcome.Refused(refused.Problems);
                case IssueResult.Moved or IssueResult.NumberTaken when tries < Tries:
                    continue;
                default:
                    return new IssueOutcome.Changed();
            }
        }
    }

    private async Task<IssueRequest> RequestAsync(Maker maker, OpenPattern pattern, IssueForm form, string? shopAddress, CancellationToken cancellationToken)
    {
        var (number, date) = (NextNumber(pattern), Today(maker));
        var canonical = PatternWriter.CanonicalBytes(pattern.Document);
        var name = FormattableString.Invariant($"{Slug.Of(pattern.Document.Title)}-v{number}");
        var hash = PatternWriter.Hash(canonical);
        var code = CopyCode.Of(pattern.Id, number, hash);
        var copy = new Copy(code.Spaced, shopAddress is null ? null : $"{shopAddress}/c/{code.Value}");
        var page = shopAddress is null ? null : shopAddress + PublicPages.Address(pattern.Id, pattern.Document.Title, number);
        var kind = form.Kind ?? VersionKind.Edition;
        var line = new VersionLine(number, date, page)
        {
            Copy = copy,
            Maker = maker.StudioName,
            Corrections = await corrections.OfAsync(maker, pattern, (number, date, kind), cancellationToken),
        };
        var made = files.Make(Piece.Of(pattern.Document), line);
        return new IssueRequest(
            pattern.Revision,
            number,
            date,
            form.Note,
            canonical,
            hash,
            [.. made.Select(file => new IssuedFile(file.Kind, $"{name}.{file.Kind}", file.MediaType, file.Bytes))])
        {
            Kind = kind,
            Mends = form.Mends,
            Code = code,
        };
    }

    public static int NextNumber(OpenPattern pattern) => pattern.Versions is [var newest, ..] ? newest.Number + 1 : 1;
}
