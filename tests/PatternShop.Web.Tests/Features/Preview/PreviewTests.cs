using System.Net;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class PreviewTests
{
    [Fact]
    public async Task A_preview_shows_the_pattern_as_not_issued_to_who_has_the_address_until_it_is_ended()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        using var reader = shop.Visit();
        var id = await shop.PatternAsync(Hostile.Document);
        var studio = $"/studio/patterns/{id}/preview";
        var page = await maker.FillAsync(studio, studio);
        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Contains("no-store", page.Headers["Cache-Control"], StringComparison.Ordinal);
        Assert.NotNull(page.Html.QuerySelector(".qr svg"));
        var address = new Uri(page.Html.QuerySelector(".address a")!.GetAttribute("href")!).AbsolutePath;

        var preview = await reader.GetAsync(address);
        Assert.Equal((HttpStatusCode.OK, Hostile.Title), (preview.Status, preview.Heading));
        Assert.Contains("not issued", preview.Words, StringComparison.Ordinal);
        Assert.Equal(("no-store", "noindex"), (preview.Headers["Cache-Control"], preview.Headers["X-Robots-Tag"]));
        Assert.NotNull(preview.Html.QuerySelector("meta[name=robots][content=noindex]"));
        Assert.Empty(preview.Html.QuerySelectorAll("script, form, iframe, img[onerror]"));
        Assert.DoesNotContain("Set-Cookie", preview.Headers.Keys, StringComparer.OrdinalIgnoreCase);
        foreach (var link in preview.Html.QuerySelectorAll("ul.files a"))
        {
            var file = await reader.GetAsync(link.GetAttribute("href")!);
            Assert.Equal((HttpStatusCode.OK, "no-store"), (file.Status, file.Headers["Cache-Control"]));
        }

        Assert.Null((await maker.GetAsync(studio)).Html.QuerySelector(".qr"));
        await maker.FillAsync(studio, studio + "/end");
        Assert.Equal(HttpStatusCode.NotFound, (await reader.GetAsync(address)).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await reader.GetAsync(address + "/chart.svg")).Status);
        maker.Dispose();
    }

    [Fact]
    public async Task One_weaves_along_with_a_preview_its_address_leaks_nowhere_and_it_ends_with_it()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        using var reader = shop.Visit();
        var id = await shop.PatternAsync(Charts.Document(Charts.TenEndDiamond));
        var studio = $"/studio/patterns/{id}/preview";
        var secret = (await TestShop.PreviewAsync(maker, id)).Split('/')[^1];
        var page = await reader.GetAsync($"/preview/{secret}");
        var address = page.Html.QuerySelector("a.along")!.GetAttribute("href")!;
        Assert.Equal($"/preview/{secret}/weave", address);
        var along = await reader.GetAsync(address);
        Assert.Equal((HttpStatusCode.OK, 10), (along.Status, along.Html.QuerySelectorAll("ul.rows li").Length));
        Assert.Contains("A preview, not issued", along.Words, StringComparison.Ordinal);
        var data = along.Html.QuerySelector("script#piece")!.TextContent;
        Assert.Contains($"\"pattern\":\"preview-{id}\",\"version\":0,", data, StringComparison.Ordinal);
        Assert.DoesNotContain(secret, data, StringComparison.Ordinal);
        Assert.Empty(along.Html.QuerySelectorAll("a[href*=report], #moving"));
        foreach (var answer in new[] { page, along, await reader.GetAsync($"/preview/{secret}/chart.svg") })
        {
            Assert.Equal(("no-referrer", "no-store", "noindex"), (answer.Headers["Referrer-Policy"], answer.Headers["Cache-Control"], answer.Headers["X-Robots-Tag"]));
            Assert.DoesNotContain("Set-Cookie", answer.Headers.Keys, StringComparer.OrdinalIgnoreCase);
        }

        await maker.FillAsync(studio, studio + "/end");
        Assert.Equal((HttpStatusCode.NotFound, "There is no such preview"), ((await reader.GetAsync(address)).Status, (await reader.GetAsync(address)).Heading));
        maker.Dispose();
    }

    [Fact]
    public async Task A_new_preview_ends_the_old_one_and_changes_are_seen_at_once()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Charts.Document(Charts.TenEndDiamond));
        var first = await TestShop.PreviewAsync(maker, id);
        await shop.Workroom.SaveAsync((await shop.MakerAsync()).Id, id, new Store.StepRequest("test", 1, 1, "Change", Charts.Document(Charts.TenEndDiamond) with { Title = "Later" }), TestContext.Current.CancellationToken);
        Assert.Equal("Later", (await maker.GetAsync(first)).Heading);
        Assert.NotEqual(first, await TestShop.PreviewAsync(maker, id));
        Assert.Equal(HttpStatusCode.NotFound, (await maker.GetAsync(first)).Status);
        maker.Dispose();
    }
}
