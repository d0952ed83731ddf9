using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>A reader comes to the first page, chooses a pattern, reads it and takes it home.</summary>
public sealed class ReadingTests(Stage stage) : Journey(stage)
{
    private static readonly string[] Known =
        ["first-steps", "harbour-lights", "hazel-diamonds", "kestrel", "kite-weather", "mountain-and-mirror", "pebble-basket", "rain-on-slate", "three-stepping-stones", "twined-sampler"];

    public static TheoryData<string> Samples => [.. Known];

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task From_the_first_page_to_a_sheet_on_paper(bool script)
    {
        var visit = await OpenAsync(Reader.Phone with { Script = script });
        await visit.GoAsync(FirstPage.Address);
        var page = await new FirstPage(visit).OpenAsync("Hazel diamonds");
        await Assertions.Expect(page.Heading).ToHaveTextAsync("Hazel diamonds");
        await Assertions.Expect(page.Chart).ToBeVisibleAsync();
        var written = await page.RowsAsync();
        var (name, bytes) = await page.DownloadAsync("Printable, A4 (PDF)");
        Assert.Equal("hazel-diamonds.a4.pdf", name);
        Assert.Equal("%PDF-", Encoding.ASCII.GetString(bytes, 0, 5));
        using var pdf = PdfDocument.Open(bytes);
        var text = string.Concat(pdf.GetPages().SelectMany(sheet => sheet.Letters).Select(letter => letter.Value).Where(value => !string.IsNullOrWhiteSpace(value)));
        Assert.Contains("Hazeldiamonds", text, StringComparison.Ordinal);
        Assert.All(written, row => Assert.Contains(row.Text.Replace(" ", "", StringComparison.Ordinal), text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_first_page_shows_every_sample()
    {
        var visit = await OpenAsync(Reader.Desk);
        await visit.GoAsync("/samples");
        var links = await new FirstPage(visit).Patterns.Locator("a").EvaluateAllAsync<string[]>("links => links.map(link => link.getAttribute('href'))");
        Assert.Equal(Known.Select(name => $"/samples/{name}"), links);
    }

    [Theory]
    [MemberData(nameof(Samples))]
    public async Task A_page_writes_what_is_woven(string name)
    {
        var visit = await OpenAsync(Reader.Desk);
        await visit.GoAsync($"/samples/{name}");
        var written = await new PatternPage(visit).RowsAsync();
        var woven = WeavingOrder.Of((await FactsAsync(name)).GetProperty("input"));
        Assert.NotEmpty(woven);
        Assert.Empty(WrittenRow.Differences(written, woven));
    }

    [Fact]
    public async Task Another_cell_is_noticed_in_its_row_and_run()
    {
        var visit = await OpenAsync(Reader.Desk);
        await visit.GoAsync("/samples/hazel-diamonds");
        var written = await new PatternPage(visit).RowsAsync();
        var input = JsonNode.Parse((await FactsAsync("hazel-diamonds")).GetProperty("input").GetRawText())!;
        Assert.Equal("..x.xxx.x.", (string?)input["chart"]![2]);
        input["chart"]![2] = "..x.x.x.x.";
        var woven = WeavingOrder.Of(JsonSerializer.SerializeToElement(input));
        Assert.Equal(["row 3, run 5: over 3, not over 1", "row 13: not written"], WrittenRow.Differences(written, woven));
    }

    private async Task<JsonElement> FactsAsync(string name)
    {
        var text = await Server.Http.GetStringAsync(new Uri($"/samples/{name}/facts.json", UriKind.Relative), TestContext.Current.CancellationToken);
        return JsonSerializer.Deserialize<JsonElement>(text);
    }
}
