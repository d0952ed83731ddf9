using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>What a reader gets who marks rows on a page and copies them, or has them read aloud: numbers and words are told apart by text.</summary>
public sealed class CopiedRowTests(Stage stage) : Journey(stage)
{
    private const string Page = "/samples/hazel-diamonds";

    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task Rows_are_copied_as_they_are_read(int width)
    {
        var visit = await OpenAsync(new Reader(width, 844));
        var page = new WeavePage(visit);
        await page.GoAsync(Page + "/weave");
        Assert.Equal("Row 1 of 10 · time 1 of 2 (row 1 of 22)", await CopiedAsync(visit, "#place"));
        // the picture and its legend are no text
        Assert.Equal("Row 1 of 10 · time 1 of 2 (row 1 of 22)", await CopiedAsync(visit, "#at"));
        await LongRowTests.ByRowsAsync(visit, page);
        // by hand: floating ends over, between them x.xx...xx. twice and x
        Assert.Equal("over 2, under 1, over 2, under 3, over 2, under 1, over 1, under 1, over 2, under 3, over 2, under 1, over 2", await CopiedAsync(visit, ".whole"));

        await page.More.ClickAsync();
        await visit.Page.Locator("#show-rows").ClickAsync();
        Assert.StartsWith("Row 1 · 11\nfrom the left →\n", await CopiedAsync(visit, "#row-1"), StringComparison.Ordinal);
        Assert.StartsWith("Row 21\n", await CopiedAsync(visit, "#row-21"), StringComparison.Ordinal);

        await visit.GoAsync(Page);
        // beside others the number stands under a heading; alone it is named
        Assert.Equal(width < 500 ? "Row 1" : "1", await CopiedAsync(visit, "table.rows tbody tr:first-child th"));
        Assert.StartsWith(width < 500 ? "Row 21 " : "21 ", await CopiedAsync(visit, "#row-21 th"), StringComparison.Ordinal);
    }

    private static async Task<string> CopiedAsync(Visit visit, string selector) => (await visit.Page.Locator(selector).EvaluateAsync<string>(
        """
        element => {
          const selection = getSelection(), words = document.createRange();
          words.selectNodeContents(element);
          selection.removeAllRanges();
          selection.addRange(words);
          const copied = selection.toString();
          selection.removeAllRanges();
          return copied;
        }
        """)).Trim();
}
