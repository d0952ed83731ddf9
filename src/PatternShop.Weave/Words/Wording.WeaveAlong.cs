namespace PatternShop.Weave;

public partial class Wording
{
    public virtual string WeaveAlongTitle => "Weave along";

    /// <summary>How a place in rows woven once is said; the names in braces stand for numbers.</summary>
    public virtual string PlaceForm => "Row {number} of {all}";

    /// <summary>How a place in repeated rows is said; the names in braces stand for numbers.</summary>
    public virtual string PlaceAgainForm => "Row {within} of {each} · time {time} of {times} (row {number} of {all})";

    /// <summary>How the progress in a bracket is said.</summary>
    public virtual string BracketForm => "{time} of {times} times";

    /// <summary>How the progress in a bracket inside another is said, after that of the other.</summary>
    public virtual string InnerBracketForm => ", in the inner bracket {time} of {times}";

    /// <summary>How the last run of a row is said before it is reached.</summary>
    public virtual string EndsForm => "ends with: {run}";

    /// <summary>What stands below the last run of a row.</summary>
    public virtual string TurnForm => "then row {number}, {from}";

    /// <summary>What is said when everything is woven.</summary>
    public virtual string DoneForm => "All {all} rows are woven.";

    /// <summary>A place: "Row 4 of 8 · time 2 of 3 (row 12 of 26)".</summary>
    public virtual string PlaceText(Piece piece, int number)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var place = piece.PlaceOf(number);
        return (place.Times == 1 ? PlaceForm : PlaceAgainForm)
            .Replace("{within}", Number(place.Within), StringComparison.Ordinal)
            .Replace("{each}", Number(place.RowsEachTime), StringComparison.Ordinal)
            .Replace("{time}", Number(place.Time), StringComparison.Ordinal)
            .Replace("{times}", Number(place.Times), StringComparison.Ordinal)
            .Replace("{number}", Number(number), StringComparison.Ordinal)
            .Replace("{all}", Number(piece.Rows.Count), StringComparison.Ordinal);
    }

    /// <summary>What a weaver at a row must know besides its runs: its chart row where that is not the number within the repeated rows, "plain", its weft where there are several; empty elsewhere.</summary>
    public virtual string PlaceNotes(Piece piece, int number)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var row = piece.Rows[number - 1];
        var parts = new[] { row.ChartRow == piece.PlaceOf(number).Within ? "" : SourceName(row), WeftName(piece, row.Weft) };
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }
}
