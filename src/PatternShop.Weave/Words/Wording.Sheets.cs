namespace PatternShop.Weave;

/// <summary>Words of the printed sheets beside those of the piece.</summary>
public partial class Wording
{
    /// <summary>Heads the column that says at which side a row starts.</summary>
    public string FromColumn => "From the";

    /// <summary>Where the weft goes in, under a heading that says "from the": "left →" or "← right".</summary>
    public string ShortHeading(Side from) => from == Side.Left ? "left →" : "← right";

    /// <summary>What stands beside a row where there is little room: its weft where there are several, an equal row before it. The order of work names its chart row.</summary>
    public string FewRowNotes(Piece piece, int number)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var row = piece.Rows[number - 1];
        return string.Join(", ", new[] { WeftName(piece, row.Weft), SameAs(piece, number) }.Where(part => part.Length > 0));
    }

    /// <summary>An edge stitch among rows where there is little room: "twining, twice across". The order of work names its yarn.</summary>
    public string ShortStitchText(EdgeStitch stitch)
    {
        ArgumentNullException.ThrowIfNull(stitch);
        return $"{stitch.Name}, {Times(stitch.Across)} across";
    }

    /// <summary>The same by itself: "Twining, twice across from the left, 3 times".</summary>
    public string ShortStitchText(StitchOnce line)
    {
        ArgumentNullException.ThrowIfNull(line);
        var again = line.Times > 1 ? $", {Times(line.Times)}" : "";
        return $"{Capital(ShortStitchText(line.Stitch.Stitch))} from the {Name(line.Stitch.From)}{again}";
    }

    /// <summary>Where the first row starts, with the way it goes: "Row 1, at the bottom, starts at the right ←".</summary>
    public string BeginText(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var from = piece.Rows[0].From;
        return $"Row 1, at the bottom, starts at the {Name(from)} {(from == Side.Left ? "→" : "←")}";
    }

    /// <summary>Where the other wefts start: "Weft 2 starts in row 3, at the left."; empty for one weft.</summary>
    public string OtherWeftsText(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return string.Join(' ', piece.Rows.DistinctBy(row => row.Weft).Skip(1)
            .Select(row => $"Weft {Number(row.Weft)} starts in row {Number(row.Number)}, at the {Name(row.From)}."));
    }

    /// <summary>Which way the chart and the written rows go.</summary>
    public string ChartAndRowsText => "The chart goes up; the written rows go down, row 1 first.";

    /// <summary>The bar at the foot of every sheet, and what to do when it is wrong.</summary>
    public string ScaleText => "Measure this bar. If it is off, print at 100 %, without fitting to the page.";

    /// <summary>The same in fewer words.</summary>
    public string ShortScaleText => "Measure it. If it is off, print at 100 %.";

    public string MillimetresText(int length) => $"{Number(length)} mm";

    public string InchesText(int length) => $"{Number(length)} in";

    /// <summary>Stands on every sheet of a print that the maker makes for themselves.</summary>
    public string TestPrintText => "Test print, not issued. For the maker only.";

    /// <summary>Which of several sheets of a chart it is: "Sheet 2 of 6:".</summary>
    public string ChartSheetText(int number, int of) => $"Sheet {Number(number)} of {Number(of)}:";

    /// <summary>What stands before the sheets of a chart: how many there are and how they become one.</summary>
    public string SheetsText(int across, int up)
    {
        var lie = (across, up) switch
        {
            (1, _) => $"{Number(up)} one above the other",
            (_, 1) => $"{Number(across)} side by side",
            _ => $"{Number(across)} across and {Number(up)} up",
        };
        return $"The chart is on the next {Number(across * up)} sheets, {lie}. Use them one after another; or cut along the dashed lines and lay each on its neighbours so that the marks meet.";
    }

    /// <summary>What the map of the sheets shows, for those who cannot see it.</summary>
    public string SheetsMapDescription(int across, int up) =>
        $"Map of the sheets: {Number(across)} across, {Number(up)} up. Sheet 1 lies at the bottom left, sheet {Number(across * up)} at the top right.";

    /// <summary>How a sheet of a chart is put to its neighbours; empty for the first.</summary>
    public string CutText(int? left, int? below) => (left, below) switch
    {
        ({ } l, { } b) => $"Cut along the dashed lines at its left and below; lay it on sheets {Number(l)} and {Number(b)} so that the marks meet.",
        ({ } l, null) => $"Cut along the dashed line at its left; lay it on sheet {Number(l)} so that the marks meet.",
        (null, { } b) => $"Cut along the dashed line below; lay it on sheet {Number(b)} so that the marks meet.",
        _ => "",
    };

    /// <summary>Said where the chart begins on the next sheet.</summary>
    public string ChartNextText => "The chart is on the next sheet.";

    public string RowCoverTitle => "Row cover";

    /// <summary>How the cover is cut out and used.</summary>
    public Sequence<string> RowCoverSteps =>
    [
        "Cut the cover out along its outer line, and the window along the dashed line. Stiff paper lasts longer.",
        "Lay it on the chart so that the row you weave is the highest in the window. The rows above are hidden; the two rows under it show what you have just woven.",
        "After each row move the cover up by one row.",
    ];

    public string RowCoverHeading(bool large) => large ? "For the large print" : "For the printable";

    public string RowCoverAbove => "The rows above stay hidden.";

    public string RowCoverTop => "Highest in the window: the row you weave";

    public string RowCoverBelow => "Under it: the two rows you have woven last";

    /// <summary>What the picture of a cover shows, for those who cannot see it.</summary>
    public string RowCoverDescription(decimal width, decimal height) => $"A cover to cut out, with a window {Number(width)} mm wide and {Number(height)} mm high, as high as three rows of the chart.";

    public string RowCoverSubject => "Cover to lay on a weaving chart";

    public string SlipTitle(string title) => $"Correction slip: {title}";

    public string SlipVersions(string old, string @new) => $"For sheets of: {old}. Now: {@new}.";

    public string SlipUse => "Cut each strip out along the dashed lines and paste it over the row on your sheet. Rows with another number say which they were.";

    /// <summary>Said over a strip that is in the short form because the row on the sheet leaves no room for words.</summary>
    public string SlipInShort => "In the short form, to fit the row on your sheet:";

    /// <summary>Said over a strip that is longer than the row on the sheet, with a mark at its height.</summary>
    public string SlipLonger => "This row is longer than it was. Paste the strip only down to the marks at its sides, and lift the rest to read the row below.";

    public string SlipGone => "This row is gone: strike it out.";

    public string SlipSubject => "What changed between two versions of a weaving chart";
}
