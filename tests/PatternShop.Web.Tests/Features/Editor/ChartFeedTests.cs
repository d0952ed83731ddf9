using CsCheck;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>What the script is told, judged by a second working-out of what it does with it.</summary>
public sealed class ChartFeedTests
{
    [Fact]
    public void A_window_that_hears_every_update_shows_what_the_store_holds() => EditGen.Many(1, 12).Sample(
        c =>
        {
            var (feed, script) = (new ChartFeed(Wording.English) { Client = "me" }, new Script());
            var document = c.Document;
            script.Receive(feed.Whole(View(document, 1), []));
            foreach (var (at, edit) in c.Edits.Index())
            {
                if (edit.Apply(document) is EditResult.Done done)
                {
                    document = done.Document;
                    script.Receive(feed.Next(View(document, at + 2), Answers(script, edit, at)));
                    script.AssertShows(Piece.Of(document));
                }
            }
        },
        iter: Effort.Of(300, 20_000));

    [Fact]
    public void A_stroke_of_the_window_itself_is_not_sent_back()
    {
        var document = Charts.Document(Charts.TenEndDiamond);
        var feed = new ChartFeed(Wording.English) { Client = "me" };
        feed.Whole(View(document, 1), []);
        var stroke = TestBench.Stroke(document.Motif, (0, 1, true));
        var after = document with { Motif = document.Motif.With(stroke.Cells, stroke.Over) };
        var update = feed.Next(View(after, 2), [new AnsweredStroke(new SettledStroke("me", 1, "saved", ""), stroke)]);
        Assert.Equal((2, null, 0, null), (update.Revision, update.Motif, update.Rows.Count, update.Piece));
        Assert.Equal([0], feed.Next(View(document, 3), []).Rows.Select(row => row.Row));
    }

    [Fact]
    public void The_piece_is_sent_when_the_plan_changes_and_only_then()
    {
        var document = Charts.Document(Charts.TenEndDiamond);
        var feed = new ChartFeed(Wording.English);
        Assert.NotNull(feed.Whole(View(document, 1), []).Piece);
        Assert.Null(feed.Next(View(document with { Title = "Other" }, 2), []).Piece);
        Assert.NotNull(feed.Next(View(document with { Width = document.Width with { Repeats = 2 } }, 3), []).Piece);
        Assert.NotNull(feed.Whole(View(document with { Width = document.Width with { Repeats = 2 } }, 3), []).Piece);
    }

    [Fact]
    public void What_is_said_beside_the_bands_is_what_the_printed_chart_says()
    {
        var steps = new RowStep[] { new Repeat(5, [new ChartRows(1, 3, 1)]), new ChartRows(1, 1, 1) };
        var piece = Piece.Of(Charts.Document("xx./.xx/x.x", repeats: 3, floating: Charts.AlikeUnder, steps: steps));
        Assert.Equal(
            [new PieceBand(0, 3, "times 1, 3 and 5"), new PieceBand(3, 3, "times 2 and 4"), new PieceBand(6, 1, "closing, once")],
            PieceIndex.Of(piece, Wording.English).Bands);
    }

    [Fact]
    public void A_piece_of_any_length_is_cut()
    {
        var index = PieceIndex.Of(Piece.Of(Charts.Document("x./.x", steps: [new PlainRows(90_000, 1)])), Wording.English);
        Assert.Equal((PieceIndex.MostRows, PieceIndex.MostRows), (index.Rows.Count, index.Bands.Sum(band => band.Rows)));
    }

    private static List<AnsweredStroke> Answers(Script script, Edit edit, int at)
    {
        // every other stroke is the window's own and shows there before it is answered
        if (edit is not SetCells stroke || at % 2 != 0)
        {
            return [];
        }

        script.Pending[at] = stroke;
        return [new AnsweredStroke(new SettledStroke("me", at, "saved", ""), stroke)];
    }

    private static PatternView View(PatternDocument document, long revision) => new(new PatternState(revision, document, null, null));

    private sealed class Script
    {
        private BitGrid? _motif;
        private PieceIndex? _piece;

        public Dictionary<long, SetCells> Pending { get; } = [];

        public void Receive(ChartUpdate update)
        {
            foreach (var stroke in update.Settled.Where(settled => settled.Outcome == "saved").Select(settled => Pending[settled.Sequence]))
            {
                _motif = _motif!.With(stroke.Cells, stroke.Over);
            }

            if (update.Motif is { } motif)
            {
                var bytes = Convert.FromBase64String(motif.Cells);
                var perRow = (motif.Ends + 7) / 8;
                _motif = BitGrid.Create(motif.Rows, motif.Ends, (row, end) => IsSet(bytes, (row * perRow * 8) + end));
            }

            foreach (var row in update.Rows)
            {
                var bytes = Convert.FromBase64String(row.Cells);
                _motif = BitGrid.Create(_motif!.Rows, _motif.Columns, (at, end) => at == row.Row ? IsSet(bytes, end) : _motif[at, end]);
            }

            _piece = update.Piece ?? _piece;
        }

        public void AssertShows(Piece piece)
        {
            Assert.Equal(piece.Document.Motif, _motif);
            Assert.Equal(piece.PrintedRows(), _piece!.Numbers);
            foreach (var (row, number) in _piece.Numbers.Index())
            {
                var over = Enumerable.Range(0, piece.Ends).Select(column => piece.At(number, column) == Stroke.Over);
                Assert.Equal(over, Enumerable.Range(0, piece.Ends).Select(column => IsOver(row, column)));
                Assert.Equal(piece.Reading(number).Key.From == Side.Left ? 0 : 1, _piece.Readings[_piece.Rows[row]][3]);
            }
        }

        private bool IsOver(int row, int column) => (_piece!.Readings[_piece.Rows[row]], column - _piece.Floating) switch
        {
            (var reading, < 0) => reading[1] == 1,
            (var reading, var end) when end >= _piece.PatternEnds => reading[2] == 1,
            ([-1, ..], var end) => end % 2 == 1,
            ([-2, ..], var end) => end % 2 == 0,
            ([var source, ..], var end) => _motif![source, (end + _piece.Offset) % _piece.MotifEnds],
            _ => throw new InvalidOperationException(),
        };

        private static bool IsSet(byte[] bytes, int bit) => (bytes[bit / 8] >> (bit % 8) & 1) != 0;
    }
}
