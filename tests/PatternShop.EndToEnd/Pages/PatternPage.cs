using System.Globalization;
using Microsoft.Playwright;

namespace PatternShop.EndToEnd;

/// <summary>The page of a pattern: files, facts, chart, order of work, rows.</summary>
internal sealed class PatternPage(Visit visit)
{
    public ILocator Heading => visit.Page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Level = 1 });

    public ILocator Chart => visit.Page.Locator("section[aria-labelledby=chart] .paper svg");

    public ILocator Files => visit.Page.Locator("ul.files a");

    public ILocator RowTable => visit.Page.Locator("table.rows");

    /// <summary>The rows as a reader sees them; works without scripts.</summary>
    public async Task<IReadOnlyList<WrittenRow>> RowsAsync()
    {
        var numbers = await RowTable.Locator("tbody th").EvaluateAllAsync<string[]>("heads => heads.map(head => /\\d+/.exec(head.textContent)[0])");
        var from = await RowTable.Locator("td.from").AllInnerTextsAsync();
        var runs = await RowTable.Locator("td.runs").EvaluateAllAsync<string[]>("cells => cells.map(cell => (cell.querySelector('[aria-hidden=true]') ?? cell).innerText)");
        return [.. numbers.Zip(from, runs).Select(row => new WrittenRow(int.Parse(row.First, CultureInfo.InvariantCulture), row.Second, row.Third))];
    }

    /// <summary>Follows the link to a file that the browser keeps, and gives its name and bytes.</summary>
    public async Task<(string Name, byte[] Bytes)> DownloadAsync(string link)
    {
        var download = await visit.Page.RunAndWaitForDownloadAsync(() => Files.GetByText(link, new LocatorGetByTextOptions { Exact = true }).ClickAsync());
        await using var stream = await download.CreateReadStreamAsync();
        using var memory = new MemoryStream();
        await stream.CopyToAsync(memory);
        return (download.SuggestedFilename, memory.ToArray());
    }
}
