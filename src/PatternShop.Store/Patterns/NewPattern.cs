using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>A document packed as rows of the history hold it.</summary>
internal sealed record PackedDocument(string Title, string Hash, byte[] Content)
{
    public static PackedDocument Of(PatternDocument document)
    {
        var canonical = PatternWriter.CanonicalBytes(document);
        return new PackedDocument(document.Title, PatternWriter.Hash(canonical), DocumentContent.Pack(canonical));
    }
}

/// <summary>A pattern about to be made.</summary>
internal sealed record NewPattern(PackedDocument Document)
{
    /// <exception cref="ArgumentException">The document breaks a rule.</exception>
    public static NewPattern Of(PatternDocument document) => DocumentRules.Check(document) is [var problem, ..]
        ? throw new ArgumentException($"{problem.Pointer}: {problem.What}", nameof(document))
        : new NewPattern(PackedDocument.Of(document));

    public async Task<PatternId> AddAsync(StoreContext context, MakerId maker, DateTimeOffset now, RandomNumberGenerator random, CancellationToken cancellationToken)
    {
        var id = Token.Make(random, Token.PatternIdLength);
        while (await context.Patterns.IgnoreQueryFilters().AnyAsync(row => row.Id == id, cancellationToken))
        {
            id = Token.Make(random, Token.PatternIdLength);
        }

        context.Patterns.Add(new PatternRow
        {
            Id = id,
            MakerId = maker.Value,
            Title = Document.Title,
            Hash = Document.Hash,
            Format = PatternWriter.Format,
            Revision = 1,
            Cursor = 0,
            MadeAt = now,
            ChangedAt = now,
        });
        context.Steps.Add(new StepRow { PatternId = id, Position = 0, Name = "", TakenAt = now, Content = Document.Content });
        return new PatternId(id);
    }
}
