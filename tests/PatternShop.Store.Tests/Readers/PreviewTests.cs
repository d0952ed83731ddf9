using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

public sealed class PreviewTests
{
    [Fact]
    public async Task A_secret_of_128_bits_or_more_shows_the_pattern_as_it_stands_until_the_maker_ends_it()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna, Charts.Document("x."));
        var secret = (await store.Previews.BeginAsync(anna, id))!;
        // 26 signs of an alphabet of 32
        Assert.True(secret.Length * 5 >= 128);
        Assert.Equal("Studio anna", (await store.Previews.FindAsync(secret))!.StudioName);
        await store.Workroom.SaveAsync(anna, id, new StepRequest("w", 1, 1, "Step", Charts.Document("x.") with { Title = "Later" }));
        Assert.Equal("Later", (await store.Previews.FindAsync(secret))!.Document.Title);
        Assert.Equal(store.Time.GetUtcNow(), await store.Previews.BeganAsync(anna, id));
        Assert.True(await store.Previews.EndAsync(anna, id));
        Assert.Null(await store.Previews.FindAsync(secret));
        Assert.False(await store.Previews.EndAsync(anna, id));
    }

    [Fact]
    public async Task A_new_preview_ends_the_one_before_and_the_secret_is_kept_nowhere()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        var (first, second) = ((await store.Previews.BeginAsync(anna, id))!, (await store.Previews.BeginAsync(anna, id))!);
        Assert.NotEqual(first, second);
        Assert.Null(await store.Previews.FindAsync(first));
        Assert.Equal(id, (await store.Previews.FindAsync(second))!.Id);
        using var raw = store.Raw();
        Assert.DoesNotContain(second, string.Join('\n', raw.Dump()), StringComparison.Ordinal);
        Assert.Null(await store.Previews.FindAsync((string)raw.Sql("SELECT SecretHash FROM Previews")!));
    }

    [Fact]
    public async Task Another_maker_begins_ends_and_learns_nothing()
    {
        await using var store = await TestStore.OpenAsync();
        var (anna, ben) = (await store.MakerAsync(), await store.MakerAsync("ben"));
        var id = await store.PatternAsync(anna);
        await store.Previews.BeginAsync(anna, id);
        using var raw = store.Raw();
        var before = raw.Dump();
        Assert.Null(await store.Previews.BeginAsync(ben, id));
        Assert.False(await store.Previews.EndAsync(ben, id));
        Assert.Null(await store.Previews.BeganAsync(ben, id));
        Assert.Equal(before, raw.Dump());
    }

    [Fact]
    public async Task A_pattern_that_is_thrown_away_takes_its_preview_along()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        var secret = (await store.Previews.BeginAsync(anna, id))!;
        Assert.True(await store.Workroom.DeleteAsync(anna, id));
        Assert.Null(await store.Previews.FindAsync(secret));
    }
}
