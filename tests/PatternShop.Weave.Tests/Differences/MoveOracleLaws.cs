using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>
/// Where somebody goes on in another version, and where the weft lies then, against the definitions of the design: travel belongs to a weft (rule 4),
/// plain rows are rows (rule 6), and a stitch with the working weft takes it across (rule 7).
/// </summary>
public sealed class MoveOracleLaws
{
    private static readonly string[] Kinds =
    [
        "several wefts", "working stitches", "the weft has stitched since its last row", "that, and another weft wove since", "only stitched so far", "not used so far", "the side does not fit", "at the end",
    ];

    private static readonly Gen<(PatternDocument Old, PatternDocument New)> Pairs = Gen.Frequency(
        (2, Gen.Select(DocumentGen.Documents, DocumentGen.Documents)),
        (1, DocumentGen.Documents.Select(document => (document, document))),
        (2, DocumentGen.Documents.SelectMany(EditGen.Of, (document, edit) => (document, edit.Apply(document) is EditResult.Done done ? done.Document : document))),
        (1, Gen.Select(KnownCorrection.All, KnownCorrection.All, (one, other) => (one.Old, other.New))),
        (4, KnownCorrection.All.Select(correction => (correction.Old, correction.New))));

    /// <summary>Which rows are laid beside each other is taken as it is; everything that follows from that is worked out a second time.</summary>
    [Fact]
    public void Between_any_two_documents_every_place_is_what_the_definitions_say()
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var pairs = Effort.Of(2_000, 50_000);
        Pairs.SampleFixed(
            (old, @new) =>
            {
                var difference = PieceDifference.Between(Piece.Of(old), Piece.Of(@new));
                AssertMoves(new MoveOracle(old, @new, difference.Rows.Select(row => (row.Old, row.New))), difference);
                Count(met, old, @new, difference);
            },
            pairs);
        Law.AssertShares(Kinds, met, pairs);
    }

    /// <summary>Corrections after which it is known which row stands for which: nothing is taken from the comparison.</summary>
    [Fact]
    public void After_a_known_correction_every_place_is_what_the_definitions_say()
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var pairs = Effort.Of(2_000, 50_000);
        KnownCorrection.All.SampleFixed(
            correction =>
            {
                var (old, @new) = (correction.Old, correction.New);
                var difference = PieceDifference.Between(Piece.Of(old), Piece.Of(@new));
                AssertMoves(new MoveOracle(old, @new, MoveOracle.Beside(correction.NewOf, Oracle.Rows(@new).Count)), difference);
                Count(met, old, @new, difference);
                met.AddOrUpdate(correction.Kind.ToString(), 1, (_, count) => count + 1);
            },
            pairs);
        Law.AssertShares([.. Kinds, .. Enum.GetNames<CorrectionKind>()], met, pairs);
    }

    // A weft that waits while others weave is found where its stitch took it.
    [Fact]
    public void A_stitch_after_a_row_of_another_weft_takes_the_weft_across()
    {
        var document = Charts.Document("x./.x", steps: [new ChartRows(1, 1, 1), new ChartRows(2, 2, 2), Twining(1), new ChartRows(2, 2, 2), new ChartRows(1, 1, 1)]);
        document = document with { Rows = document.Rows with { Wefts = [new Weft(Side.Left), new Weft(Side.Left)] } };
        var piece = Piece.Of(document);
        var difference = PieceDifference.Between(piece, piece);
        Assert.Equal((4, Side.Left, Side.Left), Place(difference.Move(3)));
        Assert.Equal((4, Side.Left, Side.Left, true), (difference.Moves()[3].Next, difference.Moves()[3].SideNow, difference.Moves()[3].SideNext, difference.Moves()[3].SideFits));
    }

    [Fact]
    public void A_stitch_before_the_first_row_of_its_weft_has_its_weft_in_the_cloth()
    {
        var document = Charts.Document("x./.x", steps: [Twining(1), new ChartRows(1, 2, 1)]);
        var turned = document with { Rows = document.Rows with { Wefts = [new Weft(Side.Right)] } };
        Assert.Equal((1, Side.Left, Side.Right), Place(PieceDifference.Between(Piece.Of(document), Piece.Of(turned)).Move(0)));
        var bare = Charts.Document("x./.x");
        Assert.Equal((1, null, Side.Right), Place(PieceDifference.Between(Piece.Of(bare), Piece.Of(bare with { Rows = bare.Rows with { Wefts = [new Weft(Side.Right)] } })).Move(0)));
    }

    /// <summary>The mistakes that the product made or could make: the law would see each of them.</summary>
    public static TheoryData<string, Func<PatternDocument, PatternDocument>> Slips => new()
    {
        { "stitches left out", d => WithSteps(d, step => step is EdgeStitch { Yarn: StitchYarn.Working } stitch ? stitch with { Across = 2 } : step) },
        { "stitches with the next weft", d => WithSteps(d, step => step is EdgeStitch { Yarn: StitchYarn.Working } stitch ? stitch with { Weft = (stitch.Weft % d.Rows.Wefts.Count) + 1 } : step) },
        { "wefts that start at the other side", d => d with { Rows = d.Rows with { Wefts = d.Rows.Wefts.Select(weft => new Weft(weft.Start == Side.Left ? Side.Right : Side.Left)).ToSequence() } } },
    };

    [Theory]
    [MemberData(nameof(Slips))]
    public void A_slip_would_be_seen(string slip, Func<PatternDocument, PatternDocument> make)
    {
        Assert.NotEmpty(slip);
        Law.CanFail(document =>
        {
            var difference = PieceDifference.Between(Piece.Of(document), Piece.Of(document));
            AssertMoves(new MoveOracle(make(document), document, difference.Rows.Select(row => (row.Old, row.New))), difference);
        });
    }

    private static void AssertMoves(MoveOracle expected, PieceDifference difference)
    {
        Assert.Equal(expected.Rows, difference.Rows);
        var moves = difference.Moves();
        Assert.Equal(expected.OldRows + 1, moves.Count);
        for (var woven = 0; woven <= expected.OldRows; woven++)
        {
            var (place, one, all) = (expected.Move(woven), difference.Move(woven), moves[woven]);
            Assert.Equal(place, one);
            Assert.Equal((place.Next, place.SideNow, place.SideNext, place.Passed.Count), (all.Next, all.SideNow, all.SideNext, difference.Rows.Take(all.Cut).Count(row => row.Fate != RowFate.Same)));
            var fits = place.SideNow is null || place.SideNow == place.SideNext;
            Assert.Equal((fits, fits), (one.SideFits, all.SideFits));
        }
    }

    private static void Count(ConcurrentDictionary<string, int> met, PatternDocument old, PatternDocument @new, PieceDifference difference)
    {
        var (rows, newRows, stitches) = (Oracle.Rows(old), Oracle.Rows(@new), Oracle.Stitches(old).Where(stitch => stitch.Stitch.Yarn == StitchYarn.Working).ToList());
        var kinds = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (woven, move) in difference.Moves().Index())
        {
            Add(move.Next > newRows.Count, "at the end");
            if (move.Next > newRows.Count)
            {
                continue;
            }

            var weft = newRows[move.Next - 1].Weft;
            var row = rows.LastOrDefault(row => row.Number <= woven && row.Weft == weft)?.Number ?? -1;
            var stitch = stitches.LastOrDefault(stitch => stitch.AfterRow <= woven && stitch.Stitch.Weft == weft && stitch.Stitch.Across % 2 != 0)?.AfterRow ?? -1;
            Add(row > 0 && stitch >= row, "the weft has stitched since its last row");
            Add(row > 0 && stitch > row, "that, and another weft wove since");
            Add(row < 0 && stitch >= 0, "only stitched so far");
            Add(row < 0 && stitch < 0, "not used so far");
            Add(!move.SideFits, "the side does not fit");
        }

        Add(rows.Select(row => row.Weft).Distinct().Count() > 1, "several wefts");
        Add(stitches.Count > 0, "working stitches");
        kinds.ToList().ForEach(kind => met.AddOrUpdate(kind, 1, (_, count) => count + 1));

        void Add(bool belongs, string kind) => _ = belongs && kinds.Add(kind);
    }

    private static (int Next, Side? Now, Side? Next2) Place(MovedPlace place) => (place.Next, place.SideNow, place.SideNext);

    private static EdgeStitch Twining(int weft) => new("twining", StitchYarn.Working, 1, Side.Left, weft);

    private static PatternDocument WithSteps(PatternDocument d, Func<SimpleStep, SimpleStep> change) => d with
    {
        Rows = d.Rows with
        {
            Steps = d.Rows.Steps.Select(RowStep (step) => step is Repeat repeat ? repeat with { Steps = repeat.Steps.Select(change).ToSequence() } : change((SimpleStep)step)).ToSequence(),
        },
    };
}
