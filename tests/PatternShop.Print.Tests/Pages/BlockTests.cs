using PatternShop.Weave;
using Xunit;

namespace PatternShop.Print.Tests;

public sealed class BlockTests
{
    private static readonly TextStyle Style = new(72 / 25.4 * 10, Leading: 1);

    [Theory]
    [InlineData(1, 9, 0)]
    [InlineData(1, 10, 1)]
    [InlineData(3, 20, 0)]
    [InlineData(4, 39, 2)]
    [InlineData(4, 19, 0)]
    [InlineData(5, 45, 3)]
    [InlineData(5, 50, 5)]
    public void Lines_split_with_two_on_either_side(int lines, double room, int placed) =>
        Assert.Equal(placed, LinesIn(Set(lines).Fit(100, room, false)));

    [Theory]
    [InlineData(1, 5, 1)]
    [InlineData(3, 20, 2)]
    [InlineData(9, 42, 4)]
    public void At_the_top_of_a_page_something_is_always_placed(int lines, double room, int placed) =>
        Assert.Equal(placed, LinesIn(Set(lines).Fit(100, room, true)));

    [Fact]
    public void Nothing_is_lost_between_a_block_and_its_rest()
    {
        Block? block = new Stack([new Stacked(0, Set(7)), new Stacked(5, new Headed(Set(1), 2, Set(6))), new Stacked(5, new Whole(Set(3)))]);
        var texts = new List<string>();
        while (block is not null)
        {
            var fit = block.Fit(100, 45, true);
            Assert.False(fit.IsNothing);
            Assert.True(fit.Height <= 45 + 1e-9);
            texts.AddRange(fit.Items.Select(item => ((TextMark)item.Mark).Piece.Text));
            block = fit.Rest;
        }

        Assert.Equal([.. Names(7), .. Names(1), .. Names(6), .. Names(3)], texts);
    }

    [Theory]
    [InlineData(9, 39, 3)]
    [InlineData(9, 89, 7)]
    [InlineData(9, 95, 9)]
    [InlineData(8, 85, 8)]
    [InlineData(6, 59, 0)]
    [InlineData(6, 65, 6)]
    public void A_remark_goes_with_two_lines_at_least_and_few_lines_stay_together(int lines, double room, int placed)
    {
        // words of which each fills a line; the remark has room beside the last one
        var words = new Words(string.Join(' ', Enumerable.Repeat("wwwwwwww", lines)), Style, new Tag(TagKind.Paragraph));
        var fit = new Followed(words, new Words("r", Style, new Tag(TagKind.Span))).Fit(80, room, false);
        Assert.Equal(placed, Texts(fit).Count(text => text.StartsWith('w')));
        Assert.Equal(fit.Rest is null, Texts(fit).Contains("r"));
    }

    [Fact]
    public void What_stands_beside_a_block_goes_on_under_both()
    {
        var fit = new Beside(Set(3), 40, 5, Set(6)).Fit(100, 40, true);
        Assert.Equal(7, LinesIn(fit));
        Assert.Equal([0, 45], fit.Items.Select(item => item.Mark.X).Distinct());
        Assert.Equal(2, LinesIn(fit.Rest!.Fit(100, 40, true)));
    }

    [Fact]
    public void A_heading_goes_with_what_it_heads()
    {
        var headed = new Headed(Set(1), 2, Set(2));
        Assert.True(headed.Fit(100, 31, false).IsNothing);
        Assert.Null(headed.Fit(100, 32, false).Rest);
    }

    [Fact]
    public void Space_above_falls_away_at_the_top() =>
        Assert.Equal(20 + 8, new Stack([new Stacked(5, Set(1)), new Stacked(8, Set(1))]).Fit(100, 100, true).Height, 1e-9);

    [Fact]
    public void A_table_goes_on_under_its_header_as_decoration()
    {
        var first = Table(6).Fit(100, 40, true);
        Assert.Equal(["head", "r1", "r2", "r3"], Texts(first));
        Assert.All(first.Items.Where(item => item.Mark is TextMark), item => Assert.NotNull(item.Tag));
        var second = first.Rest!.Fit(100, 60, true);
        Assert.Equal(["head", "r4", "r5", "r6"], Texts(second));
        Assert.Null(second.Items.First(item => item.Mark is TextMark).Tag);
    }

    [Fact]
    public void A_bound_row_never_begins_a_page()
    {
        var table = Table(6);
        var bound = table with { Rows = table.Rows.Select((row, i) => row with { IsBound = i == 4 }).ToSequence() };
        Assert.Equal(["head", "r1", "r2", "r3", "r4"], Texts(table.Fit(100, 50, true)));
        Assert.Equal(["head", "r1", "r2", "r3"], Texts(bound.Fit(100, 50, true)));
        Assert.Equal(["head", "r4", "r5", "r6"], Texts(bound.Fit(100, 50, true).Rest!.Fit(100, 50, true)));
    }

    [Fact]
    public void Fewer_than_three_rows_are_not_left_at_the_foot_of_a_page()
    {
        Assert.True(Table(6).Fit(100, 39, false).IsNothing);
        Assert.Equal(4, Texts(Table(6).Fit(100, 40, false)).Count);
        Assert.Equal(3, Texts(Table(2).Fit(100, 30, false)).Count);
    }

    [Fact]
    public void A_row_longer_than_a_page_goes_on_in_its_last_cell()
    {
        var row = new Tag(TagKind.TableRow);
        Block? table = new Table([20], null, null, [new TableRow(row, [Set(1), Set(9)])], 0);
        var placed = new List<int>();
        while (table is not null)
        {
            var fit = table.Fit(100, 40, true);
            placed.Add(LinesIn(fit));
            table = fit.Rest;
        }

        Assert.Equal([1 + 4, 4, 1], placed);
    }

    [Fact]
    public void Pages_carry_their_number_and_the_number_of_all()
    {
        var pages = PagePlanner.Plan(new Paper("Small", 120, 60), new Margins(10, 10, 10, 10), Set(10), (page, of) => TextLine.Set($"{page}/{of}", 0, 0, Style, null));
        Assert.Equal(["1/3", "2/3", "3/3"], pages.Select(page => ((TextMark)page.Items[0].Mark).Piece.Text));
        Assert.Equal([4, 4, 2], pages.Select(page => page.Items.Count - 1));
    }

    private static SetLines Set(int lines) => new(Names(lines).ToSequence(), Style, new Tag(TagKind.Paragraph));

    private static IEnumerable<string> Names(int lines) => Enumerable.Range(1, lines).Select(i => $"l{i}");

    private static Table Table(int rows)
    {
        TableRow Row(string text, bool tagged) => new(new Tag(TagKind.TableRow), [new SetLines([text], Style, tagged ? new Tag(TagKind.Cell) : null)]);
        return new Table([], Row("head", true), Row("head", false), Enumerable.Range(1, rows).Select(i => Row($"r{i}", true)).ToSequence(), 0);
    }

    private static int LinesIn(Fit fit) => fit.Items.Count(item => item.Mark is TextMark);

    private static List<string> Texts(Fit fit) => [.. fit.Items.Select(item => item.Mark).OfType<TextMark>().Select(mark => mark.Piece.Text)];
}
