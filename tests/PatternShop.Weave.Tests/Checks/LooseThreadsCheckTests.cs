using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class LooseThreadsCheckTests
{
    [Fact]
    public void A_row_and_an_end_that_never_interlace_are_named()
    {
        var found = Found.In<LooseThreads>(Charts.Document("xx.x/..../.xxx/x..x", repeats: 2));
        var row = Assert.Single(found);
        Assert.Equal((ThreadKind.Row, AreaOf.Motif, Weight.Fault, 1), (row.Kind, row.Within, row.Weight, row.Count));
        Assert.Equal([2], row.Numbers);
        Assert.Equal([new Area(AreaOf.Motif, 2, 2, 0, 3)], row.Areas);
        var end = Assert.Single(Found.In<LooseThreads>(Charts.Document("xx.x/x.../x.x.", repeats: 2)));
        Assert.Equal((ThreadKind.End, Weight.Fault), (end.Kind, end.Weight));
        Assert.Equal([1], end.Numbers);
    }

    [Fact]
    public void An_end_that_only_plain_rows_catch_is_a_caution()
    {
        var end = Assert.Single(Found.In<LooseThreads>(Charts.Document("xx.x/x.../x.x.", repeats: 2, steps: [new ChartRows(1, 3, 1), new PlainRows(2, 1)])));
        Assert.Equal((Weight.Caution, true), (end.Weight, end.HeldByPlain));
    }

    [Fact]
    public void An_end_that_the_order_of_rows_leaves_loose_is_found_in_the_piece()
    {
        var document = Charts.Document("xx./x.x/.xx", repeats: 2, floating: Charts.AlikeUnder, steps: [new ChartRows(1, 2, 1)]);
        var ends = Assert.Single(Found.In<LooseThreads>(document));
        Assert.Equal((ThreadKind.End, AreaOf.Piece, 2), (ends.Kind, ends.Within, ends.Count));
        Assert.Equal([1, 4], ends.Numbers);
        Assert.Equal([new Area(AreaOf.Piece, 1, 2, 1, 1), new Area(AreaOf.Piece, 1, 2, 4, 4)], ends.Areas);
        Assert.Equal(MendKind.WholeMotif, Found.FirstRemedy<LooseThreads>(document).Edit.Kind);
    }

    [Fact]
    public void Weaving_the_loose_threads_plain_mends_them()
    {
        var document = Charts.Document("xx.x/..../.xxx/x..x", repeats: 2);
        var remedy = Found.FirstRemedy<LooseThreads>(document);
        Assert.Equal(MendKind.WeavePlain, remedy.Edit.Kind);
        Assert.Equal("xx.x / x.x. / .xxx / x..x", Found.After(document, remedy.Edit).Motif.ToString()); // .x.x would leave end 4 loose
        Assert.Empty(Found.In<LooseThreads>(Found.After(document, remedy.Edit)));
    }

    [Fact]
    public void A_motif_without_a_drawing_is_one_finding_only()
    {
        foreach (var chart in new[] { "..../....", "xxxx/xxxx" })
        {
            var document = Charts.Document(chart, repeats: 2);
            Assert.IsType<NothingDrawn>(Assert.Single(Weave.Checks.Of(Piece.Of(document))));
            var mended = Found.After(document, Found.FirstRemedy<NothingDrawn>(document).Edit);
            Assert.DoesNotContain(Weave.Checks.Of(Piece.Of(mended)), finding => finding.Weight == Weight.Fault && finding is not TurnsNotWrapped);
        }
    }

    [Fact]
    public void A_piece_of_plain_rows_alone_is_not_judged_by_its_motif() =>
        Assert.DoesNotContain(
            Weave.Checks.Of(Piece.Of(Charts.Document("..../....", repeats: 2, steps: [new PlainRows(4, 1)]))),
            finding => finding is NothingDrawn or LooseThreads or LayersApart);

    [Fact]
    public void Loose_threads_are_those_of_the_definitions() => Law.OfDocuments(document => AssertLoose(document, document));

    [Fact]
    public void A_changed_cell_would_be_seen() => Law.CanFail(document =>
        AssertLoose(document, document with { Motif = document.Motif.With(0, 0, !document.Motif[0, 0]) }));

    private static void AssertLoose(PatternDocument document, PatternDocument seen)
    {
        if (Weave.Checks.Of(Piece.Of(document)) is [NothingDrawn])
        {
            return;
        }

        var motif = seen.Motif;
        var rows = Oracle.Rows(seen);
        var chart = rows.Any(row => row.ChartRow is not null);
        var looseRows = Enumerable.Range(0, motif.Rows).Where(row => chart && Enumerable.Range(0, motif.Columns).All(end => motif[row, end] == motif[row, 0]));
        var looseEnds = Enumerable.Range(0, motif.Columns).Where(end => chart && Enumerable.Range(0, motif.Rows).All(row => motif[row, end] == motif[0, end])).ToList();
        var floating = seen.Width.Floating is null ? 0 : 1;
        var inPiece = Enumerable.Range(0, rows[0].Over.Count - (2 * floating))
            .Where(end => !looseEnds.Contains((end + seen.Width.Offset) % motif.Columns))
            .Where(end => rows.All(row => row.Over[end + floating] == rows[0].Over[end + floating]));
        var found = Found.In<LooseThreads>(document);
        Assert.Equal(looseRows.Count(), found.Where(loose => loose.Kind == ThreadKind.Row).Sum(loose => loose.Count));
        Assert.Equal(looseEnds.Select(end => end + 1), found.Where(loose => (loose.Kind, loose.Within) == (ThreadKind.End, AreaOf.Motif)).SelectMany(loose => loose.Numbers));
        Assert.Equal(inPiece.Select(end => end + 1).Take(Finding.MostAreas), found.Where(loose => loose.Within == AreaOf.Piece).SelectMany(loose => loose.Numbers));
    }
}
