using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>Words that are refused today and were not always: whoever has such a pattern is never locked out of it.</summary>
public sealed class StoredWordsTests
{
    [Fact]
    public async Task A_pattern_with_a_title_that_is_refused_today_opens_is_saved_and_issued()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var document = Charts.Document(Charts.TenEndDiamond, repeats: 2) with { Title = "Harbour \u202Esthgil" };
        Assert.IsType<ReadResult.Refused>(PatternReader.Read(PatternWriter.CanonicalBytes(document)));
        var id = await store.PatternAsync(maker, document);
        Assert.Equal(document, (await store.Workroom.OpenAsync(maker, id))!.Now.Document);
        var changed = document with { Notes = "More" };
        Assert.IsType<SaveResult.Saved>(await store.Workroom.SaveAsync(maker, id, new StepRequest("window", 1, 1, "Notes", changed)));
        await store.IssueAsync(maker, id);
        Assert.Equal(changed, await store.Workroom.IssuedAsync(maker, id, 1));
        Assert.Equal(changed.Title, (await store.Shelf.FindAsync(id))!.Title);
    }
}
