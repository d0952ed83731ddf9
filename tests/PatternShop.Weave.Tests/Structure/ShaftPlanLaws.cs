using System.Globalization;
using System.Text.RegularExpressions;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed partial class ShaftPlanLaws
{
    [Fact]
    public void Order_of_ends_tie_up_and_lifts_weave_the_piece_with_the_fewest_shafts_and_lifts() => Law.OfDocuments(document =>
    {
        var plan = ShaftPlan.Of(Piece.Of(document));
        var rows = PatternCells(document);
        Assert.Equal(rows, Woven(plan.EndOrder, plan.TieUp, plan.RowLifts));
        Assert.Equal(rows.Distinct().Count(), plan.TieUp.Count);
        Assert.Equal(Enumerable.Range(0, rows[0].Length).Select(end => string.Concat(rows.Select(row => row[end]))).Distinct().Count(), plan.Shafts);
        Assert.Equal(Enumerable.Range(1, plan.Shafts), plan.EndOrder.Distinct());
        Assert.Equal(Enumerable.Range(1, plan.TieUp.Count), plan.RowLifts.Distinct());
    });

    [Fact]
    public void The_tables_say_the_whole_plan() => Law.OfDocuments(document =>
    {
        var piece = Piece.Of(document);
        var plan = ShaftPlan.Of(piece);
        var tables = ShaftTables.Of(piece, plan, Wording.English);
        Assert.Equal(plan.EndOrder, WrittenOut(tables.Ends));
        Assert.Equal(plan.RowLifts, WrittenOut(tables.Rows));
        Assert.Equal(plan.TieUp, tables.TieUp.Select(line => line.Text == "none" ? [] : Numbers(line.Text).ToSequence()));
        Assert.Equal(Enumerable.Range(1, plan.TieUp.Count).Select(Wording.English.Number), tables.TieUp.Select(line => line.Head));
    });

    [Fact]
    public void A_changed_cell_would_be_seen() => Law.CanFail(document =>
    {
        var plan = ShaftPlan.Of(Piece.Of(document with { Motif = document.Motif.With(0, 0, !document.Motif[0, 0]) }));
        Assert.Equal(PatternCells(document), Woven(plan.EndOrder, plan.TieUp, plan.RowLifts));
    });

    [Fact]
    public void The_diamond_takes_six_shafts_in_the_order_in_which_it_was_drawn()
    {
        // "Whole pieces" 1: a six-shaft twill drawn on ends 1 2 3 4 5 6 5 4 3 2 and woven in that order of rows, one balance end, one plain row; here three repeats
        var piece = Piece.Of(Charts.DiamondPiece with { Width = Charts.DiamondPiece.Width with { Repeats = 3 } });
        var plan = ShaftPlan.Of(piece);
        Assert.Equal(6, plan.Shafts);
        Assert.Equal([1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 1], plan.EndOrder.Skip(20));
        Assert.Equal([1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 1, 2, 3, 4, 5, 6, 5, 4, 3, 2, 1, 7], plan.RowLifts);

        // row 1 is x.xx...xx.: the weft is under ends 2, 5 and 6, each the first on its shaft
        Assert.Equal([2, 5, 6], plan.TieUp[0]);
        Assert.True(plan.IsShown);
        var tables = ShaftTables.Of(piece, plan, Wording.English);
        Assert.Equal([new HeadedLine("1–10", "1, 2, 3, 4, 5, 6, 5, 4, 3, 2"), new HeadedLine("11–30", "as ends 1–10, twice more"), new HeadedLine("31", "1")], tables.Ends);
        Assert.Equal(
            "6 shafts, 7 lifts. A lift raises some shafts: their ends come on top and the weft goes under them; it goes over all other ends. The floating selvedges are on no shaft.",
            Wording.English.ShaftsText(piece, plan));
    }

    [Theory]
    [InlineData(16, true)]
    [InlineData(17, false)]
    public void More_than_sixteen_shafts_are_not_shown(int ends, bool shown)
    {
        var rows = Enumerable.Range(0, ends).Select(row => string.Concat(Enumerable.Range(0, ends).Select(end => end == row ? 'x' : '.')));
        Assert.Equal(shown, ShaftPlan.Of(Piece.Of(Charts.Document(string.Join('/', rows)))).IsShown);
    }

    // What the oracle says of the pattern ends, a string a row.
    private static List<string> PatternCells(PatternDocument document)
    {
        var floating = document.Width.Floating is null ? 0 : 1;
        return Oracle.Rows(document).Select(row => string.Concat(row.Over.Skip(floating).SkipLast(floating).Select(over => over ? 'x' : '.'))).ToList();
    }

    private static List<string> Woven(Sequence<int> ends, Sequence<Sequence<int>> tieUp, Sequence<int> lifts) =>
        lifts.Select(lift => string.Concat(ends.Select(shaft => tieUp[lift - 1].Contains(shaft) ? '.' : 'x'))).ToList();

    // Reads the lines as a person would; every head must say where its line stands.
    private static List<int> WrittenOut(Sequence<HeadedLine> lines)
    {
        var all = new List<int>();
        foreach (var line in lines)
        {
            var before = all.Count;
            if (Again().Match(line.Text) is { Success: true } again)
            {
                var (first, last) = (Number(again.Groups["first"].Value), Number(again.Groups["last"].Value is { Length: > 0 } text ? text : again.Groups["first"].Value));
                var times = again.Groups["times"].Value switch { "once" => 1, "twice" => 2, var words => Number(words.Split(' ')[0]) };
                all.AddRange(Enumerable.Repeat(all[(first - 1)..last], times).SelectMany(part => part));
            }
            else
            {
                all.AddRange(Numbers(line.Text));
            }

            var head = line.Head.Split('–').Select(Number).ToList();
            Assert.Equal((before + 1, all.Count), (head[0], head[^1]));
        }

        return all;
    }

    private static IEnumerable<int> Numbers(string text) => text.Split(", ").Select(Number);

    private static int Number(string text) => int.Parse(text, NumberStyles.AllowThousands, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^as (ends?|rows?) (?<first>[\d,]+)(–(?<last>[\d,]+))?, (?<times>.*) more$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Again();
}
