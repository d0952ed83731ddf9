using Xunit;

namespace PatternShop.Store.Tests;

public sealed class CopyCodeTests
{
    private static readonly PatternId Pattern = new("0123456789");

    [Fact]
    public void A_code_is_of_one_version_and_always_the_same()
    {
        var code = CopyCode.Of(Pattern, 1, "hash");
        Assert.Equal(code, CopyCode.Of(Pattern, 1, "hash"));
        Assert.Matches("^[0-9A-HJKMNP-TV-Z]{8}$", code.Value);
        Assert.Equal(4, new[] { code, CopyCode.Of(Pattern, 2, "hash"), CopyCode.Of(Pattern, 1, "other"), CopyCode.Of(new PatternId("1123456789"), 1, "hash") }.Distinct().Count());
    }

    [Theory]
    [InlineData("ABCD-1023", "ABCD1023")]
    [InlineData(" abcd 1o2l ", "ABCD1021")]
    [InlineData("abcdI0O1", "ABCD1001")]
    [InlineData("ABCD-102", null)]
    [InlineData("ABCD-10234", null)]
    [InlineData("ABCU-1023", null)]
    [InlineData("ABCD-102<", null)]
    [InlineData("", null)]
    [InlineData(null, null)]
    public void What_is_typed_is_read_kindly(string? typed, string? value)
    {
        Assert.Equal(value is not null, CopyCode.TryParse(typed, out var code));
        Assert.Equal(value, code?.Value);
    }

    [Fact]
    public async Task A_code_finds_its_version_and_the_newest_withdrawn_or_not()
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var id = await store.PatternAsync(anna);
        var code = CopyCode.Of(id, 1, "any");
        Assert.IsType<IssueResult.Issued>(await store.Workroom.IssueAsync(anna, id, await store.RequestAsync(anna, id) with { Code = code }));
        Assert.Equal(new FoundCopy(id, 1, 1, false), await store.Shelf.CopyAsync(code));
        await store.IssueAsync(anna, id);
        await store.Workroom.WithdrawAsync(anna, id);
        Assert.Equal(new FoundCopy(id, 1, 2, true), await store.Shelf.CopyAsync(code));
        Assert.Null(await store.Shelf.CopyAsync(CopyCode.Of(id, 9, "none")));
    }
}
