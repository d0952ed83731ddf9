using System.Text;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>Whether readers have what the maker has is told by what the documents say, not by the way there or the format in which they lie.</summary>
public sealed class StandingTests
{
    // one cloth, as programs wrote it when format 2 and format 1 were new; members in the order of canonical bytes
    private const string Second =
        """
        {"format":2,"gauge":{"rows":{"amount":"5","unit":"in"},"sett":{"amount":"4","unit":"in"}},"glyphs":"cells","language":"en","licence":"","motif":["x."],"notes":"","rows":{"firstPlain":"under","steps":[{"first":1,"last":1,"step":"chart","weft":1}],"wefts":[{"start":"left"}]},"title":"Test cloth","width":{"balance":0,"floating":null,"offset":0,"repeats":1}}
        """;

    private const string FirstFormat =
        """
        {"format":1,"gauge":{"rows":{"amount":"5","unit":"in"},"sett":{"amount":"4","unit":"in"}},"glyphs":"cells","language":"en","licence":"","motif":["x."],"notes":"","rows":{"firstPlain":"under","start":"left","steps":[{"first":1,"last":1,"step":"chart","weft":1}]},"title":"Test cloth","width":{"balance":0,"floating":null,"offset":0,"repeats":1}}
        """;

    private static readonly PatternDocument Cloth = Charts.Document("x.");

    [Fact]
    public async Task The_old_bytes_say_the_same_as_the_document()
    {
        foreach (var bytes in new[] { Second, FirstFormat })
        {
            Assert.Equal(Cloth, Assert.IsType<ReadResult.Read>(PatternReader.Read(Encoding.UTF8.GetBytes(bytes))).Document);
        }

        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        await store.PatternAsync(maker, Cloth);
        Assert.Equal(Standing.Unpublished, await StandingAsync(store, maker));
    }

    [Fact]
    public async Task Edited_and_undone_or_edited_back_is_published()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, Cloth);
        await store.IssueAsync(maker, id);
        Assert.Equal(Standing.Published, await StandingAsync(store, maker));
        await store.Workroom.SaveAsync(maker, id, new StepRequest("w", 1, 1, "Title", Cloth with { Title = "Other" }));
        Assert.Equal(Standing.CorrectionWaiting, await StandingAsync(store, maker));
        await store.Workroom.UndoAsync(maker, id, "w", 2, 2);
        Assert.Equal(Standing.Published, await StandingAsync(store, maker));
        await store.Workroom.RedoAsync(maker, id, "w", 3, 3);
        Assert.Equal(Standing.CorrectionWaiting, await StandingAsync(store, maker));
        await store.Workroom.SaveAsync(maker, id, new StepRequest("w", 4, 4, "Title", Cloth));
        Assert.Equal(Standing.Published, await StandingAsync(store, maker));
        await store.Workroom.WithdrawAsync(maker, id);
        Assert.Equal(Standing.Published, await StandingAsync(store, maker));
    }

    [Theory]
    [InlineData(Second, 2)]
    [InlineData(FirstFormat, 1)]
    public async Task What_was_issued_in_an_older_format_edited_and_undone_is_published(string bytes, int format)
    {
        await using var store = await TestStore.OpenAsync();
        var (maker, id) = await OldAsync(store, bytes, format);
        Assert.Equal(Standing.Published, await StandingAsync(store, maker));
        await store.Workroom.SaveAsync(maker, id, new StepRequest("w", 1, 1, "Title", Cloth with { Title = "Other" }));
        Assert.Equal(Standing.CorrectionWaiting, await StandingAsync(store, maker));
        await store.Workroom.UndoAsync(maker, id, "w", 2, 2);
        Assert.Equal(Standing.Published, await StandingAsync(store, maker));
        await store.Workroom.RedoAsync(maker, id, "w", 3, 3);
        await store.Workroom.SaveAsync(maker, id, new StepRequest("w", 4, 4, "Title", Cloth));
        Assert.Equal(Standing.Published, await StandingAsync(store, maker));
    }

    [Fact]
    public async Task A_row_that_an_older_program_left_after_an_undo_is_judged_by_what_it_says()
    {
        await using var store = await TestStore.OpenAsync();
        var (maker, id) = await OldAsync(store, Second, 2);
        using var raw = store.Raw();
        // issued again by a program of the present format, then undone by one that kept the hash of the stored bytes
        await store.Workroom.SaveAsync(maker, id, new StepRequest("w", 1, 1, "Title", Cloth with { Title = "Other" }));
        await store.IssueAsync(maker, id);
        Assert.Equal(Standing.Published, await StandingAsync(store, maker));
        await store.Workroom.SaveAsync(maker, id, new StepRequest("w", 2, 2, "Title", Cloth));
        await store.IssueAsync(maker, id);
        raw.Sql($"UPDATE Patterns SET Cursor = 0, Format = 0, Hash = '{PatternWriter.Hash(Encoding.UTF8.GetBytes(Second))}'");
        Assert.Equal(Standing.Published, await StandingAsync(store, maker));
        raw.Sql("UPDATE Patterns SET Cursor = 1");
        Assert.Equal(Standing.CorrectionWaiting, await StandingAsync(store, maker));
    }

    /// <summary>A pattern as an older program made and issued it.</summary>
    private static async Task<(MakerId Maker, PatternId Id)> OldAsync(TestStore store, string bytes, int format)
    {
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, Cloth);
        var canonical = Encoding.UTF8.GetBytes(bytes);
        using var raw = store.Raw();
        raw.Sql($"UPDATE Steps SET Content = x'{Convert.ToHexString(DocumentContent.Pack(canonical))}'");
        raw.Sql($"UPDATE Patterns SET Format = 0, Hash = '{PatternWriter.Hash(canonical)}'");
        await using var context = store.File.Context();
        context.Versions.Add(new VersionRow
        {
            PatternId = id.Value,
            Number = 1,
            Date = new DateOnly(2026, 2, 1),
            Note = "",
            Title = Cloth.Title,
            Format = format,
            Hash = PatternWriter.Hash(canonical),
            Canonical = canonical,
            Files = 0,
            IssuedAt = store.Time.Now,
            Kind = VersionKind.Edition,
            Code = null,
            Mends = "",
        });
        await context.SaveChangesAsync();
        return (maker, id);
    }

    /// <summary>The same on the list and when it is opened.</summary>
    private static async Task<Standing> StandingAsync(TestStore store, MakerId maker)
    {
        var card = Assert.Single(await store.Workroom.ListAsync(maker));
        var open = (await store.Workroom.OpenAsync(maker, card.Id))!;
        Assert.Equal(open.Standing, card.Standing);
        Assert.Equal((open.HasUnissuedChanges, open.HasUnissuedChanges), (card.HasUnissuedChanges, card.Standing != Standing.Published));
        return card.Standing;
    }
}
