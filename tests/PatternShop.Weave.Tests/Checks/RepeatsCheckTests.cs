using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class RepeatsCheckTests
{
    // Whole piece 4 of the values computed outside this project: 3 rows repeated, alike edges; the 2nd time reads otherwise in all three rows, the 3rd as the 1st.
    private static PatternDocument Odd(int times) =>
        Charts.Document("xx./.xx/x.x", repeats: 3, floating: Charts.AlikeUnder, steps: [new Repeat(times, [new ChartRows(1, 3, 1)])]);

    [Fact]
    public void An_odd_number_of_repeated_rows_reads_otherwise_every_other_time()
    {
        var unlike = Assert.Single(Found.In<TimesUnlike>(Odd(3)));
        Assert.Equal((0, 3, Weight.Caution), (unlike.Step, unlike.Count, unlike.Weight));
        Assert.Empty(Found.In<TimesUnlike>(Charts.Document("xx./.xx/x.x", floating: Charts.AlikeUnder, steps: [new Repeat(4, [new ChartRows(1, 3, 1), new ChartRows(2, 2, 1)])])));
        Assert.Empty(Found.In<TimesUnlike>(Odd(1)));
    }

    [Theory]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(7)]
    public void Doubling_the_rows_mends_it_and_leaves_the_cloth_as_it_is(int times)
    {
        var odd = Odd(times);
        var remedy = Remedies.Of(Piece.Of(odd)).Single(advice => advice.Finding is TimesUnlike).Remedies.Single(one => one.Edit.Kind == MendKind.DoubleRows);
        var doubled = Found.After(odd, remedy.Edit);
        Assert.Equal((0, 0), (remedy.Aftermath.Left, remedy.Aftermath.RowsOtherwise));
        Assert.Equal(
            Oracle.Rows(odd).Select(row => (row.From, string.Concat(row.Over))),
            Oracle.Rows(doubled).Select(row => (row.From, string.Concat(row.Over))));
        Assert.Empty(Found.In<TimesUnlike>(doubled));
    }

    // Where every row mirrors, only alike edges make the times differ: entering ones do not depend on the number of the row.
    [Fact]
    public void Entering_edges_are_the_remedy_where_every_row_mirrors()
    {
        var mirrored = Charts.Document("x.x/.x./x.x", repeats: 1, floating: Charts.AlikeUnder, steps: [new Repeat(3, [new ChartRows(1, 3, 1)])]);
        var remedy = Found.FirstRemedy<TimesUnlike>(mirrored);
        Assert.Equal((MendKind.Edges, EdgeWay.Entering), (remedy.Edit.Kind, ((SetFloating)remedy.Edit.Edit).Floating!.Edges));
        Assert.Empty(Found.In<TimesUnlike>(Found.After(mirrored, remedy.Edit)));
    }

    [Fact]
    public void Times_that_read_otherwise_are_those_of_the_definitions() => Law.OfDocuments(document => AssertTimes(document, document));

    [Fact]
    public void Other_edges_would_be_seen() => Law.CanFail(document => AssertTimes(document, document with { Width = document.Width with { Floating = Charts.EnteringOver } }));

    private static void AssertTimes(PatternDocument document, PatternDocument seen)
    {
        if (Weave.Checks.Of(Piece.Of(document)) is [NothingDrawn])
        {
            return;
        }

        var rows = Oracle.Rows(seen);
        var expected = rows.Where(row => row.Time == 2).Select(row => row.Step).Distinct().Where(step =>
        {
            string[] Read(int time) => [.. rows.Where(row => row.Step == step && row.Time == time).Select(row => string.Join(',', row.Runs))];
            Side[] Stitched(int time) => [.. Oracle.Stitches(seen).Where(stitch => stitch.Step == step && stitch.Time == time).Select(stitch => stitch.From)];
            Side[] From(int time) => [.. rows.Where(row => row.Step == step && row.Time == time).Select(row => row.From)];
            return !Read(1).SequenceEqual(Read(2)) || (From(1).SequenceEqual(From(2)) && !Stitched(1).SequenceEqual(Stitched(2)));
        });
        Assert.Equal(expected, Found.In<TimesUnlike>(document).Select(unlike => unlike.Step));
    }
}
