using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>
/// A machine that loses power keeps what was synced and any part of what was not. Here the log that SQLite writes ahead is cut anywhere, which
/// leaves what a disk may leave.
/// </summary>
public sealed class WriteAheadLogTests
{
    private const int Steps = 24;
    private const int StepsAVersion = 8;
    private static readonly int Cuts = Effort.Of(20, 200);

    [Fact]
    public async Task A_log_that_is_cut_anywhere_opens_with_everything_that_was_acknowledged_before_the_cut()
    {
        await using var store = await TestStore.OpenAsync();
        var (maker, id, acknowledged) = await WorkAsync(store);
        var log = await ReadAsync(store.File.Path + "-wal");
        Assert.Equal(log.Length, acknowledged[^1].Log);
        var database = await ReadAsync(store.File.Path);
        foreach (var at in CutsOf(log.Length))
        {
            await using var after = TestStore.Unopened();
            Directory.CreateDirectory(after.File.Folder);
            await File.WriteAllBytesAsync(after.File.Path, database, TestContext.Current.CancellationToken);
            await File.WriteAllBytesAsync(after.File.Path + "-wal", log[..at], TestContext.Current.CancellationToken);
            await after.Start.OpenAsync(TestContext.Current.CancellationToken);
            Assert.Equal((at, Last(acknowledged, at)), (at, await StateAsync(after, maker, id)));
            using var raw = after.Raw();
            Assert.Equal((at, "ok"), (at, raw.Sql("PRAGMA integrity_check")));
        }
    }

    // Each with how long the log was when it was acknowledged, the shortest first.
    private static async Task<(MakerId Maker, PatternId Id, List<(long Log, State? State)> Acknowledged)> WorkAsync(TestStore store)
    {
        var maker = await store.MakerAsync();
        var acknowledged = new List<(long Log, State? State)> { (0, null) };
        var id = await store.PatternAsync(maker);
        await NoteAsync();
        for (var step = 1; step <= Steps; step++)
        {
            var open = (await store.Workroom.OpenAsync(maker, id))!;
            var motif = open.Document.Motif;
            var (row, end) = (step % motif.Rows, step * 3 % motif.Columns);
            var drawn = open.Document with { Motif = motif.With(row, end, !motif[row, end]) };
            Assert.IsType<SaveResult.Saved>(await store.Workroom.SaveAsync(maker, id, new StepRequest("window", step, open.Revision, "Draw", drawn)));
            await NoteAsync();
            if (step % StepsAVersion == 0)
            {
                await store.IssueAsync(maker, id);
                await NoteAsync();
            }
        }

        return (maker, id, acknowledged);

        async Task NoteAsync()
        {
            var log = new FileInfo(store.File.Path + "-wal").Length;
            Assert.True(log > acknowledged[^1].Log);
            acknowledged.Add((log, await StateAsync(store, maker, id)));
        }
    }

    private static async Task<State?> StateAsync(TestStore store, MakerId maker, PatternId id) =>
        await store.Workroom.OpenAsync(maker, id) is { } open
            ? new State(open.Revision, open.Versions.Count, GridText.Write(open.Document.Motif).ToSequence())
            : null;

    private static State? Last(List<(long Log, State? State)> acknowledged, int at) => acknowledged.FindLast(one => one.Log <= at).State;

    // The same in every run; the ends of the log are among them.
    private static IEnumerable<int> CutsOf(int length)
    {
        var cuts = new List<int> { 0, length };
        Gen.Int[0, length].Array[Cuts].Sample(cuts.AddRange, seed: new PCG(1, 2026).ToString(), iter: 1, threads: 1);
        return cuts;
    }

    private static async Task<byte[]> ReadAsync(string path)
    {
        await using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        using var bytes = new MemoryStream();
        await file.CopyToAsync(bytes);
        return bytes.ToArray();
    }

    private sealed record State(long Revision, int Versions, Sequence<string> Motif);
}
