using PatternShop.Tests.Shared;
using PatternShop.Weave;
using UglyToad.PdfPig;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>The shaft plan as it is printed, read back along the structure tree.</summary>
public sealed class ShaftPageTests
{
    [Fact]
    public void It_is_printed_last_as_tables_that_say_the_whole_plan()
    {
        var piece = Piece.Of(Samples.Diamond);
        var file = Samples.Print(Samples.Diamond);
        var tables = ShaftTables.Of(piece, ShaftPlan.Of(piece), Wording.English).All(Wording.English).ToList();
        var printed = TaggedText.Read(file).SelfAndBelow.Where(node => node.Name == "Table").TakeLast(tables.Count).ToList();
        foreach (var (table, (_, heads, lines)) in printed.Zip(tables))
        {
            Assert.Equal(lines.Prepend(heads), table.Children.Select(row => new HeadedLine(row.Children[0].AllText, row.Children[1].AllText)));
            Assert.All(table.Children.Skip(1), row => Assert.Equal(("TH", "TD"), (row.Children[0].Name, row.Children[1].Name)));
        }

        using var pdf = PdfDocument.Open(file);
        var page = Assert.Single(pdf.GetPages(), page => Text(page).Contains(Wording.English.ShaftsTitle, StringComparison.Ordinal));
        Assert.Equal(pdf.NumberOfPages, page.Number);
    }

    [Fact]
    public void Nothing_is_printed_of_a_plan_with_too_many_shafts()
    {
        var rows = Enumerable.Range(0, 17).Select(row => string.Concat(Enumerable.Range(0, 17).Select(end => end == row ? 'x' : '.')));
        Assert.DoesNotContain(Wording.English.ShaftsTitle, TaggedText.Read(Samples.Print(Charts.Document(string.Join('/', rows)))).AllText, StringComparison.Ordinal);
    }

    private static string Text(UglyToad.PdfPig.Content.Page page) => string.Join(' ', page.GetWords().Select(word => word.Text));
}
