using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>What was thrown away can be brought back for 30 days, and is gone afterwards.</summary>
public sealed class DeletingTests
{
    private static readonly PatternDocument First = Charts.Document("xx../..xx");

    // the bin keeps a pattern for 30 days
    private static readonly TimeSpan Month = TimeSpan.FromDays(30);

    [Fact]
    public async Task A_pattern_that_was_thrown_away_answers_as_if_it_did_not_exist_and_comes_back_as_it_was()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var (id, secret, before) = await ThrownAwayAsync(store, maker);
        Assert.Empty(await store.Workroom.ListAsync(maker));
        Assert.Null(await store.Workroom.OpenAsync(maker, id));
        Assert.IsType<SaveResult.Missing>(await store.Workroom.SaveAsync(maker, id, new StepRequest("w", 9, 3, "Step", First)));
        Assert.IsType<SaveResult.Missing>(await store.Workroom.UndoAsync(maker, id, "w", 9, 3));
        Assert.IsType<IssueResult.Missing>(await store.Workroom.IssueAsync(maker, id, TestStore.Request(3, 1, First)));
        Assert.False(await store.Workroom.DeleteAsync(maker, id));
        Assert.Null(await store.Workroom.DuplicateAsync(maker, id, title => title));
        Assert.Null(await store.Photos.ListAsync(maker, id));
        Assert.Null(await store.Previews.FindAsync(secret));
        Assert.Equal(new DeletedCard(id, First.Title, 3, store.Time.Now, store.Time.Now + Month), Assert.Single(await store.Workroom.DeletedAsync(maker)));
        Assert.Equal(First, await store.Workroom.DeletedDocumentAsync(maker, id));

        Assert.True(await store.Workroom.BringBackAsync(maker, id));
        Assert.False(await store.Workroom.BringBackAsync(maker, id));
        Assert.Empty(await store.Workroom.DeletedAsync(maker));
        Assert.Null(await store.Workroom.DeletedDocumentAsync(maker, id));
        using var raw = store.Raw();
        Assert.Equal(before, raw.Dump());
        Assert.Equal("Second", Assert.IsType<SaveResult.Saved>(await store.Workroom.RedoAsync(maker, id, "w", 9, 3)).Now.Document.Title);
        Assert.Single((await store.Photos.ListAsync(maker, id))!);
        await store.IssueAsync(maker, id);
    }

    [Fact]
    public async Task It_is_kept_for_thirty_days_and_not_a_moment_longer()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var (id, _, _) = await ThrownAwayAsync(store, maker);
        using var raw = store.Raw();
        var thrown = raw.Dump();
        store.Time.Now += Month - TimeSpan.FromTicks(1);
        Assert.Equal(0, await store.Sweeping.SweepAsync());
        Assert.Equal(thrown, raw.Dump());
        Assert.Single(await store.Workroom.DeletedAsync(maker));
        Assert.NotNull(await store.Workroom.DeletedDocumentAsync(maker, id));

        // over, though nobody has swept
        store.Time.Now += TimeSpan.FromTicks(1);
        Assert.Empty(await store.Workroom.DeletedAsync(maker));
        Assert.Null(await store.Workroom.DeletedDocumentAsync(maker, id));
        Assert.False(await store.Workroom.BringBackAsync(maker, id));
        Assert.Equal(thrown, raw.Dump());
        Assert.Equal(1, await store.Sweeping.SweepAsync());
        Assert.DoesNotContain(raw.Dump(), row => row.Contains(id.Value, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_clock_that_is_a_month_ahead_for_some_starts_does_not_empty_the_bin()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var (id, _, _) = await ThrownAwayAsync(store, maker);
        Assert.Equal(0, await store.Sweeping.SweepConfirmedAsync());
        var day = TimeSpan.FromDays(1);
        store.Time.Now += day;
        Assert.Equal(0, await store.Sweeping.SweepConfirmedAsync());

        // started twice with the clock wrong, then set right
        store.Time.Now += Month * 2;
        Assert.Equal(0, await store.Sweeping.SweepConfirmedAsync());
        store.Time.Now += TimeSpan.FromHours(1);
        Assert.Equal(0, await store.Sweeping.SweepConfirmedAsync());
        store.Time.Now -= (Month * 2) - TimeSpan.FromHours(1);
        Assert.Equal(0, await store.Sweeping.SweepConfirmedAsync());
        Assert.NotNull(await store.Workroom.DeletedDocumentAsync(maker, id));

        // the days pass as they should
        store.Time.Now += Month;
        Assert.Equal(0, await store.Sweeping.SweepConfirmedAsync());
        store.Time.Now += day;
        Assert.Equal(1, await store.Sweeping.SweepConfirmedAsync());
        Assert.Equal(0, await store.Sweeping.SweepConfirmedAsync());
    }

    [Fact]
    public async Task Sweeping_leaves_everything_else_as_it_is()
    {
        await using var store = await TestStore.OpenAsync();
        var (maker, other) = (await store.MakerAsync(), await store.MakerAsync("ben"));
        await store.IssueAsync(maker, await store.PatternAsync(maker));
        var withdrawn = await store.PatternAsync(maker);
        await store.IssueAsync(maker, withdrawn);
        await store.Workroom.WithdrawAsync(maker, withdrawn);
        await store.PatternAsync(maker, First);
        await store.PatternAsync(other, First);
        using var raw = store.Raw();
        var before = raw.Dump();
        await ThrownAwayAsync(store, maker);
        await ThrownAwayAsync(store, other);
        store.Time.Now += Month;
        Assert.Equal(2, await store.Sweeping.SweepAsync());
        Assert.Equal(0, await store.Sweeping.SweepAsync());
        Assert.Equal(before, raw.Dump());
    }

    [Fact]
    public async Task Thrown_away_twice_the_days_are_counted_anew()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var (id, _, _) = await ThrownAwayAsync(store, maker);
        store.Time.Now += Month / 2;
        await store.Workroom.BringBackAsync(maker, id);
        await store.Workroom.DeleteAsync(maker, id);
        store.Time.Now += Month / 2;
        Assert.Equal(0, await store.Sweeping.SweepAsync());
        Assert.True(await store.Workroom.BringBackAsync(maker, id));
        store.Time.Now += Month * 2;
        Assert.Equal(0, await store.Sweeping.SweepAsync());
        Assert.NotNull(await store.Workroom.OpenAsync(maker, id));
    }

    [Fact]
    public async Task What_was_issued_is_never_thrown_away_withdrawn_or_not()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker);
        await store.IssueAsync(maker, id);
        Assert.False(await store.Workroom.DeleteAsync(maker, id));
        await store.Workroom.WithdrawAsync(maker, id);
        Assert.False(await store.Workroom.DeleteAsync(maker, id));
        Assert.Empty(await store.Workroom.DeletedAsync(maker));
        Assert.Single(await store.Workroom.ListAsync(maker));
    }

    /// <summary>A pattern with a step that was undone, a photo and a preview, thrown away; the preview's secret, and all tables as they were before.</summary>
    private static async Task<(PatternId Id, string Secret, List<string> Before)> ThrownAwayAsync(TestStore store, MakerId maker)
    {
        var id = await store.PatternAsync(maker, First);
        await store.Workroom.SaveAsync(maker, id, new StepRequest("w", 1, 1, "Title", First with { Title = "Second" }));
        await store.Workroom.UndoAsync(maker, id, "w", 2, 2);
        await store.Photos.KeepAsync(maker, id, new PictureFile([1], 1, 1), new PictureFile([2], 1, 1));
        var secret = (await store.Previews.BeginAsync(maker, id))!;
        using var raw = store.Raw();
        var before = raw.Dump();
        Assert.True(await store.Workroom.DeleteAsync(maker, id));
        return (id, secret, before);
    }
}
