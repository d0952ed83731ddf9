using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>Laws of steps, undo and redo over random edits, each on a pattern of its own in one store.</summary>
public sealed class HistoryLaws
{
    private enum Act
    {
        Save,
        Undo,
        Redo,
    }

    private static Gen<(Act Act, PatternDocument Document)[]> Acts { get; } =
        Gen.Select(Gen.Frequency((3, Gen.Const(Act.Save)), (2, Gen.Const(Act.Undo)), (1, Gen.Const(Act.Redo))), DocumentGen.Of(4, 4)).Array[1, 12];

    [Fact]
    public Task Undo_after_do_is_what_was_there_before_and_redo_brings_it_back() => OnStore(store =>
        EditGen.Many(2, 8).SampleAsync(
            async (first, edits) =>
            {
                var maker = new MakerId(1);
                var id = await store.PatternAsync(maker, first);
                var sequence = 0;
                var now = (await store.Workroom.OpenAsync(maker, id))!.Now;
                foreach (var edit in edits)
                {
                    var before = now.Document;
                    if (edit.Apply(before) is not EditResult.Done done)
                    {
                        continue;
                    }

                    now = Saved(await store.Workroom.SaveAsync(maker, id, new StepRequest("w", ++sequence, now.Revision, "Step", done.Document)), now);
                    now = Saved(await store.Workroom.UndoAsync(maker, id, "w", ++sequence, now.Revision), now);
                    Assert.Equal(before, now.Document);
                    now = Saved(await store.Workroom.RedoAsync(maker, id, "w", ++sequence, now.Revision), now);
                    Assert.Equal(done.Document, now.Document);
                }

                Assert.Equal(now, (await store.Workroom.OpenAsync(maker, id))!.Now);
            },
            iter: Effort.Of(12, 20_000)));

    [Fact]
    public Task The_history_is_a_list_with_a_cursor() => OnStore(store => Acts.SampleAsync(
        async acts =>
        {
            var maker = new MakerId(1);
            var list = new List<(string? Name, PatternDocument Document)> { (null, acts[0].Document) };
            var (cursor, revision) = (0, 1L);
            var id = await store.PatternAsync(maker, acts[0].Document);
            foreach (var (place, act) in acts.Index())
            {
                var result = await SendAsync(store, maker, id, act, place, revision);
                if (act.Act == Act.Save)
                {
                    list.RemoveRange(cursor + 1, list.Count - cursor - 1);
                    list.Add(($"Step {place}", act.Document));
                }

                var target = cursor + (act.Act == Act.Undo ? -1 : 1);
                var moves = target >= 0 && target < list.Count;
                (cursor, revision) = moves ? (target, revision + 1) : (cursor, revision);
                var expected = new PatternState(revision, list[cursor].Document, list[cursor].Name, cursor + 1 < list.Count ? list[cursor + 1].Name : null);
                Assert.Equal(moves ? new SaveResult.Saved(expected) : new SaveResult.Nothing(expected), result);
                Assert.Equal(expected, (await store.Workroom.OpenAsync(maker, id))!.Now);
            }
        },
        iter: Effort.Of(15, 1_000)));

    [Fact]
    public Task Messages_sent_again_doubled_and_out_of_order_end_in_the_same_document() => OnStore(store =>
        Gen.Select(Acts, Gen.Int[0, 11].Array[0, 30]).SampleAsync(
            async (acts, deliveries) =>
            {
                var maker = new MakerId(1);
                var plain = await store.PatternAsync(maker, acts[0].Document);
                var bases = new List<long> { 1 };
                foreach (var (place, act) in acts.Index())
                {
                    var result = await SendAsync(store, maker, plain, act, place, bases[place]);
                    bases.Add(result is SaveResult.Saved saved ? saved.Revision : bases[place]);
                }

                var shaken = await store.PatternAsync(maker, acts[0].Document);
                foreach (var place in deliveries.Where(place => place < acts.Length))
                {
                    await SendAsync(store, maker, shaken, acts[place], place, bases[place]);
                }

                for (var place = 0; place < acts.Length; place++)
                {
                    await SendAsync(store, maker, shaken, acts[place], place, bases[place]);
                    var doubled = await SendAsync(store, maker, shaken, acts[place], place, bases[place]);
                    Assert.Equal(bases[place + 1] > bases[place], doubled is SaveResult.HadAlready);
                }

                Assert.Equal((await store.Workroom.OpenAsync(maker, plain))!.Now, (await store.Workroom.OpenAsync(maker, shaken))!.Now);
            },
            iter: Effort.Of(15, 1_000)));

    [Fact]
    public Task Of_two_windows_each_step_counts_once_or_is_refused() => OnStore(store =>
        Gen.Select(DocumentGen.Of(3, 3), Gen.Select(Gen.Bool, DocumentGen.Of(3, 3)).Array[1, 10]).SampleAsync(
            async (first, steps) =>
            {
                var maker = new MakerId(1);
                var id = await store.PatternAsync(maker, first);
                var results = await Task.WhenAll(steps.Index().Select(step => Task.Run(async () =>
                {
                    var request = new StepRequest(step.Item.Item1 ? "left" : "right", step.Index, (step.Index / 2) + 1, $"Step {step.Index}", step.Item.Item2);
                    var once = await store.Workroom.SaveAsync(maker, id, request);
                    var again = await store.Workroom.SaveAsync(maker, id, request);
                    Assert.True(once is SaveResult.Saved ? again is SaveResult.HadAlready : again is SaveResult.Moved or SaveResult.Saved);
                    return once as SaveResult.Saved ?? again as SaveResult.Saved;
                })));
                var saved = results.OfType<SaveResult.Saved>().OrderBy(result => result.Revision).ToList();
                Assert.Equal(Enumerable.Range(2, saved.Count).Select(revision => (long)revision), saved.Select(result => result.Revision));
                var now = (await store.Workroom.OpenAsync(maker, id))!.Now;
                Assert.Equal(saved.Count == 0 ? first : saved[^1].Now.Document, now.Document);
                Assert.Equal(saved.Count + 1, now.Revision);
            },
            iter: Effort.Of(15, 1_000)));

    private static Task<SaveResult> SendAsync(TestStore store, MakerId maker, PatternId id, (Act Act, PatternDocument Document) act, int place, long revision) => act.Act switch
    {
        Act.Save => store.Workroom.SaveAsync(maker, id, new StepRequest("w", place, revision, $"Step {place}", act.Document)),
        Act.Undo => store.Workroom.UndoAsync(maker, id, "w", place, revision),
        _ => store.Workroom.RedoAsync(maker, id, "w", place, revision),
    };

    private static PatternState Saved(SaveResult result, PatternState before)
    {
        var now = Assert.IsType<SaveResult.Saved>(result).Now;
        Assert.Equal(before.Revision + 1, now.Revision);
        return now;
    }

    private static async Task OnStore(Func<TestStore, Task> law)
    {
        await using var store = await TestStore.OpenAsync();
        Assert.Equal(new MakerId(1), await store.MakerAsync());
        await law(store);
    }
}
