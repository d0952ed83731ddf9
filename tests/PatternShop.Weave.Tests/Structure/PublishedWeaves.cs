using System.Text.Json;
using PatternShop.Tests.Shared;

namespace PatternShop.Weave.Tests;

/// <summary>A weave as it was published.</summary>
/// <param name="Name">Figure and name.</param>
/// <param name="Shafts">Shafts of the published order of ends.</param>
/// <param name="EndOrder">The shaft of every end, from 1, from the left.</param>
/// <param name="Lifts">The shafts raised in every row, row 1 first.</param>
/// <param name="Drawn">What is drawn, once; over where the weft is over, as in every chart.</param>
/// <param name="EndFloat">Rows of the longest float of an end on the face.</param>
/// <param name="WeftFloat">Ends of the longest float of the weft on the face.</param>
/// <param name="HangsTogether">Whether it hangs together.</param>
public sealed record PublishedWeave(string Name, int Shafts, Sequence<int> EndOrder, Sequence<Sequence<int>> Lifts, BitGrid Drawn, int EndFloat, int WeftFloat, bool HangsTogether)
{
    public override string ToString() => Name;
}

/// <summary>
/// 29 weaves of A. Wolfensberger, Theory of Silk Weaving, 2nd ed., New York 1921 (public domain), decoded from its printed grids;
/// published-weaves.json says how.
/// </summary>
internal static class PublishedWeaves
{
    public static IReadOnlyList<PublishedWeave> All { get; } = Load();

    /// <summary>A published 1 is an end that lies over the row, which is the opposite of a chart's cell.</summary>
    public static bool IsWeftOver(char published) => published == '0';

    private static List<PublishedWeave> Load()
    {
        using var json = JsonDocument.Parse(File.ReadAllText(Checkout.Path("tests/PatternShop.Weave.Tests/Structure/published-weaves.json")));
        return [.. json.RootElement.GetProperty("figures").EnumerateObject().Select(figure => Weave(figure.Name, figure.Value))];
    }

    private static PublishedWeave Weave(string number, JsonElement figure)
    {
        var rows = figure.GetProperty("rows_pick1_first").EnumerateArray().Select(row => row.GetString()!).ToList();
        var floats = figure.GetProperty("longest_float");
        return new PublishedWeave(
            $"{number} {figure.GetProperty("name").GetString()}",
            figure.GetProperty("shafts").GetInt32(),
            Numbers(figure.GetProperty("threading")),
            figure.GetProperty("lifts").EnumerateArray().Select(Numbers).ToSequence(),
            BitGrid.Create(rows.Count, rows[0].Length, (row, end) => IsWeftOver(rows[row][end])),
            floats.GetProperty("warp").GetInt32(),
            floats.GetProperty("weft").GetInt32(),
            figure.GetProperty("hangs_together").GetBoolean());
    }

    private static Sequence<int> Numbers(JsonElement list) => list.EnumerateArray().Select(item => item.GetInt32()).ToSequence();
}
