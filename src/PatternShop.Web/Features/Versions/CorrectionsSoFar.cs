using PatternShop.Print;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>What the versions of a pattern corrected, as the sheets of the next version list it: each laid beside the one before it.</summary>
internal sealed class CorrectionsSoFar(Workroom workroom, Wording wording)
{
    // Older ones have long been seen; their sheets say what they were.
    private const int MostListed = 12;

    /// <summary>The corrections up to a version that is being issued, the first one first.</summary>
    /// <param name="maker">Whose pattern.</param>
    /// <param name="pattern">The pattern; its present document becomes the version.</param>
    /// <param name="next">Number, date and kind of the version.</param>
    /// <param name="cancellationToken">Ends the work.</param>
    public async Task<Sequence<Correction>> OfAsync(Maker maker, OpenPattern pattern, (int Number, DateOnly Date, VersionKind Kind) next, CancellationToken cancellationToken)
    {
        var corrections = pattern.Versions.Where(version => version.Number > 1).Select(version => (version.Number, version.Date, version.Kind))
            .Append(next)
            .Where(version => version.Kind == VersionKind.Correction)
            .OrderBy(version => version.Number)
            .TakeLast(MostListed);
        var lines = new List<Correction>();
        foreach (var (number, date, _) in corrections)
        {
            if (await PieceAsync(number - 1) is { } before && await PieceAsync(number) is { } after)
            {
                lines.Add(new Correction(number, date, wording.CorrectedText(before, after)));
            }
        }

        return lines.ToSequence();

        async Task<Piece?> PieceAsync(int number) => number == next.Number
            ? Piece.Of(pattern.Document)
            : await workroom.IssuedAsync(maker.Id, pattern.Id, number, cancellationToken) is { } document ? Piece.Of(document) : null;
    }
}
