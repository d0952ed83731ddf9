using System.Text.Json;

namespace PatternShop.EndToEnd;

/// <summary>The motif that the journeys by keys alone and by taps alone draw, and what its piece must read like. Chart and plan are these tests' own.</summary>
internal static class SmallCloth
{
    public const string Title = "Two by two";
    public const int Size = 4;
    public const int Across = 2;

    // a blank pattern weaves its rows twice, starts at the right, and has floating selvedges, alike, under first
    public const int Times = 2;

    // row 1 first, x over: a common twill
    private static readonly string[] Chart = ["xx..", ".xx.", "..xx", "x..x"];

    /// <summary>The cells that are over, rows and ends from 1.</summary>
    public static IEnumerable<(int Row, int End)> Overs =>
        from row in Enumerable.Range(1, Size) from end in Enumerable.Range(1, Size) where IsOver(row, end) select (row, end);

    /// <summary>Every row of the piece in the order of weaving.</summary>
    public static IReadOnlyList<WovenRow> Rows { get; } = WeavingOrder.Of(JsonSerializer.SerializeToElement(new
    {
        chart = Chart,
        repeats = Across,
        offset = 0,
        balance = 0,
        floating = 1,
        edges = "alike",
        firstEdge = "under",
        starts = new[] { "right" },
        firstPlain = "under",
        rowPlan = new object[] { new { step = "repeat", times = Times, steps = new object[] { new { step = "chart", first = 1, last = Size, weft = 1 } } } },
    }));

    public static bool IsOver(int row, int end) => Chart[row - 1][end - 1] == 'x';

    public static string PlaceOf(int number) =>
        FormattableString.Invariant($"Row {((number - 1) % Size) + 1} of {Size} · time {((number - 1) / Size) + 1} of {Times} (row {number} of {Size * Times})");
}
