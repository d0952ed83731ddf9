using Microsoft.Data.Sqlite;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

public sealed class PhotoDeskTests
{
    private static readonly PictureFile Large = new([1, 2, 3], 1600, 1200);
    private static readonly PictureFile Small = new([4, 5], 400, 300);

    // SHA-256 of the bytes 01 02 03 and of 04 05, agreed by coreutils sha256sum
    private const string LargeHash = "039058c6f2c0cb492c533b0a4d14ef77cc0f78abccced5287d84a1a2011cfb81";
    private const string SmallHash = "2fa1b377bf67309f65e5e7bc9d924345ca648dec4e601a398a9cb497dcba3765";

    [Fact]
    public async Task A_photo_is_kept_under_the_hash_of_its_bytes_once()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        var kept = Assert.IsType<KeepResult.Kept>(await store.Photos.KeepAsync(anna, id, Large, Small)).Photo;
        Assert.Equal((LargeHash, 1600, 1200, SmallHash, 400, 300), (kept.Hash, kept.Width, kept.Height, kept.SmallHash, kept.SmallWidth, kept.SmallHeight));
        Assert.Equal(new KeepResult.Kept(kept), await store.Photos.KeepAsync(anna, id, Large, Small));
        Assert.Equal([kept], await store.Photos.ListAsync(anna, id));
        Assert.Equal(Large.Bytes, await store.Photos.FindAsync(anna, id, kept.Hash));
        Assert.Equal(Small.Bytes, await store.Photos.FindAsync(anna, id, kept.SmallHash));
        Assert.Null(await store.Photos.FindAsync(anna, id, new string('0', 64)));
    }

    [Fact]
    public async Task To_another_maker_no_photo_exists()
    {
        await using var store = await TestStore.OpenAsync();
        var (anna, ben) = (await store.MakerAsync(), await store.MakerAsync("ben"));
        var (id, bens) = (await store.PatternAsync(anna), await store.PatternAsync(ben));
        await store.Photos.KeepAsync(anna, id, Large, Small);
        using var raw = store.Raw();
        var before = raw.Dump();
        foreach (var stranger in new[] { ben, TestStore.Nobody, default })
        {
            Assert.IsType<KeepResult.Missing>(await store.Photos.KeepAsync(stranger, id, new PictureFile([9], 1, 1), Small));
            Assert.Null(await store.Photos.ListAsync(stranger, id));
            Assert.Null(await store.Photos.FindAsync(stranger, id, LargeHash));
        }

        Assert.Null(await store.Photos.FindAsync(ben, bens, LargeHash));
        Assert.Null(await store.Photos.FindAsync(anna, bens, LargeHash));
        Assert.Equal(before, raw.Dump());
    }

    [Fact]
    public async Task Readers_see_a_photo_when_a_visible_version_names_it_and_never_before()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        await store.IssueAsync(anna, id);
        await NameAsync(store, anna, id, 1, LargeHash);
        var card = Assert.IsType<KeepResult.Kept>(await store.Photos.KeepAsync(anna, id, Large, Small)).Photo;
        Assert.Null(await store.Shelf.FileAsync(LargeHash));
        await store.IssueAsync(anna, id);
        Assert.Equal([card], (await store.Shelf.VersionAsync(id, 2))!.Photos);
        Assert.Empty((await store.Shelf.VersionAsync(id, 1))!.Photos);
        Assert.Equal(["a4", "letter"], (await store.Shelf.VersionAsync(id, 2))!.Files.Select(file => file.Edition));
        Assert.Equal(Large.Bytes, (await store.Shelf.FileAsync(LargeHash))!.Bytes);
        Assert.Equal("image/jpeg", (await store.Shelf.FileAsync(card.SmallHash))!.MediaType);
        await store.Workroom.WithdrawAsync(anna, id);
        Assert.Null(await store.Shelf.FileAsync(LargeHash));
        Assert.Null(await store.Shelf.FileAsync(card.SmallHash));
        await store.Workroom.RestoreAsync(anna, id);
        Assert.NotNull(await store.Shelf.FileAsync(LargeHash));
    }

    [Fact]
    public async Task A_version_that_names_a_photo_that_is_not_kept_is_refused()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        await NameAsync(store, anna, id, 1, LargeHash);
        var refused = Assert.IsType<IssueResult.Refused>(await store.Workroom.IssueAsync(anna, id, await store.RequestAsync(anna, id)));
        Assert.Equal("The photo “The sample” is not kept here.", Assert.Single(refused.Problems).What);
        Assert.Null(await store.Shelf.FindAsync(id));
    }

    [Fact]
    public async Task A_duplicate_keeps_the_photos_that_its_document_names_and_can_be_issued()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        var card = Assert.IsType<KeepResult.Kept>(await store.Photos.KeepAsync(anna, id, Large, Small)).Photo;
        await store.Photos.KeepAsync(anna, id, new PictureFile([9], 1, 1), Small);
        await NameAsync(store, anna, id, 1, LargeHash);
        var copy = (await store.Workroom.DuplicateAsync(anna, id, title => "Again: " + title))!.Value;
        var (first, second) = ((await store.Workroom.OpenAsync(anna, id))!, (await store.Workroom.OpenAsync(anna, copy))!);
        Assert.Equal(first.Document with { Title = "Again: " + first.Document.Title }, second.Document);
        Assert.Equal([card], await store.Photos.ListAsync(anna, copy));
        await store.Workroom.DeleteAsync(anna, id);
        Assert.Equal(Large.Bytes, await store.Photos.FindAsync(anna, copy, LargeHash));
        await store.IssueAsync(anna, copy);
        Assert.Equal([card], (await store.Shelf.VersionAsync(copy, 1))!.Photos);
    }

    [Fact]
    public async Task A_pattern_that_comes_back_as_a_file_gets_the_photos_that_its_maker_still_has_and_nobody_elses()
    {
        await using var store = await TestStore.OpenAsync();
        var (anna, ben) = (await store.MakerAsync(), await store.MakerAsync("ben"));
        var (id, bens) = (await store.PatternAsync(anna), await store.PatternAsync(ben));
        var card = Assert.IsType<KeepResult.Kept>(await store.Photos.KeepAsync(anna, id, Large, Small)).Photo;
        var other = Assert.IsType<KeepResult.Kept>(await store.Photos.KeepAsync(ben, bens, new PictureFile([9], 1, 1), Small)).Photo;
        var document = Charts.Document("x.") with { Photos = [new Photo(card.Hash, "The sample", null), new Photo(other.Hash, "Not hers", null)] };
        await store.Workroom.DeleteAsync(anna, id);
        Assert.Equal([card], await store.Photos.ListAsync(anna, await store.PatternAsync(anna, document)));
        Assert.Equal([other], await store.Photos.ListAsync(ben, await store.PatternAsync(ben, document)));
    }

    [Fact]
    public async Task A_preview_shows_what_the_document_names_and_nothing_else()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        var card = Assert.IsType<KeepResult.Kept>(await store.Photos.KeepAsync(anna, id, Large, Small)).Photo;
        var secret = (await store.Previews.BeginAsync(anna, id))!;
        Assert.Empty(await store.Photos.PreviewedAsync(secret));
        Assert.Null(await store.Photos.PreviewedAsync(secret, LargeHash));
        await NameAsync(store, anna, id, 1, LargeHash);
        Assert.Equal([card], await store.Photos.PreviewedAsync(secret));
        Assert.Equal(Large.Bytes, await store.Photos.PreviewedAsync(secret, LargeHash));
        Assert.Equal(Small.Bytes, await store.Photos.PreviewedAsync(secret, card.SmallHash));
        Assert.Null(await store.Photos.PreviewedAsync("another", LargeHash));
        await store.Previews.EndAsync(anna, id);
        Assert.Null(await store.Photos.PreviewedAsync(secret, LargeHash));
        Assert.Empty(await store.Photos.PreviewedAsync(secret));
    }

    [Fact]
    public async Task Photos_of_a_pattern_are_bounded_and_go_with_a_pattern_that_was_never_issued()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        for (var i = 0; i < PhotoDesk.Most; i++)
        {
            Assert.IsType<KeepResult.Kept>(await store.Photos.KeepAsync(anna, id, new PictureFile([1, (byte)i], 1, 1), Small));
        }

        Assert.Equal(new KeepResult.Full(PhotoDesk.Most), await store.Photos.KeepAsync(anna, id, Large, Small));
        Assert.True(await store.Workroom.DeleteAsync(anna, id));
        store.Time.Now += Deleted.Kept;
        Assert.Equal(1, await store.Sweeping.SweepAsync());
        using var raw = store.Raw();
        Assert.Equal(0L, raw.Sql("SELECT count(*) FROM Photos"));
    }

    [Fact]
    public async Task A_photo_never_changes_and_stays_once_something_was_issued_whoever_writes_to_the_file()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        await store.Photos.KeepAsync(anna, id, Large, Small);
        await store.IssueAsync(anna, id);
        using var raw = store.Raw();
        var before = raw.Dump("Photos");
        var columns = raw.Columns("Photos");
        string[] attacks =
        [
            .. from way in new[] { "", "OR REPLACE ", "OR IGNORE " } from column in columns select $"UPDATE {way}Photos SET {column} = {column} || '7'",
            "UPDATE Photos SET rowid = rowid + 1000",
            "DELETE FROM Photos",
            $"INSERT OR REPLACE INTO Photos SELECT {string.Join(", ", columns.Select(column => column == "Large" ? "x'00'" : column))} FROM Photos",
            $"INSERT OR REPLACE INTO Photos (rowid, {string.Join(", ", columns)}) SELECT rowid, {string.Join(", ", columns.Select(column => column == "Hash" ? "'other'" : column))} FROM Photos",
            "INSERT INTO Photos SELECT * FROM Photos WHERE true ON CONFLICT (PatternId, Hash) DO UPDATE SET Width = 7",
        ];
        Assert.All(attacks, attack =>
        {
            Assert.Contains("A photo never changes, and stays", Assert.Throws<SqliteException>(() => raw.Sql(attack)).Message, StringComparison.Ordinal);
            Assert.Equal(before, raw.Dump("Photos"));
        });
        raw.Texts("SELECT name FROM sqlite_schema WHERE type = 'trigger'").ForEach(trigger => raw.Sql("DROP TRIGGER " + trigger));
        Assert.All(attacks, attack =>
        {
            raw.Sql("SAVEPOINT attack");
            raw.Sql(attack);
            Assert.NotEqual(before, raw.Dump("Photos"));
            raw.Sql("ROLLBACK TO attack");
        });
    }

    private static async Task NameAsync(TestStore store, MakerId maker, PatternId id, long sequence, string hash)
    {
        var open = (await store.Workroom.OpenAsync(maker, id))!;
        Assert.IsType<SaveResult.Saved>(await store.Workroom.SaveAsync(
            maker, id, new StepRequest("w", sequence, open.Revision, "change the photos", open.Document with { Photos = [new Photo(hash, "The sample", null)] })));
    }
}
