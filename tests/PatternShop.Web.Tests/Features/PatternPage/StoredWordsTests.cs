using System.Net;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>A pattern whose title is refused today, and was not always: its pages open as before.</summary>
public sealed class StoredWordsTests
{
    private const string Turned = "Harbour \u202Esthgil";

    [Fact]
    public async Task Its_public_page_its_bench_and_its_kept_file_open()
    {
        await using var shop = await IssuedShop.OpenAsync(Charts.Document(Charts.TenEndDiamond, repeats: 2) with { Title = Turned });
        var page = await shop.Reader.GetAsync(shop.Page);
        Assert.Equal((HttpStatusCode.OK, Turned), (page.Status, page.Html.QuerySelector("h1")!.TextContent.Trim()));
        Assert.Equal(HttpStatusCode.OK, (await shop.Reader.GetAsync(shop.Page + "/weave")).Status);
        Assert.Equal(HttpStatusCode.OK, (await shop.Maker.GetAsync($"/studio/patterns/{shop.Id}")).Status);
        Assert.Equal(HttpStatusCode.OK, (await shop.Maker.GetAsync($"/studio/patterns/{shop.Id}/document.json")).Status);
    }
}
