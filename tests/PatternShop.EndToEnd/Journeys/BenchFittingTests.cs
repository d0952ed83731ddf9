using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Set-up, sign-in and the maker's pages fit every window, light and dark, and everybody can use them.</summary>
public sealed class BenchFittingTests(Stage stage, OwnServer own) : Journey(stage), IClassFixture<OwnServer>
{
    // a window is turned from look to look, which does not become another kind of screen
    private static readonly (int Width, bool Dark)[] Phones = [(320, false), (390, true)];
    private static readonly (int Width, bool Dark)[] Desks = [(768, false), (1280, true)];

    protected override ServerProcess Server => own.Server;

    [Fact]
    public async Task Every_page_of_the_maker_fits_and_axe_finds_nothing()
    {
        await SetUpPageAsync();
        var first = await OpenAsync(Reader.Phone);
        await SetUp.DoAsync(first, Server, samples: true);
        var pattern = await first.Page.Locator("ul.bench h2 a").First.GetAttributeAsync("href");
        (string Address, string Heading)[] pages =
        [
            ("/studio", "My patterns"), ("/studio/new", "New pattern"), (pattern + "/issue", "Issue “"), (pattern + "/delete", "Delete “"),
        ];
        foreach (var looks in new[] { Phones, Desks })
        {
            var visit = await OpenAsync(Reader.Phone with { Width = looks[0].Width });
            await ShowAsync(visit, looks, "/sign-in", "Sign in");
            await SignInAsync(visit);
            foreach (var (address, heading) in pages)
            {
                await ShowAsync(visit, looks, address, heading);
            }

            await EditorAsync(visit, looks, pattern!);
        }
    }

    // set-up is looked at before it is done: its address stands in the log once, and is said again at the next start
    private async Task SetUpPageAsync()
    {
        var line = await Server.LineAsync("/setup?code=");
        foreach (var (width, dark) in new[] { (320, true), (1280, false) })
        {
            var visit = await OpenAsync(Reader.Phone with { Width = width, Dark = dark });
            await ShowAsync(visit, [(width, dark)], line[line.IndexOf("/setup?code=", StringComparison.Ordinal)..].Trim(), "Set up your shop");
            Assert.Equal(3, await visit.Page.Locator("[name=Samples]").CountAsync());
        }

        await own.StartAgainAsync();
    }

    private static async Task EditorAsync(Visit visit, IEnumerable<(int Width, bool Dark)> looks, string address)
    {
        await visit.GoAsync(address);
        await new EditorPage(visit).SavedAsync();
        Assert.NotEmpty(await new EditorPage(visit).RowsAsync());
        await Assertions.Expect(visit.Page.Locator(".stage canvas")).ToHaveCountAsync(2);
        foreach (var part in new[] { "Thickness and colours", "Colours that have a name" })
        {
            await visit.Page.GetByText(part, new PageGetByTextOptions { Exact = true }).ClickAsync();
        }

        await JudgeAsync(visit, looks);
    }

    private static async Task SignInAsync(Visit visit)
    {
        await visit.Page.GetByLabel("E-mail").FillAsync(SetUp.Email);
        await visit.Page.GetByLabel("Passphrase").FillAsync(SetUp.Passphrase);
        await visit.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Sign in" }).ClickAsync();
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Level = 1 })).ToHaveTextAsync("My patterns");
    }

    private static async Task ShowAsync(Visit visit, IEnumerable<(int Width, bool Dark)> looks, string address, string heading)
    {
        await visit.GoAsync(address);
        Assert.StartsWith(heading, await visit.Page.Locator("h1").InnerTextAsync(), StringComparison.Ordinal);
        await JudgeAsync(visit, looks);
    }

    private static async Task JudgeAsync(Visit visit, IEnumerable<(int Width, bool Dark)> looks)
    {
        foreach (var (width, dark) in looks)
        {
            await visit.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light });
            await visit.Page.SetViewportSizeAsync(width, Reader.Phone.Height);
            Assert.Equal(width, await visit.Page.EvaluateAsync<int>("innerWidth"));
            Assert.Empty(await Width.OverflowAsync(visit));
            Assert.Empty(await Axe.FindingsAsync(visit));
        }
    }
}
