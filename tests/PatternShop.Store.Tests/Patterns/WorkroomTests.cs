using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Store.Tests;

public sealed class WorkroomTests
{
    [Fact]
    public async Task A_pattern_is_made_changed_and_opened_again()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var first = Charts.Document("xx../..xx");
        var id = await store.PatternAsync(maker, first);
        var second = first with { Title = "Second" };
        var saved = Assert.IsType<SaveResult.Saved>(await store.Workroom.SaveAsync(maker, id, new StepRequest("w", 1, 1, "Title", second)));
        Assert.Equal(new PatternState(2, second, "Title", null), saved.Now);
        Assert.Equal(new PatternState(2, second, "Title", null), (await store.Workroom.OpenAsync(maker, id))!.Now);
        var undone = Assert.IsType<SaveResult.Saved>(await store.Workroom.UndoAsync(maker, id, "w", 2, 2));
        Assert.Equal(new PatternState(3, first, null, "Title"), undone.Now);
        var redone = Assert.IsType<SaveResult.Saved>(await store.Workroom.RedoAsync(maker, id, "w", 3, 3));
        Assert.Equal(new PatternState(4, second, "Title", null), redone.Now);
        var request = await store.IssueAsync(maker, id);
        var card = Assert.Single(await store.Workroom.ListAsync(maker));
        Assert.Equal(new PatternCard(id, "Second", store.Time.Now, 4, 1, request.Date, false, Standing.Published), card);
        Assert.Single(await store.Shelf.ListAsync());
        Assert.Equal(2, (await store.Shelf.VersionAsync(id, 1))!.Files.Count);
        Assert.Equal(request.Files[0].Bytes, (await store.Shelf.FileAsync(Weave.PatternWriter.Hash(request.Files[0].Bytes)))!.Bytes);
        Assert.Single((await store.Shelf.FindAsync(id))!.Versions);
    }
}
