namespace PatternShop.Weave;

/// <summary>A count, a length or a part of the plan that two versions give differently, in words.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Old">As the old version says it; may have several lines.</param>
/// <param name="New">As the new version says it.</param>
public sealed record FactChange(string Label, string Old, string New);

public partial class Wording
{
    private const int NumbersNamed = 8;

    public string ChangesTitle(int since) => $"What changed since version {Number(since)}";

    public string BeforeLabel => "before";

    public string NowLabel => "now";

    public string TooLongToCompare => "These versions are too long to be laid beside each other row by row.";

    /// <summary>How many rows differ: "2 rows read otherwise, 1 row is new; the other 14 read as before."</summary>
    public string RowsSummary(PieceDifference difference)
    {
        ArgumentNullException.ThrowIfNull(difference);
        var fates = difference.Rows.CountBy(row => row.Fate).ToDictionary();
        int Of(RowFate fate) => fates.GetValueOrDefault(fate);
        var parts = new[]
        {
            Of(RowFate.Changed) is var changed and > 0 ? $"{Rows(changed)} {(changed == 1 ? "reads" : "read")} otherwise" : "",
            Of(RowFate.Inserted) is var inserted and > 0 ? $"{Rows(inserted)} {(inserted == 1 ? "is" : "are")} new" : "",
            Of(RowFate.Removed) is var removed and > 0 ? $"{Rows(removed)} {(removed == 1 ? "is" : "are")} gone" : "",
        }.Where(part => part.Length > 0).ToList();
        if (parts.Count == 0)
        {
            return "Every row reads as before.";
        }

        var same = Of(RowFate.Same) switch { 0 => "no row reads as before", 1 => "1 row reads as before", var many => $"{Number(many)} rows read as before" };
        return $"{string.Join(", ", parts)}; {same}.";
    }

    /// <summary>Which rows changed in one way: "Rows 4 and 12, now rows 5 and 14", "Row 3 is new", "Row 6 is gone".</summary>
    public string ChangedRowsText(ChangedRows rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        return rows.Fate switch
        {
            RowFate.Inserted => $"{Capital(NumbersOf(rows.New))} {(rows.New.Count == 1 ? "is" : "are")} new",
            RowFate.Removed => $"{Capital(NumbersOf(rows.Old))} {(rows.Old.Count == 1 ? "is" : "are")} gone",
            _ when rows.Old.Equals(rows.New) => Capital(NumbersOf(rows.Old)),
            _ => $"{Capital(NumbersOf(rows.Old))}, now {NumbersOf(rows.New)}",
        };
    }

    /// <summary>A whole reading of a row with its weft where there are several: "from the left →: over 3, under 2".</summary>
    public string RowText(Piece piece, int number)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var weft = WeftName(piece, piece.Rows[number - 1].Weft);
        return (weft.Length > 0 ? weft + ", " : "") + DirectionsText(piece.Reading(number));
    }

    /// <summary>Counts, lengths and plan that differ, each with both readings.</summary>
    public Sequence<FactChange> FactChanges(Piece old, Piece @new)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(@new);
        return [.. Facts(old, null).Zip(Facts(@new, old.Document), (before, now) => new FactChange(before.Label, before.Text, now.Text)).Where(fact => fact.Old != fact.New)];
    }

    /// <summary>Where somebody goes on: "Go on with row 9 of version 2, which starts from the left."</summary>
    public string GoOnText(MovedPlace place, int number)
    {
        ArgumentNullException.ThrowIfNull(place);
        return place.SideNext is { } side
            ? $"Go on with row {Number(place.Next)} of version {Number(number)}, which starts from the {Name(side)}."
            : DoneHereForm.Replace("{number}", Number(number), StringComparison.Ordinal);
    }

    /// <summary>Says that the weft lies at the wrong side; empty where it fits.</summary>
    public string SideText(MovedPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return place is { SideFits: false, SideNow: { } now, SideNext: { } next }
            ? SideForm.Replace("{now}", Name(now), StringComparison.Ordinal).Replace("{next}", Name(next), StringComparison.Ordinal)
            : "";
    }

    /// <summary>The changes behind the place: "You have passed 1 change: row 4."</summary>
    public string PassedText(MovedPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return place.Passed.Count == 0 ? "You have passed none of the changes." : $"You have passed {Count(place.Passed.Count, "change", "changes")}: {FatesText(place.Passed)}.";
    }

    /// <summary>The changes before the place: "2 changes are to come: rows 12 and 20."</summary>
    public string ToComeText(MovedPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        return place.ToCome.Count == 0
            ? "No change is to come."
            : $"{Count(place.ToCome.Count, "change is", "changes are")} to come: {FatesText(place.ToCome)}.";
    }

    // Changed and new rows by their new numbers, rows that are gone by their old ones.
    private string FatesText(Sequence<RowPair> rows)
    {
        var parts = new[]
        {
            (Text: "", Rows: Of(RowFate.Changed, row => row.New)),
            (Text: "new ", Rows: Of(RowFate.Inserted, row => row.New)),
            (Text: "no longer ", Rows: Of(RowFate.Removed, row => row.Old)),
        };
        return string.Join(", ", parts.Where(part => part.Rows.Count > 0).Select(part => part.Text + NumbersOf(part.Rows)));

        Sequence<int> Of(RowFate fate, Func<RowPair, int?> number) => rows.Where(row => row.Fate == fate).Select(number).OfType<int>().ToSequence();
    }

    private (string Label, string Text)[] Facts(Piece piece, PatternDocument? before) =>
    [
        ("Title", piece.Document.Title),
        (WarpTitle, WarpArithmetic(piece)),
        (CountingRuleLabel, EndsRule(piece)),
        ("Sett and width", WidthText(piece)),
        ("Rows and length", LengthText(piece)),
        (EdgesLabel, EdgesText(piece)),
        (BeginLabel, string.Join(' ', new[] { StartText(piece), OffsetText(piece) }.Where(text => text.Length > 0))),
        ("Floats", FloatsText(Floats.Longest(piece))),
        (ScheduleTitle, string.Join('\n', Schedule.Of(piece).Select(line => ScheduleText(piece, line)))),
        (YarnsLabel, YarnsText(piece.Document)),
        (NotesTitle, piece.Document.Notes),
        (RowWordsLabel, RowWordsText(piece.Document)),
        (VideosLabel, VideosText(piece.Document)),
        (PhotosLabel, PhotosText(piece.Document, before)),
        (LicenceLabel, piece.Document.Licence),
    ];

    private string NumbersOf(Sequence<int> numbers) => numbers.Count <= NumbersNamed
        ? Listed("row", "rows", numbers)
        : $"rows {string.Join(", ", numbers.Take(NumbersNamed).Select(Number))} and {Number(numbers.Count - NumbersNamed)} more";
}
