using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>
/// Whole pieces computed from the rules of design.md by a separate program and by hand ("Whole pieces" of the project's
/// list of outside values, items 1 to 6).
/// </summary>
public sealed class WholePieceTests
{
    private static readonly Piece Diamond = Piece.Of(Charts.DiamondPiece);

    [Fact]
    public void Diamond_has_23_ends_and_22_rows()
    {
        Assert.Equal(23, Diamond.Ends);
        Assert.Equal(22, Diamond.Rows.Count);
    }

    [Theory]
    [InlineData(1, Side.Left, "o2 u1 o2 u3 o2 u1 o1 u1 o2 u3 o2 u1 o2")]
    [InlineData(2, Side.Right, "u2 o1 u1 o2 u1 o2 u1 o1 u1 o1 u1 o2 u1 o2 u1 o1 u2")]
    [InlineData(3, Side.Left, "o1 u2 o1 u1 o3 u1 o1 u3 o1 u1 o3 u1 o1 u2 o1")]
    [InlineData(4, Side.Right, "u1 o1 u2 o1 u1 o1 u1 o1 u2 o1 u2 o1 u1 o1 u1 o1 u2 o1 u1")]
    [InlineData(5, Side.Left, "o3 u2 o1 u1 o1 u2 o3 u2 o1 u1 o1 u2 o3")]
    [InlineData(6, Side.Right, "u2 o2 u2 o1 u2 o2 u1 o2 u2 o1 u2 o2 u2")]
    [InlineData(7, Side.Left, "o3 u2 o1 u1 o1 u2 o3 u2 o1 u1 o1 u2 o3")]
    [InlineData(8, Side.Right, "u1 o1 u2 o1 u1 o1 u1 o1 u2 o1 u2 o1 u1 o1 u1 o1 u2 o1 u1")]
    [InlineData(9, Side.Left, "o1 u2 o1 u1 o3 u1 o1 u3 o1 u1 o3 u1 o1 u2 o1")]
    [InlineData(10, Side.Right, "u2 o1 u1 o2 u1 o2 u1 o1 u1 o1 u1 o2 u1 o2 u1 o1 u2")]
    [InlineData(11, Side.Left, "o2 u1 o2 u3 o2 u1 o1 u1 o2 u3 o2 u1 o2")]
    [InlineData(21, Side.Left, "o2 u1 o2 u3 o2 u1 o1 u1 o2 u3 o2 u1 o2")]
    [InlineData(22, Side.Right, "[u1 o1]×11 u1")]
    public void Diamond_reads(int row, Side from, string directions)
    {
        Assert.Equal(from, Diamond.Rows[row - 1].From);
        Assert.Equal(Charts.Plainly(directions), Charts.Short(Diamond.Reading(row).Runs));
    }

    [Fact]
    public void Diamond_row_22_is_written_with_one_bracket() =>
        Assert.Equal("[u1o1]×11u1", Charts.Short(Diamond.Reading(22).Writing));

    [Fact]
    public void Diamond_repeated_rows_read_the_same_both_times() =>
        Assert.All(Enumerable.Range(1, 10), row => Assert.Equal(Diamond.Reading(row).Runs, Diamond.Reading(row + 10).Runs));

    [Fact]
    public void Diamond_rows_that_read_the_same_in_the_same_travel_say_so()
    {
        Assert.Equal(5, Diamond.SameReadingBefore(7));
        Assert.Equal(4, Diamond.SameReadingBefore(8));
        Assert.Equal(3, Diamond.SameReadingBefore(9));
        Assert.Equal(2, Diamond.SameReadingBefore(10));
        Assert.Equal(1, Diamond.SameReadingBefore(21));
        Assert.All(new[] { 1, 2, 3, 4, 5, 6, 22 }, row => Assert.Null(Diamond.SameReadingBefore(row)));
    }

    [Fact]
    public void Diamond_wraps_all_21_turns()
    {
        Assert.Equal(21, Turns.Of(Diamond).Count());
        Assert.All(Turns.Of(Diamond), turn => Assert.True(turn.Wrapped));
    }

    [Fact]
    public void Diamond_mirrors_with_one_balance_end_at_offsets_0_and_5() =>
        Assert.Equal([new MirrorWay(0, 1), new MirrorWay(5, 1)], Mirroring.Fewest(Diamond.Document.Motif));

    [Fact]
    public void Diamond_floats_are_at_most_3() => Assert.Equal(3, Floats.Longest(Diamond).Longest);

    [Theory]
    [InlineData(1, Side.Right, "u1 o1 u1 o2 u3 o2 u1 o1 u1 o2 u3 o2 u1 o2")]
    [InlineData(2, Side.Left, "u2 o1 u1 o2 u1 o2 u1 o1 u1 o1 u1 o2 u1 o2 u1 o1 u1 o1")]
    public void Diamond_entering_first_under_from_the_right_reads(int row, Side from, string directions)
    {
        var document = Diamond.Document;
        var piece = Piece.Of(document with
        {
            Width = document.Width with { Floating = Charts.EnteringUnder },
            Rows = document.Rows with { Wefts = [new Weft(Side.Right)] },
        });
        Assert.Equal(from, piece.Rows[row - 1].From);
        Assert.Equal(Charts.Plainly(directions), Charts.Short(piece.Reading(row).Runs));
    }

    [Theory]
    [InlineData(Side.Left, 0, "o2u2o2u2", "u1o2u2o2u1", "u2o2u2o2", "o1u2o2u2o1")]
    [InlineData(Side.Right, 7, "u2o2u2o2", "u1o2u2o2u1", "o2u2o2u2", "o1u2o2u2o1")]
    public void Straight_twill_without_floating_selvedge(Side start, int wrapped, params string[] rows)
    {
        var piece = Piece.Of(Charts.Document("xx../.xx./..xx/x..x", repeats: 2, start: start, steps: [new Repeat(2, [new ChartRows(1, 4, 1)])]));
        Assert.Equal(rows.Concat(rows), Enumerable.Range(1, 8).Select(row => Charts.Short(piece.Reading(row).Runs)));
        Assert.Equal(7, Turns.Of(piece).Count());
        Assert.Equal(wrapped, Turns.Of(piece).Count(turn => turn.Wrapped));
    }

    [Fact]
    public void Odd_repeated_rows_with_alike_edges_read_differently_every_other_time()
    {
        var piece = Piece.Of(Charts.Document("xx./.xx/x.x", repeats: 3, floating: Charts.AlikeUnder, steps: [new Repeat(3, [new ChartRows(1, 3, 1)])]));
        string[] first = ["u1o2u1o2u1o2u2", "o3u1o2u1o2u1o1", "u1o1u1o2u1o2u1o1u1"];
        string[] second = ["o1u1o2u1o2u1o3", "u2o2u1o2u1o2u1", "o2u1o2u1o2u1o2"];
        Assert.Equal([.. first, .. second, .. first], piece.Rows.Select(row => Charts.Short(piece.Readings[row.Reading].Runs)));
        var band = Assert.Single(piece.Bands);
        Assert.True(band is { IsOdd: true, ReadsDifferently: true, PrintedRows: 6 });
    }

    [Fact]
    public void Plain_rows_alternate_among_themselves()
    {
        var piece = Piece.Of(Charts.Document(
            "xx../..xx",
            repeats: 2,
            floating: Charts.AlikeUnder,
            steps: [new ChartRows(1, 1, 1), new PlainRows(1, 1), new ChartRows(2, 2, 1), new PlainRows(1, 1)]));
        Assert.Equal(
            ["u1o2u2o2u3", "o2[u1o1]×4", "u3o2u2o2u1", "[o1u1]×4o2"],
            Enumerable.Range(1, 4).Select(row => Charts.Short(piece.Reading(row).Writing)));
        Assert.Equal([Side.Left, Side.Right, Side.Left, Side.Right], piece.Rows.Select(row => row.From));
    }

    [Fact]
    public void Five_ends_mirror_at_every_offset_with_its_own_balance_ends()
    {
        var motif = GridText.Read("xxx..", ".x.xx");
        Assert.Equal(
            [new MirrorWay(0, 3), new MirrorWay(1, 1), new MirrorWay(2, 4), new MirrorWay(3, 2), new MirrorWay(4, 0)],
            Mirroring.EveryOffset(motif));
        Assert.Equal([new MirrorWay(4, 0)], Mirroring.Fewest(motif));
        Assert.All(
            from way in Mirroring.EveryOffset(motif) from repeats in Enumerable.Range(1, 4) select new WidthPlan(repeats, way.Offset, way.Balance, null),
            width => Assert.True(Mirroring.IsMirrored(motif, width)));
    }

    [Fact]
    public void Five_ends_at_offset_4_read()
    {
        var piece = Piece.Of(Charts.Document("xxx../.x.xx", offset: 4, floating: Charts.AlikeUnder, start: Side.Right));
        Assert.Equal(["u2o3u2", "o2u1o1u1o2"], [Charts.Short(piece.Reading(1).Runs), Charts.Short(piece.Reading(2).Runs)]);
    }
}
