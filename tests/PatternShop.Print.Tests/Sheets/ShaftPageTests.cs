using PatternShop.Tests.Shared;
using PatternShop.Weave;
using UglyToad.PdfPig;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>The shaft plan as it is printed, read back along the structure tree.</summary>
public sealed class ShaftPageTests
{
    private const int MostShafts = 16;
    private const int MostLifts = 64;

    // Kinds of pieces that are not among the samples: most shafts and lifts, and one more of each.
    private static readonly Dictionary<string, PatternDocument> Edges = new(StringComparer.Ordinal)
    {
        ["16 shafts"] = Steps(MostShafts, MostShafts),
        ["17 shafts"] = Steps(MostShafts + 1, MostShafts + 1),
        ["64 lifts"] = Steps(MostLifts, 7),
        ["65 lifts"] = Steps(MostLifts + 1, 7),
        ["large"] = Samples.Large,
    };

    public static TheoryData<string, bool> Pieces { get; } = new(
        Samples.All.Concat(Edges).Select(piece => (piece.Key, HasTables(piece.Value))));

    [Fact]
    public void Pieces_with_tables_and_without_are_among_those_printed()
    {
        Assert.Equal(
            [("16 shafts", true), ("17 shafts", false), ("64 lifts", true), ("65 lifts", false), ("large", false)],
            Edges.Select(piece => (piece.Key, HasTables(piece.Value))));
        Assert.Contains(Samples.All.Values, HasTables);
    }

    [Theory]
    [MemberData(nameof(Pieces))]
    public void Tables_that_say_the_whole_plan_are_printed_last_where_they_serve_and_else_nothing(string name, bool has)
    {
        var document = Samples.All.GetValueOrDefault(name) ?? Edges[name];
        var printed = TaggedText.Read(Samples.Print(document));
        var piece = Piece.Of(document);
        var expected = ShaftTables.Of(piece, ShaftPlan.Of(piece), Wording.English).All(Wording.English).Select(table => table.Lines.Prepend(table.Heads).ToList()).ToList();
        var tables = printed.SelfAndBelow.Where(node => node.Name == "Table" && IsOfShafts(node)).ToList();
        Assert.Equal(has, printed.AllText.Contains(Wording.English.ShaftsTitle, StringComparison.Ordinal));
        Assert.Equal(has ? expected : [], tables.Select(Lines));
        Assert.Equal(tables, printed.SelfAndBelow.Where(node => node.Name == "Table").TakeLast(tables.Count));
        Assert.All(tables.SelectMany(table => table.Children.Skip(1)), row => Assert.Equal(("TH", "TD"), (row.Children[0].Name, row.Children[1].Name)));
    }

    [Fact]
    public void It_stands_on_the_last_page()
    {
        using var pdf = PdfDocument.Open(Samples.Print(Samples.Diamond));
        var page = Assert.Single(pdf.GetPages(), page => Text(page).Contains(Wording.English.ShaftsTitle, StringComparison.Ordinal));
        Assert.Equal(pdf.NumberOfPages, page.Number);
    }

    // As many shafts as kinds of ends, as many lifts as kinds of rows, floating selvedges apart.
    private static bool HasTables(PatternDocument document)
    {
        var floating = document.Width.Floating is null ? 0 : 1;
        var rows = Oracle.Rows(document).Select(row => row.Over.Skip(floating).SkipLast(floating).ToList()).ToList();
        var shafts = Enumerable.Range(0, rows[0].Count).Select(end => string.Concat(rows.Select(row => row[end] ? 'x' : '.'))).Distinct().Count();
        return shafts <= MostShafts && rows.Select(row => string.Concat(row.Select(over => over ? 'x' : '.'))).Distinct().Count() <= MostLifts;
    }

    // Every row is another number in binary, every end another figure of it or another step aside.
    private static PatternDocument Steps(int rows, int ends) => Charts.Document("x") with
    {
        Motif = rows == ends ? BitGrid.Create(rows, ends, (row, end) => row == end) : BitGrid.Create(rows, ends, (row, end) => (((row + 1) >> end) & 1) != 0),
        Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, rows, 1)]),
    };

    private static bool IsOfShafts(TaggedNode table) => Lines(table).FirstOrDefault() is { } heads && new[]
    {
        new HeadedLine(Wording.English.EndsColumn, Wording.English.ShaftsColumn),
        new HeadedLine(Wording.English.LiftColumn, Wording.English.RaisesColumn),
        new HeadedLine(Wording.English.RowsColumn, Wording.English.LiftsColumn),
    }.Contains(heads);

    private static List<HeadedLine> Lines(TaggedNode table) =>
        [.. table.Children.Where(row => row.Children.Count == 2).Select(row => new HeadedLine(row.Children[0].AllText, row.Children[1].AllText))];

    private static string Text(UglyToad.PdfPig.Content.Page page) => string.Join(' ', page.GetWords().Select(word => word.Text));
}
