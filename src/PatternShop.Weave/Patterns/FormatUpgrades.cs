using System.Globalization;

namespace PatternShop.Weave;

/// <summary>A tree of one format brought up to the next, and what stood in the way.</summary>
internal sealed record Upgraded(JsonObject Root, Sequence<FileProblem> Problems);

/// <summary>
/// Brings trees of older formats up to the current one, one format at a time. Pure: a new tree is made, and what is moved
/// keeps its place in the file, so that problems still point to what the reader typed.
/// </summary>
internal static class FormatUpgrades
{
    // item i brings format i + 1 up to format i + 2
    private static readonly Sequence<Func<JsonObject, Upgraded>> Steps = [FromFirst, FromSecond, FromThird];

    public static Upgraded ToCurrent(JsonObject root, int format)
    {
        var upgraded = new Upgraded(root, []);
        foreach (var step in Steps.Skip(format - 1))
        {
            var next = step(upgraded.Root);
            upgraded = next with { Problems = upgraded.Problems.Concat(next.Problems).ToSequence() };
        }

        return upgraded;
    }

    /// <summary>Format 1 gave one side, "start", at which every weft started, and did not list wefts: there were as many as the highest number used.</summary>
    private static Upgraded FromFirst(JsonObject root)
    {
        var numbered = root.With("format", new JsonNumber("2", root["format"]?.Place ?? root.Place));
        if (numbered["rows"] is not JsonObject rows)
        {
            return new Upgraded(numbered, []);
        }

        var stray = rows.Members.Where(member => member.Name == "wefts").Select(Stray).ToSequence();
        var start = rows.Members.Where(member => member.Name == "start").ToSequence();
        var weft = new JsonObject(start, start.Count > 0 ? start[0].Value.Place : rows.Place);
        var wefts = new JsonArray(Enumerable.Repeat<JsonValue>(weft, HighestWeft(rows["steps"])).ToSequence(), weft.Place);
        return new Upgraded(numbered.With("rows", rows.Without("start").Without("wefts").With("wefts", wefts)), stray);
    }

    private static FileProblem Stray(JsonMember member) => new(
        ProblemCodes.UnknownMember,
        member.Value.Place.Pointer,
        member.NameOffset,
        "\"wefts\" has no meaning in format 1.",
        "Remove it, or write \"format\": 2 and leave \"start\" out.");

    /// <summary>Format 2 had neither words, videos and photos of the maker nor limits.</summary>
    private static Upgraded FromSecond(JsonObject root) => Grown(root, 3, "rowWords", "videos", "photos", "limits");

    /// <summary>Format 3 said nothing of thicknesses and colours, nor of what is printed after the chart.</summary>
    private static Upgraded FromThird(JsonObject root) => Grown(root, 4, "cloth", "afterChart");

    /// <summary>A format that only brought new members, each of which may be left out.</summary>
    private static Upgraded Grown(JsonObject root, int format, params string[] added)
    {
        var strays = root.Members.Where(member => added.Contains(member.Name, StringComparer.Ordinal)).ToList();
        var numbered = root.With("format", new JsonNumber(Plain.Number(format), root["format"]?.Place ?? root.Place));
        return new Upgraded(strays.Aggregate(numbered, (tree, member) => tree.Without(member.Name)), strays.Select(member => New(member, format)).ToSequence());
    }

    private static FileProblem New(JsonMember member, int format) => new(
        ProblemCodes.UnknownMember,
        member.Value.Place.Pointer,
        member.NameOffset,
        $"{Plain.Quote(member.Name)} has no meaning before format {Plain.Number(format)}.",
        $"Remove it, or write the file in format {Plain.Number(format)}.");

    private static int HighestWeft(JsonValue? value) => Math.Min(Bounds.Wefts, value switch
    {
        JsonArray list => list.Items.Select(HighestWeft).Append(1).Max(),
        JsonObject step => Math.Max(Number(step["weft"]), HighestWeft(step["steps"])),
        _ => 1,
    });

    private static int Number(JsonValue? value) =>
        value is JsonNumber number && int.TryParse(number.Text, NumberStyles.None, CultureInfo.InvariantCulture, out var whole) ? whole : 1;
}
