using CsCheck;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>Strokes that are lost, doubled and reordered on the way end in the document that they would have made in order.</summary>
public sealed class StrokeDeliveryLaws(SharedBench shared) : IClassFixture<SharedBench>
{
    private static readonly PatternDocument Blank = Charts.Document("........../........../........../........../..........");

    private static readonly Gen<(SetCells[] Strokes, int Seed)> Cases =
        Gen.Select(EditGen.Strokes(Blank.Motif.Rows, Blank.Motif.Columns).Array[1, 8], Gen.Int);

    [Fact]
    public async Task One_window_over_a_bad_connection()
    {
        var bench = shared.Bench;
        await Cases.SampleAsync(
            async c =>
            {
                var id = await bench.PatternAsync(Blank);
                using var seat = await bench.SitAsync(id);
                await new BadConnection(seat, new Random(c.Seed)).DeliverAsync(new Window("w", c.Strokes));
                var stored = await bench.StoredAsync(id);
                Assert.Equal(InOrder(c.Strokes), stored.Document.Motif);
                Assert.Equal(1 + c.Strokes.Length, stored.Revision);
            },
            iter: Effort.Of(10, 1_000),
            threads: 1);
    }

    [Fact]
    public async Task Two_windows_that_draw_on_their_own_halves()
    {
        var bench = shared.Bench;
        await Gen.Select(Cases, Cases).SampleAsync(
            async (left, right) =>
            {
                var id = await bench.PatternAsync(Blank);
                using var seat = await bench.SitAsync(id);
                SetCells[] lefts = [.. left.Strokes.Select(stroke => Half(stroke, left: true))];
                SetCells[] rights = [.. right.Strokes.Select(stroke => Half(stroke, left: false))];
                await new BadConnection(seat, new Random(left.Seed)).DeliverAsync(new Window("left", lefts), new Window("right", rights));
                Assert.Equal(InOrder([.. lefts, .. rights]), (await bench.StoredAsync(id)).Document.Motif);
            },
            iter: Effort.Of(6, 500),
            threads: 1);
    }

    [Fact]
    public async Task Without_the_order_the_document_would_be_another()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync(Blank);
        using var seat = await bench.SitAsync(id);
        SetCells[] strokes = [TestBench.Stroke(Blank.Motif, (0, 0, true)), TestBench.Stroke(Blank.Motif, (0, 0, false))];
        await seat.SubmitAsync("w", 2, 0, strokes[1]);
        await seat.SubmitAsync("w", 1, 0, strokes[0]);
        Assert.NotEqual(InOrder(strokes), (await bench.StoredAsync(id)).Document.Motif);
    }

    private static BitGrid InOrder(IEnumerable<SetCells> strokes) =>
        strokes.Aggregate(Blank.Motif, (motif, stroke) => motif.With(stroke.Cells, stroke.Over));

    private static SetCells Half(SetCells stroke, bool left) => stroke with
    {
        Cells = BitGrid.Create(Blank.Motif.Rows, Blank.Motif.Columns, (row, end) => stroke.Cells[row, end] && end < 5 == left),
    };

    private sealed class Window(string client, IEnumerable<SetCells> strokes)
    {
        private readonly List<(long Sequence, SetCells Stroke)> _waiting = [.. strokes.Select((stroke, at) => (at + 1L, stroke))];

        public bool IsDone => _waiting.Count == 0;

        /// <summary>A message as the browser makes it: it names the stroke that waits before it.</summary>
        public EditMessage Message(Random random)
        {
            var at = random.Next(_waiting.Count);
            return new EditMessage(client, _waiting[at].Sequence, at == 0 ? 0 : _waiting[at - 1].Sequence, _waiting[at].Stroke);
        }

        public void Hear(EditMessage message, Acknowledgement answer)
        {
            if (message.Client == client && !answer.IsOpen)
            {
                _waiting.RemoveAll(one => one.Sequence == message.Sequence);
            }
        }
    }

    private sealed class BadConnection(PatternSeat seat, Random random)
    {
        private readonly List<EditMessage> _onTheWay = [];

        public async Task DeliverAsync(params Window[] windows)
        {
            while (windows.Any(window => !window.IsDone))
            {
                Window[] open = [.. windows.Where(window => !window.IsDone)];
                _onTheWay.Add(open[random.Next(open.Length)].Message(random));
                if (random.Next(2) == 0)
                {
                    await ArriveAsync(windows);
                }
            }

            while (_onTheWay.Count > 0)
            {
                await ArriveAsync(windows);
            }
        }

        private async Task ArriveAsync(Window[] windows)
        {
            var message = _onTheWay[random.Next(_onTheWay.Count)];
            var isDoubled = random.Next(4) == 0;
            if (!isDoubled)
            {
                _onTheWay.Remove(message);
            }

            if (random.Next(5) == 0)
            {
                return;
            }

            var answer = await seat.SubmitAsync(message.Client, message.Sequence, message.After, message.Edit);
            if (random.Next(4) != 0)
            {
                Array.ForEach(windows, window => window.Hear(message, answer));
            }
        }
    }
}
