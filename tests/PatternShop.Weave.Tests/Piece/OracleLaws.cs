using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>The engine against a second, independent working-out of the definitions.</summary>
public sealed class OracleLaws
{
    [Fact]
    public void Every_row_is_what_the_definitions_say() =>
        Law.OfDocuments(document => AssertRows(Piece.Of(document), document), small: 3_000, full: 200_000);

    [Fact]
    public void Every_edge_stitch_is_where_the_definitions_say() => Law.OfDocuments(document => Assert.Equal(
        Oracle.Stitches(document),
        Piece.Of(document).Stitches.Select(woven => new OracleStitch(woven.AfterRow, woven.Step, woven.Time, woven.Stitch, woven.From))));

    public static TheoryData<string, Func<PatternDocument, PatternDocument>> Slips => new()
    {
        { "offset", d => d with { Width = d.Width with { Offset = (d.Width.Offset + 1) % d.Motif.Columns } } },
        { "balance", d => d with { Width = d.Width with { Balance = d.Width.Balance + 1 } } },
        { "repeats", d => d with { Width = d.Width with { Repeats = d.Width.Repeats + 1 } } },
        { "edges", d => Floating(d, f => f with { Edges = f.Edges == EdgeWay.Alike ? EdgeWay.Entering : EdgeWay.Alike }) },
        { "first edge", d => Floating(d, f => f with { First = f.First == Stroke.Over ? Stroke.Under : Stroke.Over }) },
        { "first plain", d => d with { Rows = d.Rows with { FirstPlain = d.Rows.FirstPlain == Stroke.Over ? Stroke.Under : Stroke.Over } } },
        { "start", d => d with { Rows = d.Rows with { Wefts = d.Rows.Wefts.Select(w => new Weft(w.Start == Side.Left ? Side.Right : Side.Left)).ToSequence() } } },
        { "a cell", d => d with { Motif = d.Motif.With(0, 0, !d.Motif[0, 0]) } },
        { "across", d => Steps(d, s => s is EdgeStitch { Yarn: StitchYarn.Working } stitch ? stitch with { Across = stitch.Across + 1 } : s) },
        { "plain count", d => Steps(d, s => s is PlainRows plain ? plain with { Count = plain.Count + 1 } : s) },
        { "direction", d => Steps(d, s => s is ChartRows rows ? new ChartRows(rows.Last, rows.First, rows.Weft) : s) },
        { "weft", d => Steps(d, s => s is ChartRows rows ? rows with { Weft = (rows.Weft % d.Rows.Wefts.Count) + 1 } : s) },
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public void A_slip_in_one_setting_would_be_seen(string setting, Func<PatternDocument, PatternDocument> slip)
    {
        Assert.NotEmpty(setting);
        Law.CanFail(document => AssertRows(Piece.Of(document), slip(document)));
    }

    private static void AssertRows(Piece piece, PatternDocument document)
    {
        var expected = Oracle.Rows(document);
        Assert.Equal(expected.Count, piece.Rows.Count);
        foreach (var row in expected)
        {
            var woven = piece.Rows[row.Number - 1];
            Assert.Equal((row.Number, row.ChartRow, row.Weft, row.Step, row.Time, row.From), (woven.Number, woven.ChartRow, woven.Weft, woven.Step, woven.Time, woven.From));
            Assert.Equal(row.Over, Enumerable.Range(0, piece.Ends).Select(column => piece.At(row.Number, column) == Stroke.Over));
            Assert.Equal(row.Runs, piece.Reading(row.Number).Runs.Select(run => (run.Stroke == Stroke.Over, run.Count)));
        }
    }

    private static PatternDocument Floating(PatternDocument d, Func<FloatingSelvedges, FloatingSelvedges> change) =>
        d with { Width = d.Width with { Floating = d.Width.Floating is { } floating ? change(floating) : null } };

    private static PatternDocument Steps(PatternDocument d, Func<SimpleStep, SimpleStep> change) => d with
    {
        Rows = d.Rows with
        {
            Steps = d.Rows.Steps.Select(step => step switch
            {
                Repeat repeat => repeat with { Steps = repeat.Steps.Select(change).ToSequence() },
                SimpleStep simple => change(simple),
                _ => step,
            }).ToSequence(),
        },
    };
}
