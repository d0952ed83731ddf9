namespace PatternShop.Weave;

/// <summary>Words for the list of corrections that stands on the sheets of a version.</summary>
public partial class Wording
{
    public string CorrectionsTitle => "Corrections so far";

    /// <summary>How the list is read.</summary>
    public string CorrectionsMark => "Rows have the numbers that they have in the version which is named.";

    /// <summary>What a version corrected of the one before it: "rows 4 and 12; also the order of work".</summary>
    public string CorrectedText(Piece old, Piece @new)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(@new);
        if (PieceDifference.IsTooLong(old, @new))
        {
            return TooLongToCompare;
        }

        var changes = PieceDifference.Between(old, @new).Changes();
        var changed = changes.Where(change => change.Fate == RowFate.Changed).SelectMany(change => change.New).Order().ToSequence();
        var parts = new[] { changed.Count > 0 ? $"{Capital(NumbersOf(changed))} {(changed.Count == 1 ? "reads" : "read")} otherwise" : "" }
            .Concat(changes.Where(change => change.Fate != RowFate.Changed).Select(ChangedRowsText))
            .Where(part => part.Length > 0)
            .ToList();
        var facts = string.Join(", ", FactChanges(old, @new).Select(fact => Uncapital(fact.Label)));
        var rows = parts.Count == 0 ? "Every row reads as before" : string.Join("; ", parts.Select((part, i) => i == 0 ? part : Uncapital(part)));
        return facts.Length == 0 ? $"{rows}." : $"{rows}. Otherwise now: {facts}.";
    }

    private static string Uncapital(string text) => char.ToLowerInvariant(text[0]) + text[1..];
}
