using System.Net;
using System.Text.Json;
using AngleSharp.Html.Dom;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class WeavePageTests(WebServer server)
{
    private static readonly PatternDocument Cloth = Charts.Document(Charts.TenEndDiamond, 2, balance: 1, floating: Charts.AlikeOver) with { Title = "Lights </script><b>" };

    public static TheoryData<string> Names => [.. SamplePages.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_page_keeps_the_rules_and_lists_every_row_number_once(string name)
    {
        var answer = await server.Get($"/samples/{name}/weave");
        Assert.Equal((200, SecurityHeaders.StrictPolicy, ""), (answer.Status, answer.Header("Content-Security-Policy"), answer.Header("Set-Cookie")));
        var page = answer.Page();
        Assert.Empty(PageRules.Faults(page));
        var numbers = page.QuerySelectorAll("ul.rows b, ul.rows span").Select(number => number.TextContent.Replace("Row ", "", StringComparison.Ordinal));
        var rows = Oracle.Rows(((ReadResult.Read)PatternReader.Read(File.ReadAllBytes(SamplePages.File(name)))).Document);
        Assert.Equal(rows.Select(row => Wording.English.Number(row.Number)).Order(StringComparer.Ordinal), numbers.Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Every_number_in_the_list_stands_at_its_own_directions(string name)
    {
        var page = (await server.Get($"/samples/{name}/weave")).Page();
        var rows = Oracle.Rows(((ReadResult.Read)PatternReader.Read(File.ReadAllBytes(SamplePages.File(name)))).Document);
        foreach (var item in page.QuerySelectorAll("ul.rows li"))
        {
            foreach (var number in item.QuerySelectorAll("b, span").Select(number => int.Parse(number.TextContent.Replace("Row ", "", StringComparison.Ordinal).Replace(",", "", StringComparison.Ordinal), System.Globalization.CultureInfo.InvariantCulture)))
            {
                var row = rows[number - 1];
                Assert.Contains(row.From == Side.Left ? "from the left →" : "← from the right", item.QuerySelector("i")!.TextContent, StringComparison.Ordinal);
                Assert.Equal(WrittenRuns.Strokes(row.Runs), WrittenRuns.Strokes(item.QuerySelector("p")!.TextContent));
            }
        }
    }

    // what separates the numbers is text, so that it is copied, read aloud and shown without the style sheet
    [Theory]
    [MemberData(nameof(Names))]
    public async Task The_numbers_of_a_row_are_told_apart_in_the_text_itself(string name)
    {
        var page = (await server.Get($"/samples/{name}/weave")).Page();
        foreach (var item in page.QuerySelectorAll("ul.rows li"))
        {
            var line = string.Concat(item.ChildNodes.TakeWhile(node => node.NodeName != "I").Select(node => node.TextContent));
            Assert.Matches("^Row [0-9,]+( · [0-9,]+)* $", line);
            Assert.Equal(item.QuerySelectorAll("b, span").Length, line.Split(" · ").Length);
        }
    }

    [Fact]
    public async Task The_data_names_the_weft_of_every_row_where_there_are_several()
    {
        var two = Cloth with
        {
            Rows = Cloth.Rows with
            {
                Wefts = [new Weft(Side.Left), new Weft(Side.Right)],
                Steps = [new Repeat(4, [new ChartRows(1, 1, 1), new ChartRows(2, 3, 2)]), new PlainRows(2, 2)],
            },
        };
        // three rows again and again are printed twice
        await using var shop = await IssuedShop.OpenAsync(two);
        var data = Data(await shop.Reader.GetAsync(shop.Page + "/weave"));
        var names = data.GetProperty("wefts").EnumerateArray().Select(weft => weft.GetString()).ToList();
        Assert.Equal(["weft 1", "weft 2"], names);
        Assert.Equal(
            [["weft 1", "weft 2", "weft 2", "weft 1", "weft 2", "weft 2"], ["weft 2", "weft 2"]],
            data.GetProperty("bands").EnumerateArray().Select(band => band.GetProperty("wefts").EnumerateArray().Select(weft => names[weft.GetInt32()]!).ToArray()));
        Assert.DoesNotContain(data.GetProperty("notes").EnumerateArray(), note => note.GetString()!.Contains("weft", StringComparison.Ordinal));

        await shop.ReissueAsync(Cloth, "");
        var single = Data(await shop.Reader.GetAsync(shop.Page + "/weave"));
        Assert.False(single.TryGetProperty("wefts", out _) || single.GetProperty("bands").EnumerateArray().Any(band => band.TryGetProperty("wefts", out _)));
    }

    [Fact]
    public async Task The_pages_of_patterns_and_samples_lead_to_it()
    {
        Assert.Equal("/samples/kestrel/weave", (await server.Get("/samples/kestrel")).Page().QuerySelector("a.along")!.GetAttribute("href"));
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        Assert.Equal(shop.Page + "/weave", (await shop.Reader.GetAsync(shop.Page)).Html.QuerySelector("a.along")!.GetAttribute("href"));
        await shop.ReissueAsync(Cloth with { Notes = "More." }, "");
        Assert.Equal(shop.Page + "/v/1/weave", (await shop.Reader.GetAsync(shop.Page + "/v/1")).Html.QuerySelector("a.along")!.GetAttribute("href"));
        Assert.Equal(shop.Page + "/weave", (await shop.Reader.GetAsync(shop.Page)).Html.QuerySelector("a.along")!.GetAttribute("href"));
    }

    [Fact]
    public async Task The_data_names_pattern_version_and_newest_and_an_old_version_says_that_there_is_a_newer_one()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        await shop.ReissueAsync(Cloth with { Motif = Cloth.Motif.With(0, 1, true) }, "Row 1 mended.");
        var old = await shop.Reader.GetAsync(shop.Page + "/v/1/weave");
        Assert.Equal((shop.Id.Value, 1, 2), Copy(old));
        Assert.Equal(shop.Page + "/weave", old.Html.QuerySelector("#newer a")!.GetAttribute("href"));
        foreach (var path in new[] { "/weave", "/v/2/weave" })
        {
            var newest = await shop.Reader.GetAsync(shop.Page + path);
            Assert.Equal((shop.Id.Value, 2, 2), Copy(newest));
            Assert.Null(newest.Html.QuerySelector("#newer a"));
        }
    }

    [Fact]
    public async Task What_makers_write_never_ends_the_data_nor_runs()
    {
        var hostile = Cloth with
        {
            Rows = Cloth.Rows with { Steps = [new ChartRows(1, 10, 1), new EdgeStitch("</script><script>alert(1)</script>", StitchYarn.Own, 1, Side.Left, 1)] },
        };
        await using var shop = await IssuedShop.OpenAsync(hostile);
        var page = await shop.Reader.GetAsync(shop.Page + "/weave");
        Assert.Equal(2, page.Html.QuerySelectorAll("script").Length);
        Assert.Equal(hostile.Title, page.Heading);
        Assert.StartsWith("</script><script>alert(1)</script>, once across", Data(page).GetProperty("stitchTexts")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Other_addresses_are_put_right_missing_or_gone()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var moved = await shop.Reader.GetAsync($"/p/{shop.Id}/other/weave");
        Assert.Equal((HttpStatusCode.MovedPermanently, shop.Page + "/weave"), (moved.Status, moved.Location));
        Assert.Equal(shop.Page + "/v/1/weave", (await shop.Reader.GetAsync($"/p/{shop.Id}/other/v/1/weave")).Location);
        foreach (var path in new[] { "/p/0000000000/x/weave", shop.Page + "/v/2/weave" })
        {
            Assert.Equal((path, HttpStatusCode.NotFound), (path, (await shop.Reader.GetAsync(path)).Status));
        }

        await shop.Maker.PostAsync("/studio", $"/studio/patterns/{shop.Id}/withdraw");
        Assert.Equal(HttpStatusCode.Gone, (await shop.Reader.GetAsync(shop.Page + "/weave")).Status);
    }

    private static JsonElement Data(Reply page) => JsonSerializer.Deserialize<JsonElement>(((IHtmlScriptElement)page.Html.QuerySelector("script#piece")!).Text);

    private static (string?, int, int) Copy(Reply page)
    {
        var data = Data(page);
        return (data.GetProperty("pattern").GetString(), data.GetProperty("version").GetInt32(), data.GetProperty("newest").GetInt32());
    }
}
