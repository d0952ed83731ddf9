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

    /// <summary>What a link says that leads to the form for mistakes, with the row filled in.</summary>
    public virtual string ReportRowForm => "Report a mistake in row {number}";

    /// <summary>"Report a mistake in row 4".</summary>
    public virtual string ReportRowText(int number) => ReportRowForm.Replace("{number}", Number(number), StringComparison.Ordinal);

    /// <summary>How far somebody is in an earlier version.</summary>
    public virtual string WovenOfForm => "Rows woven of version {version}: {woven} of {all}.";

    /// <summary>Where somebody goes on in a newer version.</summary>
    public virtual string GoOnForm => "Go on with row {row} of version {number}.";

    /// <summary>What is said instead when nothing is left to weave there.</summary>
    public virtual string DoneHereForm => "In version {number} the piece is done here.";

    /// <summary>What to do where the weft lies at the wrong side.</summary>
    public virtual string SideForm =>
        "Your weft is at the {now}, and that row starts from the {next}: end this weft there and begin a new one at the {next}, or finish in the version that you began.";

    /// <summary>What to do with a row that is half woven and does not come next in the newer version, or reads otherwise there.</summary>
    public virtual string MiddleForm => "You are in the middle of row {row}, and version {number} goes on otherwise here: take that row out as far as it is woven.";

    public virtual string PassedLabel => "Changes among the rows that you have woven";

    public virtual string ToComeLabel => "Changes to come";

    public virtual string NoChangeText => "none";

    public virtual string ChangedRowForm => "Row {rows}";

    public virtual string ChangedRowsForm => "Rows {rows}";

    public virtual string MoreRowsForm => "{rows} and {more} more";

    public virtual string IsNewText => "new";

    public virtual string IsGoneText => "gone";

    public virtual string MoveForm => "Go on in version {number}";

    public virtual string StayForm => "Stay with version {version}";

    public virtual string AnewForm => "Begin version {number} at row 1";

    /// <summary>A place: "Row 4 of 10 · time 2 of 3 (row 14 of 32)".</summary>
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
        var parts = new[] { PlaceSource(piece, number), WeftName(piece, piece.Rows[number - 1].Weft) };
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }

    /// <summary>Where the runs of a row come from: its chart row where that is not the number within the repeated rows, "plain"; empty elsewhere.</summary>
    public virtual string PlaceSource(Piece piece, int number)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var row = piece.Rows[number - 1];
        return row.ChartRow == piece.PlaceOf(number).Within ? "" : SourceName(row);
    }
}
