using System.Text;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>A pattern comes onto the maker's table as a file that is dropped there, is kept as a file, thrown away and brought back.</summary>
[Collection(FullShop.Collection)]
public sealed class TableJourneyTests(Stage stage, FullShop shop) : Journey(stage)
{
    private const string Title = "Dropped cloth";

    protected override ServerProcess Server => shop.Server;

    [Fact]
    public async Task A_file_is_dropped_on_the_table_and_the_pattern_comes_back_after_it_was_thrown_away()
    {
        var page = shop.Maker.Page;
        await shop.Maker.GoAsync("/studio");
        var bytes = Encoding.UTF8.GetBytes(FullShop.Cloth.Replace(FullShop.Title, Title, StringComparison.Ordinal));
        await DropAsync(page, Encoding.UTF8.GetString(bytes));
        await page.WaitForURLAsync("**/studio/patterns/*");
        await new EditorPage(shop.Maker).SavedAsync();
        await shop.Maker.GoAsync("/studio");
        var card = page.GetByRole(AriaRole.Listitem).Filter(new LocatorFilterOptions { HasText = Title });
        await Assertions.Expect(card.Locator(".state")).ToHaveTextAsync("Unpublished");
        await card.Locator("summary").ClickAsync();
        var file = await page.RunAndWaitForDownloadAsync(() => card.GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = "Keep a file" }).ClickAsync());
        Assert.Contains(Title, await File.ReadAllTextAsync(await file.PathAsync(), TestContext.Current.CancellationToken), StringComparison.Ordinal);

        await card.GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = "Delete" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Delete it" }).ClickAsync();
        await Assertions.Expect(card).ToHaveCountAsync(0);
        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Bring it back" }).ClickAsync();
        await Assertions.Expect(card.Locator(".state")).ToHaveTextAsync("Unpublished");

        // what is no pattern is told
        shop.Maker.Expects("/studio/bring-in", 422);
        await DropAsync(page, "{\n  \"title\": 7\n}");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Line 2, column 12:");
    }

    private static async Task DropAsync(IPage page, string content)
    {
        var carried = await page.EvaluateHandleAsync(
            "content => { const carried = new DataTransfer(); carried.items.add(new File([content], 'cloth.json', { type: 'application/json' })); return carried; }", content);
        await page.DispatchEventAsync("body", "dragenter", new { dataTransfer = carried });
        await Assertions.Expect(page.GetByText("Let go to bring it in")).ToBeVisibleAsync();
        await page.DispatchEventAsync("body", "drop", new { dataTransfer = carried });
    }
}
