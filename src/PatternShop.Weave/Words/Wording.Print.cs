namespace PatternShop.Weave;

/// <summary>Words that only printed sheets need.</summary>
public partial class Wording
{
    private static readonly string[] Months =
        ["January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November", "December"];

    public string EndsLabel => "Ends";

    public string CountingRuleLabel => "Counting rule";

    public string WidthLabel => "Width";

    public string RowsLabel => "Rows";

    public string EdgesLabel => "Edges";

    public string BeginLabel => "Begin";

    /// <summary>Heads the choice of what is printed after the chart.</summary>
    public string AfterChartTitle => "Pages after the chart";

    /// <summary>What is no choice, and why.</summary>
    public string AfterChartText => "The sheets go on after the rows. “" + CautionsTitle + "” is always printed, for the safety of those who weave; so is a licence, so that readers know what they may do.";

    public string PrintedChoice => "printed";

    public string LeftOutChoice => "left out";

    /// <summary>A part of the sheets as it is headed there.</summary>
    public string SheetPartName(SheetPart part) => part switch
    {
        SheetPart.MakingUp => MakingUpTitle,
        SheetPart.Corrections => CorrectionsTitle,
        SheetPart.Notes => NotesTitle,
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "There is no such part."),
    };

    public string LicenceLabel => "Licence";

    public string NotesTitle => "Notes of the maker";

    /// <summary>The heading over the address of a version.</summary>
    public string FoundTitle => "Is this the newest version?";

    /// <summary>Why to look at the address.</summary>
    public string FoundText => "Look here before you begin. The page says whether there is a newer version.";

    /// <summary>Head of the column of the order of work that says what is woven.</summary>
    public string WeaveColumn => "Weave";

    /// <summary>Head of the column of boxes.</summary>
    public string TickColumn => "Tick each time through";

    public string RowColumn => "Row";

    public string StartsColumn => "Starts";

    public string DirectionsColumn => "Directions";

    /// <summary>What stands in place of a row's number before an edge stitch among rows.</summary>
    public string ThenLabel => "then";

    /// <summary>What the file is, in a few words.</summary>
    public string PrintSubject => "Weaving chart with written directions";

    /// <summary>"Version 3, 5 November 2026".</summary>
    public string VersionText(int number, DateOnly date) => $"Version {Number(number)}, {DayText(date)}";

    /// <summary>"5 November 2026".</summary>
    public string DayText(DateOnly date) => $"{date.Day} {Months[date.Month - 1]} {date.Year}";

    /// <summary>Which copy a sheet is, and where to look it up: "Copy ABCD-1234 · is it the newest? https://…".</summary>
    public string CopyText(string code, string? address) => address is null ? $"Copy {code}" : $"Copy {code} · is it the newest? {address}";

    /// <summary>The version line of what is not issued yet.</summary>
    public string NotIssuedText => $"Version: {NotIssued}";

    /// <summary>"page 2 of 5".</summary>
    public string PageText(int page, int pages) => $"page {Number(page)} of {Number(pages)}";

    /// <summary>What boxes to tick are, for those who cannot see them.</summary>
    public string BoxesText(int first, int last) => first == last ? "a box to tick" : $"boxes to tick, {Number(first)} to {Number(last)}";

    /// <summary>The count of ends alone: "23 ends".</summary>
    public string EndsText(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return Count(piece.Ends, "end", "ends");
    }

    /// <summary>Which part of a chart stands on a sheet: "Rows 1–40, 81–83; ends 1–36".</summary>
    public string ChartPartText(Piece piece, ChartWindow window)
    {
        ArgumentNullException.ThrowIfNull(piece);
        ArgumentNullException.ThrowIfNull(window);
        var ranges = new List<(int First, int Last)>();
        foreach (var number in piece.PrintedRows().Skip(window.FirstRow).Take(window.Rows))
        {
            if (ranges.Count > 0 && ranges[^1].Last == number - 1)
            {
                ranges[^1] = (ranges[^1].First, number);
            }
            else
            {
                ranges.Add((number, number));
            }
        }

        var rows = string.Join(", ", ranges.Select((range, i) => i == 0 ? Range("row", "rows", range.First, range.Last) : Range("", "", range.First, range.Last).Trim()));
        var (left, right) = (piece.EndName(window.FirstColumn), piece.EndName(window.FirstColumn + window.Columns - 1));
        var ends = window.Columns == 1 ? $"end {left}" : $"ends {left}–{right}";
        return $"{Capital(rows)}; {ends}";
    }

    /// <summary>The heading over written rows that are woven once: "Rows 9–10, once".</summary>
    public string RowsHeading(ScheduleLine line) => line switch
    {
        RowsOnce { Kind: BandKind.Closing } rows => $"{Capital(Range("row", "rows", rows.First, rows.Last))}, {ClosingLabel}",
        RowsOnce rows => $"{Capital(Range("row", "rows", rows.First, rows.Last))}, {Times(1)}",
        _ => "",
    };

    /// <summary>The heading over the written rows of one time through: "Rows 1–8, twice", "Rows 9–15, time 2".</summary>
    public string TimeHeading(Band band, int printedTime) => $"{Capital(TimeText(band, printedTime))}, {PrintedTimeText(band, printedTime)}";
}
