using Microsoft.Playwright;

namespace PatternShop.EndToEnd;

/// <summary>The first page: a shelf of patterns.</summary>
internal sealed class FirstPage(Visit visit)
{
    public const string Address = "/";

    public ILocator Heading => visit.Page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Level = 1 });

    public ILocator Patterns => visit.Page.Locator("ul.shelf > li");

    public async Task<PatternPage> OpenAsync(string title)
    {
        await Patterns.GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = title }).ClickAsync();
        return new PatternPage(visit);
    }
}
