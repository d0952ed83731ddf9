using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class FallsApartCheckTests
{
    // Computed outside this project, 1 = the end lies over the row: 1000/1110/0010/1011 falls apart, rows 1 and 3 with ends 1 and 3 lift off;
    // flipping any one of the 8 cells between the layers makes it hang. Here x = the weft is over.
    private const string Apart = ".xxx/...x/xx.x/.x..";

    [Fact]
    public void The_threads_that_lift_off_are_named()
    {
        var apart = Assert.Single(Found.In<LayersApart>(Charts.Document(Apart, repeats: 3)));
        Assert.Equal((Weight.Fault, new Layer([0, 2], [0, 2])), (apart.Weight, apart.Layer));
        Assert.Equal(
            "The cloth comes apart: rows 1 and 3 with ends 1 and 3 lift off.",
            Wording.English.FindingWhat(Piece.Of(Charts.Document(Apart)), apart));
    }

    [Fact]
    public void Floating_selvedges_and_balance_ends_change_nothing_and_plain_rows_make_it_a_caution()
    {
        var edged = Charts.Document(Apart, repeats: 3, offset: 1, balance: 2, floating: Charts.AlikeUnder);
        Assert.Equal(Weight.Fault, Assert.Single(Found.In<LayersApart>(edged)).Weight);
        var plain = edged with { Rows = edged.Rows with { Steps = [new ChartRows(1, 4, 1), new PlainRows(1, 1)] } };
        Assert.Equal(Weight.Caution, Assert.Single(Found.In<LayersApart>(plain)).Weight);
    }

    // Regular twills and satins hang (Clapham 1980); so does the diamond.
    [Theory]
    [InlineData("xx../.xx./..xx/x..x")]
    [InlineData(Charts.TenEndDiamond)]
    [InlineData("x..../..x../....x/.x.../...x.")]
    public void Cloth_that_hangs_is_left_in_peace(string chart) => Assert.Empty(Found.In<LayersApart>(Charts.Document(chart)));

    [Fact]
    public void One_cell_between_the_layers_is_turned_over_and_it_hangs()
    {
        var document = Charts.Document(Apart, repeats: 3);
        var remedy = Found.FirstRemedy<LayersApart>(document);
        var tied = ((SetCells)remedy.Edit.Edit).Cells;
        var (row, end) = (from r in Enumerable.Range(0, 4) from e in Enumerable.Range(0, 4) where tied[r, e] select (r, e)).Single();
        Assert.True((row % 2 == 0) != (end % 2 == 0));
        Assert.Empty(Found.In<LayersApart>(Found.After(document, remedy.Edit)));
    }

    // Whoever weaves more layers than two is helped by one cell between the uppermost and the lowest.
    [Fact]
    public void Three_layers_are_tied_by_one_cell()
    {
        // plain weave in each layer; rows and ends of a layer lie over those of the layers below
        var three = BitGrid.Create(6, 6, (row, end) => row / 2 == end / 2 ? (row + end) % 2 == 0 : row / 2 < end / 2);
        var document = Charts.Document("x./.x") with { Motif = three, Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, 6, 1)]) };
        Assert.Equal(new Layer([0, 1], [0, 1]), Assert.Single(Found.In<LayersApart>(document)).Layer);
        Assert.True(HangsTogether.Test(Found.After(document, Found.FirstRemedy<LayersApart>(document).Edit).Motif));
    }

    [Fact]
    public void What_is_found_agrees_with_whether_the_motif_hangs_together() => Law.OfDocuments(document =>
    {
        var findings = Weave.Checks.Of(Piece.Of(document));
        if (Oracle.Rows(document).Any(row => row.ChartRow is not null))
        {
            var loose = findings.Any(finding => finding is NothingDrawn or LayersApart or LooseThreads { Within: AreaOf.Motif });
            Assert.Equal(!HangsTogether.Test(document.Motif), loose);
        }

        Assert.All(findings.OfType<LayersApart>(), apart => Assert.All(apart.Layer.Rows, row => Assert.All(
            Enumerable.Range(0, document.Motif.Columns).Except(apart.Layer.Ends), end => Assert.True(document.Motif[row, end]))));
    });
}
