using Microsoft.Playwright;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>
/// Every page that the server has, by the list that is held against its endpoints, in three themes at three widths: nothing that axe can
/// find, nothing that makes a page scroll sideways.
/// </summary>
[Collection(FullShop.Collection)]
public sealed class EveryPageTests(Stage stage, FullShop shop) : Journey(stage)
{
    protected override ServerProcess Server => shop.Server;

    [Fact]
    public async Task Pages_for_everybody_are_without_fault_in_every_theme_and_width()
    {
        var reader = await OpenAsync(Reader.Desk);
        var faults = new List<string>(shop.SetUpFaults);
        foreach (var (path, heading) in Pages(For.Everybody))
        {
            await reader.GoAsync(path);
            if (path.EndsWith("/weave", StringComparison.Ordinal))
            {
                faults.AddRange(await MoreAsync(reader));
            }

            faults.AddRange(await Looking.FaultsAsync(reader, heading));
        }

        await reader.GoAsync("/nowhere", 404);
        faults.AddRange(await Looking.FaultsAsync(reader, "There is nothing at this address"));
        await reader.GoAsync(shop.In("/p/{hidden}/secret-cloth"), 410);
        faults.AddRange(await Looking.FaultsAsync(reader, "This pattern was withdrawn"));
        Tell(faults);
    }

    [Fact]
    public async Task Pages_of_the_workbench_are_without_fault_in_every_theme_and_width()
    {
        var faults = new List<string>();
        // besides: what stands on my patterns after one was thrown away, and when a title is not found
        (string, string)[] besides = [(shop.In("/studio?deleted={thrown}"), "My patterns"), ("/studio?find=no%20such", "My patterns")];
        foreach (var (path, heading) in Pages(For.Maker).Concat(Pages(For.Owner)).Concat(besides))
        {
            await shop.Maker.GoAsync(path);
            faults.AddRange(await Looking.FaultsAsync(shop.Maker, heading));
        }

        Tell(faults);
        Assert.Empty(shop.Maker.Faults);
    }

    // what opens over the page, then the page itself
    private static async Task<IReadOnlyList<string>> MoreAsync(Visit reader)
    {
        var page = new WeavePage(reader);
        await page.UntilReadyAsync();
        await page.More.ClickAsync();
        await reader.Page.Locator("#options[open]").WaitForAsync();
        var faults = await Looking.FaultsAsync(reader, "Weave along");
        await reader.Page.Keyboard.PressAsync("Escape");
        return faults;
    }

    // whole, where there are some
    private static void Tell(List<string> faults) => Assert.True(faults.Count == 0, string.Join('\n', faults));

    private List<(string Path, string Heading)> Pages(For whom)
    {
        var pages = KnownRoutes.All.Where(route => route.For == whom && route.Heading is not null && route.Path != "{setup}").Select(route => (shop.In(route.Path), shop.In(route.Heading!))).ToList();
        Assert.NotEmpty(pages);
        Assert.DoesNotContain(pages, page => page.Item1.Contains('{', StringComparison.Ordinal));
        return pages;
    }
}
