namespace PatternShop.Weave;

/// <summary>What is said of repeat and symmetry.</summary>
public partial class Wording
{
    /// <summary>"a multiple of 10, plus 1".</summary>
    public string CountingRule(int multiple, int plus) => $"a multiple of {Number(multiple)}{(plus > 0 ? $", plus {Number(plus)}" : "")}";

    /// <summary>The smallest repeat: "The smallest repeat is 4 ends by 4 rows; 1 row further up it is the same, 1 end to the right."</summary>
    public string RepeatText(Symmetry symmetry)
    {
        ArgumentNullException.ThrowIfNull(symmetry);
        var size = $"The smallest repeat is {Count(symmetry.Across, "end", "ends")} by {Rows(symmetry.Along)}";
        return symmetry.Aside == 0
            ? $"{size}."
            : $"{size}; {Rows(symmetry.Up)} further up it is the same, {Count(symmetry.Aside, "end", "ends")} to the right.";
    }

    /// <summary>Where the repeated motif mirrors and turns: "Left and right mirror on ends 1 and 5. …"</summary>
    public string MirrorsText(Symmetry symmetry)
    {
        ArgumentNullException.ThrowIfNull(symmetry);
        var turns = symmetry.HalfTurns().FirstOrDefault();
        string[] sentences =
        [
            symmetry.MirrorEnds.Count == 0 ? "Left and right do not mirror." : $"Left and right mirror {PlacesText(symmetry.AxesAcross, symmetry.Ends, "end", "ends")}.",
            symmetry.MirrorRows.Count == 0 ? "Top and bottom do not mirror." : $"Top and bottom mirror {PlacesText(symmetry.AxesAlong, symmetry.Rows, "row", "rows")}.",
            symmetry.Turn is null ? "No half turn leaves it the same." : $"Half a turn leaves it the same, for one about the point {PlaceText(turns.End, symmetry.Ends, "end", "ends")} and {PlaceText(turns.Row, symmetry.Rows, "row", "rows")}.",
        ];
        return string.Join(' ', sentences);
    }

    /// <summary>A way to mirror: "Begin with end 6 of the motif, 1 balance end (a multiple of 10, plus 1): end 1 is in the middle."</summary>
    public string MirrorChoiceText(MirrorChoice choice, int motifEnds)
    {
        ArgumentNullException.ThrowIfNull(choice);
        var way = choice.Way;
        var middle = choice.Middle.IsOnThread
            ? $"end {Number(choice.Middle.Thread + 1)} is in the middle"
            : $"the middle is {PlaceText(choice.Middle, motifEnds, "end", "ends")}";
        return $"Begin with end {Number(way.Offset + 1)} of the motif, {Count(way.Balance, "balance end", "balance ends")} ({CountingRule(motifEnds, way.Balance)}): {middle}.";
    }

    /// <summary>How many rows close the piece so that top and bottom mirror; what to do where nothing does.</summary>
    public string ClosingRowsText(int? rows) => rows switch
    {
        null => "No closing rows make top and bottom mirror.",
        0 => "Top and bottom mirror without closing rows.",
        _ => $"{Count(rows.Value, "closing row", "closing rows")} {(rows == 1 ? "makes" : "make")} top and bottom mirror.",
    };

    private string PlacesText(Sequence<Middle> places, int threads, string one, string many)
    {
        var on = places.Where(place => place.IsOnThread).Select(place => Number(place.Thread + 1)).ToList();
        var between = places.Where(place => !place.IsOnThread).Select(place => PlaceText(place, threads, one, many)).ToList();
        return string.Join(" and ", new[] { on.Count == 0 ? "" : $"on {Listed(one, many, on)}", Joined(between) }.Where(part => part.Length > 0));
    }

    private string PlaceText(Middle place, int threads, string one, string many) => place.IsOnThread
        ? $"on {one} {Number(place.Thread + 1)}"
        : threads == 1 ? $"between two {many}" : $"between {many} {Number(place.Thread + 1)} and {Number(((place.Thread + 1) % threads) + 1)}";

    // The first few of many names, so that a sentence stays one.
    private string Listed(string one, string many, List<string> names) => names.Count == 1 ? $"{one} {names[0]}" : $"{many} {Joined(names)}";

    private string Joined(List<string> names)
    {
        const int Most = 6;
        return names.Count switch
        {
            0 => "",
            1 => names[0],
            <= Most => $"{string.Join(", ", names.SkipLast(1))} and {names[^1]}",
            _ => $"{string.Join(", ", names.Take(Most))} and {Number(names.Count - Most)} more",
        };
    }
}
