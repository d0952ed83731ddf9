using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>A database that fails or hangs: nothing is reported as done that is not, and nothing is left half done.</summary>
public sealed class FailureTests
{
    private const string Code = "code";
    private static readonly PatternDocument Other = Charts.Document("xx../..xx");

    private static readonly Dictionary<string, Func<TestStore, MakerId, PatternId, Task<bool>>> Acts = new(StringComparer.Ordinal)
    {
        ["set up"] = async (store, _, _) => await store.Makers.SetUpAsync(Code, MakerTests.Anna, [Other, Other, Other]) is SetUpResult.Done,
        ["make a code"] = async (store, _, _) => await store.Makers.SetUpCodeAsync() is not null,
        ["set a passphrase"] = async (store, _, _) => await store.Makers.SetPassphraseAsync("ben@example.org", "another seven threads") is SetPassphraseResult.Done,
        ["set the address"] = async (store, _, _) => await store.Makers.SetPublicAddressAsync("https://example.org") is null,
        ["create"] = async (store, maker, _) => (await store.Workroom.CreateAsync(maker, Other)).Value.Length > 0,
        ["save"] = async (store, maker, id) => await store.Workroom.SaveAsync(maker, id, new StepRequest("w", 9, 5, "Step", Other)) is SaveResult.Saved,
        ["undo"] = async (store, maker, id) => await store.Workroom.UndoAsync(maker, id, "w", 9, 5) is SaveResult.Saved,
        ["redo"] = async (store, maker, id) => await store.Workroom.RedoAsync(maker, id, "w", 9, 5) is SaveResult.Saved,
        ["issue"] = async (store, maker, id) => await store.Workroom.IssueAsync(maker, id, TestStore.Request(5, 2, Charts.Document("x.") with { Title = "2" })) is IssueResult.Issued,
        ["withdraw"] = (store, maker, id) => store.Workroom.WithdrawAsync(maker, id),
        ["restore"] = (store, maker, id) => store.Workroom.RestoreAsync(maker, id),
        ["delete"] = async (store, maker, _) => await store.Workroom.DeleteAsync(maker, (await store.Workroom.ListAsync(maker)).Single(card => card.NewestNumber is null).Id),
        ["bring back"] = async (store, maker, _) => await store.Workroom.BringBackAsync(maker, (await store.Workroom.DeletedAsync(maker))[0].Id),
        ["sweep"] = async (store, _, _) => await store.Sweeping.SweepAsync() == 1,
    };

    public static TheoryData<string> ActNames => [.. Acts.Keys];

    [Theory]
    [MemberData(nameof(ActNames))]
    public async Task A_failure_at_any_statement_or_at_the_commit_leaves_nothing(string act)
    {
        var faults = new Faults();
        await using var store = await TestStore.OpenAsync(faults);
        var (maker, id) = await PrepareAsync(store, act);
        using var raw = store.Raw();
        var before = raw.Dump();
        var statements = 0;
        for (var done = false; !done; statements++)
        {
            faults.Passing = statements;
            faults.FailCommit = true;
            await Assert.ThrowsAsync<StoreException>(() => Acts[act](store, maker, id));
            done = faults.Passing >= 0;
            Assert.Equal(before, raw.Dump());
        }

        Assert.True(statements >= 2, $"only {statements} statements were made to fail");
        (faults.Passing, faults.FailCommit) = (null, false);
        Assert.True(await Acts[act](store, maker, id));
        Assert.NotEqual(before, raw.Dump());
    }

    [Fact]
    public async Task A_step_is_not_saved_before_the_commit_is_through()
    {
        var faults = new Faults();
        await using var store = await TestStore.OpenAsync(faults);
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker);
        var hang = new TaskCompletionSource();
        faults.CommitWaits = hang.Task;
        var saving = store.Workroom.SaveAsync(maker, id, new StepRequest("w", 1, 1, "Step", Other));
        await faults.CommitReached.Task;
        Assert.False(saving.IsCompleted);
        Assert.Equal(1, (await store.Workroom.OpenAsync(maker, id))!.Revision);
        hang.SetResult();
        Assert.IsType<SaveResult.Saved>(await saving);
        Assert.Equal(2, (await store.Workroom.OpenAsync(maker, id))!.Revision);
    }

    [Fact]
    public async Task A_step_that_failed_can_be_sent_again_and_counts_once()
    {
        var faults = new Faults();
        await using var store = await TestStore.OpenAsync(faults);
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker);
        var step = new StepRequest("w", 1, 1, "Step", Other);
        faults.FailCommit = true;
        await Assert.ThrowsAsync<StoreException>(() => store.Workroom.SaveAsync(maker, id, step));
        faults.FailCommit = false;
        Assert.Equal(2, Assert.IsType<SaveResult.Saved>(await store.Workroom.SaveAsync(maker, id, step)).Revision);
        Assert.Equal(2, Assert.IsType<SaveResult.HadAlready>(await store.Workroom.SaveAsync(maker, id, step)).Revision);
    }

    [Fact]
    public async Task A_database_that_another_program_holds_is_said_and_reading_goes_on()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker);
        var step = new StepRequest("w", 1, 1, "Step", Other);
        using (var raw = store.Raw())
        {
            raw.Sql("BEGIN IMMEDIATE");
            Assert.Contains("locked", (await Assert.ThrowsAsync<StoreException>(() => store.Workroom.SaveAsync(maker, id, step))).Message, StringComparison.Ordinal);
            Assert.Equal(1, (await store.Workroom.OpenAsync(maker, id))!.Revision);
            raw.Sql("ROLLBACK");
        }

        Assert.IsType<SaveResult.Saved>(await store.Workroom.SaveAsync(maker, id, step));
    }

    [Fact]
    public async Task A_caller_who_gives_up_before_it_began_changes_nothing()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker);
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => store.Workroom.SaveAsync(maker, id, new StepRequest("w", 1, 1, "Step", Other), new CancellationToken(canceled: true)));
        Assert.Equal(1, (await store.Workroom.OpenAsync(maker, id))!.Revision);
    }

    /// <summary>A pattern at revision 5 with something to undo, something to redo and one version, and one without versions; or only a code.</summary>
    private static async Task<(MakerId Maker, PatternId Id)> PrepareAsync(TestStore store, string act)
    {
        if (act is "set up" or "make a code")
        {
            await using var context = store.File.Context();
            context.Settings.Add(new SettingRow { Name = Settings.SetUpCode, Value = SetUpCode.Hash(Code) });
            await context.SaveChangesAsync();
            return default;
        }

        var maker = await store.MakerAsync("ben");
        await store.PatternAsync(maker);
        var id = await store.PatternAsync(maker, Charts.Document("x."));
        foreach (var number in new[] { 1, 2, 3 })
        {
            await store.Workroom.SaveAsync(maker, id, new StepRequest("w", number, number, "Step", Charts.Document("x.") with { Title = $"{number}" }));
        }

        await store.Workroom.UndoAsync(maker, id, "w", 4, 4);
        await store.IssueAsync(maker, id);
        if (act == "restore")
        {
            await store.Workroom.WithdrawAsync(maker, id);
        }
        else if (act is "bring back" or "sweep")
        {
            await store.Workroom.DeleteAsync(maker, (await store.Workroom.ListAsync(maker)).Single(card => card.NewestNumber is null).Id);
            store.Time.Now += act == "sweep" ? Deleted.Kept : TimeSpan.Zero;
        }

        return (maker, id);
    }
}
