using PatternShop.Weave;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>What somebody who cannot see the page is told.</summary>
public sealed class StructureTests
{
    public static TheoryData<string> SampleNames { get; } = new(Samples.Names);

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void Headings_begin_with_the_title_and_skip_no_level(string name)
    {
        var levels = Nodes(Samples.All[name]).Where(node => node.Name is "H1" or "H2" or "H3").ToList();
        Assert.Equal(Samples.All[name].Title, levels[0].AllText);
        Assert.Single(levels, node => node.Name == "H1");
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second.Name[1] - pair.First.Name[1] <= 1));
    }

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void Tables_are_rows_of_cells_with_scoped_headers(string name)
    {
        var tables = Nodes(Samples.All[name]).Where(node => node.Name == "Table").ToList();
        Assert.True(tables.Count >= 3);
        Assert.All(tables, table =>
        {
            Assert.All(table.Children, row => Assert.Equal("TR", row.Name));
            Assert.Single(table.Children.Select(row => row.Children.Count).Distinct());
            Assert.All(table.Children, row => Assert.Contains(row.Children, cell => cell.Name == "TH"));
            Assert.All(
                table.SelfAndBelow.Where(cell => cell.Name == "TH"),
                cell => Assert.Matches("Scope.*(Row|Column)", cell.Value("A")));
        });
    }

    [Fact]
    public void The_chart_is_a_figure_with_words()
    {
        var figures = Nodes(Samples.Diamond).Where(node => node.Name == "Figure").Select(figure => figure.Value("Alt"));
        var piece = Piece.Of(Samples.Diamond);
        Assert.Equal([Wording.English.ClothDescription(piece, true), Wording.English.ChartDescription(piece)], figures);
    }

    [Fact]
    public void Every_sheet_of_a_cut_chart_is_a_figure_under_the_name_of_its_part()
    {
        var nodes = Nodes(Samples.Large);
        var figures = nodes.Where(node => node.Name == "Figure" && node.Value("Alt")!.StartsWith("Chart", StringComparison.Ordinal)).ToList();
        Assert.True(figures.Count > 1);
        Assert.Equal(figures.Count, nodes.Count(node => node.Name == "P" && node.AllText.Contains(": Rows ", StringComparison.Ordinal) && node.AllText.Contains("; ends", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_no_font_has_is_told_all_the_same()
    {
        var nodes = Nodes(Samples.ManyScripts);
        var told = string.Concat(nodes.Where(node => node.Name == "Span").Select(node => node.Value("ActualText")));
        Assert.Contains("中文", told, StringComparison.Ordinal);
        Assert.Contains("🧶", told, StringComparison.Ordinal);
        Assert.Contains("שלום", told, StringComparison.Ordinal);
        Assert.Contains("→", told, StringComparison.Ordinal);
        Assert.Equal("el", nodes.First(node => node.Name == "H1").Value("Lang"));
        Assert.Equal("Ένα μικρό σχέδιο — с каймой ", nodes.First(node => node.Name == "H1").AllText);
    }

    [Fact]
    public void Words_stay_apart_at_the_ends_of_lines()
    {
        var document = Samples.Diamond with { Notes = string.Join(' ', Enumerable.Repeat("A thought that fills several lines.", 12)) };
        Assert.Contains(Nodes(document), node => node.Name == "P" && node.AllText == document.Notes);
    }

    [Fact]
    public void Cautions_are_a_list()
    {
        var list = Assert.Single(Nodes(Samples.Diamond), node => node.Name == "L");
        Assert.All(list.Children, item => Assert.Equal(["Lbl", "LBody"], item.Children.Select(part => part.Name)));
        Assert.Equal(Wording.English.Cautions, list.Children.Select(item => item.Children[1].AllText));
    }

    [Fact]
    public void The_counts_are_printed()
    {
        var piece = Piece.Of(Samples.Diamond);
        var all = Nodes(Samples.Diamond)[0].AllText;
        Assert.Contains(Wording.English.WarpArithmetic(piece), all, StringComparison.Ordinal);
        Assert.Contains("a multiple of 10, plus 1, plus 2 floating selvedges", all, StringComparison.Ordinal);
        Assert.Contains("not issued", all, StringComparison.Ordinal);
        Assert.Contains("4.6 in", all, StringComparison.Ordinal);
    }

    private static List<TaggedNode> Nodes(PatternDocument document) => [.. TaggedText.Read(Samples.Print(document)).SelfAndBelow];
}
