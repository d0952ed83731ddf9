using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

public sealed class PublicShelfTests
{
    private static readonly PatternDocument First = Charts.Document("xx../..xx");

    [Fact]
    public async Task Nothing_is_seen_before_it_is_issued_nor_after_it_is_withdrawn()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, First);
        Assert.False(await store.Workroom.WithdrawAsync(maker, id));
        Assert.Null(await store.Shelf.FindAsync(id));
        Assert.Empty(await store.Shelf.ListAsync());
        var one = await store.IssueAsync(maker, id);
        Assert.Equal(2, await SeenAsync(store, id, one));
        Assert.True(await store.Workroom.WithdrawAsync(maker, id));
        Assert.Equal(0, await SeenAsync(store, id, one));
        var gone = (await store.Shelf.FindAsync(id))!;
        Assert.True(gone.Withdrawn);
        Assert.Empty(gone.Versions);
        Assert.True(Assert.Single(await store.Workroom.ListAsync(maker)).Withdrawn);
        var two = await store.IssueAsync(maker, id);
        Assert.Equal(0, await SeenAsync(store, id, two));
        Assert.True(await store.Workroom.RestoreAsync(maker, id));
        Assert.Equal(2, await SeenAsync(store, id, one));
        Assert.Equal([2, 1], (await store.Shelf.FindAsync(id))!.Versions.Select(version => version.Number));
    }

    [Fact]
    public async Task The_shop_front_shows_the_newest_version_and_not_what_the_maker_is_changing()
    {
        await using var store = await TestStore.OpenAsync();
        var (anna, ben) = (await store.MakerAsync(), await store.MakerAsync("ben"));
        var id = await store.PatternAsync(anna, First);
        await store.IssueAsync(anna, id);
        var step = new StepRequest("w", 1, 1, "Step", First with { Title = "Mended" });
        await store.Workroom.SaveAsync(anna, id, step);
        store.Time.Now += TimeSpan.FromMinutes(1);
        var bens = await store.PatternAsync(ben, First with { Title = "Of Ben" });
        var his = await store.IssueAsync(ben, bens);
        Assert.Equal(["Of Ben", "Test cloth"], (await store.Shelf.ListAsync()).Select(card => card.Title));
        store.Time.Now += TimeSpan.FromMinutes(1);
        var mended = await store.IssueAsync(anna, id);
        await store.Workroom.SaveAsync(anna, id, step with { Sequence = 2, BaseRevision = 2, Document = First with { Title = "Secret" } });
        var cards = await store.Shelf.ListAsync();
        Assert.Equal([(id, "Mended", "Studio anna", "anna", 2, mended.Date), (bens, "Of Ben", "Studio ben", "ben", 1, his.Date)],
            cards.Select(card => (card.Id, card.Title, card.StudioName, card.Handle, card.Number, card.Date)));
        Assert.Equal(mended.Canonical, cards[0].Canonical);
        var page = (await store.Shelf.FindAsync(id))!;
        Assert.Equal(("Mended", "Studio anna", false), (page.Title, page.StudioName, page.Withdrawn));
        Assert.Equal([new ShelfVersion(2, mended.Date, "Note 2", mended.Hash), new ShelfVersion(1, new DateOnly(2026, 2, 1), "Note 1", TestStore.Request(1, 1, First).Hash)], page.Versions);
    }

    [Fact]
    public async Task A_file_is_given_while_any_visible_version_holds_it()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var one = await store.PatternAsync(maker, First);
        var two = await store.PatternAsync(maker, First);
        var request = await store.IssueAsync(maker, one);
        store.Time.Now += TimeSpan.FromMinutes(1);
        await store.Workroom.IssueAsync(maker, two, request with { Code = null, Files = [request.Files[0] with { Name = "other.pdf", MediaType = "application/x-other" }] });
        var hash = PatternWriter.Hash(request.Files[0].Bytes);
        await GivenAsync(store, hash, new ShelfFile("other.pdf", "application/x-other", request.Files[0].Bytes));
        await store.Workroom.WithdrawAsync(maker, two);
        await GivenAsync(store, hash, new ShelfFile("cloth-1-a4.pdf", "application/pdf", request.Files[0].Bytes));
        await store.Workroom.WithdrawAsync(maker, one);
        Assert.Null(await store.Shelf.FileAsync(hash));
        Assert.Null(await store.Shelf.FileAsync(hash.ToUpperInvariant()));
        Assert.Null(await store.Shelf.FileAsync(""));
    }

    private static async Task GivenAsync(TestStore store, string hash, ShelfFile expected)
    {
        var file = (await store.Shelf.FileAsync(hash))!;
        Assert.Equal((expected.Name, expected.MediaType), (file.Name, file.MediaType));
        Assert.Equal(expected.Bytes, file.Bytes);
    }

    /// <summary>How many files of a version are to be had; the version, its pattern and the shop front must agree.</summary>
    private static async Task<int> SeenAsync(TestStore store, PatternId id, IssueRequest request)
    {
        var version = await store.Shelf.VersionAsync(id, request.Number);
        var visible = version is not null;
        Assert.Equal(visible, (await store.Shelf.ListAsync()).Any(card => card.Id == id));
        Assert.Equal(visible, !(await store.Shelf.FindAsync(id))!.Withdrawn);
        Assert.Null(await store.Shelf.VersionAsync(id, request.Number + 7));
        var files = 0;
        foreach (var file in request.Files)
        {
            files += await store.Shelf.FileAsync(PatternWriter.Hash(file.Bytes)) is null ? 0 : 1;
        }

        return files;
    }
}
