using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Pages fit every window, and everybody can use them.</summary>
public sealed class FittingTests(Stage stage) : Journey(stage)
{
    private static readonly (string Address, int Status, string Heading)[] Pages =
    [
        ("/", 200, "Charts for small frame looms"),
        ("/samples", 200, "Samples"),
        ("/samples/twined-sampler", 200, "Twined sampler"),
        ("/nothing-here", 404, "There is nothing at this address"),
    ];

    public static TheoryData<int> Widths => [320, 390, 768, 1280];

    public static TheoryData<string, bool> Looks => new(from page in Pages from dark in new[] { false, true } select (page.Address, dark));

    [Theory]
    [MemberData(nameof(Widths))]
    public async Task No_page_scrolls_sideways(int width)
    {
        var visit = await OpenAsync(Reader.Phone with { Width = width });
        foreach (var (address, status, heading) in Pages)
        {
            await ShowAsync(visit, address, status, heading);
            Assert.Empty(await Width.OverflowAsync(visit));
        }
    }

    [Theory]
    [MemberData(nameof(Looks))]
    public async Task Axe_finds_nothing(string address, bool dark)
    {
        var visit = await OpenAsync(Reader.Phone with { Dark = dark });
        var page = Pages.Single(page => page.Address == address);
        await ShowAsync(visit, address, page.Status, page.Heading);
        Assert.Empty(await Axe.FindingsAsync(visit));
    }

    private static async Task ShowAsync(Visit visit, string address, int status, string heading)
    {
        await visit.GoAsync(address, status);
        Assert.Equal(heading, await visit.Page.Locator("h1").InnerTextAsync());
    }
}
