using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>From setting up to the last row on a phone, by single taps alone: nothing is dragged, held or pressed twice, and keys are only used to type into a field that was tapped.</summary>
public sealed class TapJourneyTests(Stage stage, OwnServer own) : Journey(stage), IClassFixture<OwnServer>
{
    protected override ServerProcess Server => own.Server;

    [Fact]
    public async Task The_whole_job_is_done_by_single_taps_alone()
    {
        var visit = await OpenAsync(Reader.Phone);
        var page = visit.Page;
        await SetUpAsync(visit);

        await TapAsync(page, AriaRole.Link, "New pattern");
        await TypeAsync(page, "Title", SmallCloth.Title);
        await TypeAsync(page, "Ends in the motif", "4");
        await TypeAsync(page, "Rows in the motif", "4");
        await TapAsync(page, AriaRole.Button, "Begin");

        var editor = new EditorPage(visit);
        await editor.SavedAsync();
        foreach (var cell in SmallCloth.Overs)
        {
            await editor.TapAsync(SmallCloth.Size, SmallCloth.Size, cell);
        }

        await editor.SavedAsync();
        await TapAsync(page, AriaRole.Button, "Repeats across: one more");
        await Assertions.Expect(page.GetByText("2 × 4 = 8, + 2 floating selvedges = 10 ends").First).ToBeVisibleAsync();
        await editor.SavedAsync();
        Assert.Empty(WrittenRow.Differences(await editor.RowsAsync(), SmallCloth.Rows));

        await TapAsync(page, AriaRole.Link, "Preview and issue");
        await TypeAsync(page, "A note for readers", "As woven.");
        await TapAsync(page, AriaRole.Button, "Issue version 1");
        await TapAsync(page, AriaRole.Link, "Its page");
        await Assertions.Expect(new PatternPage(visit).Heading).ToHaveTextAsync(SmallCloth.Title);
        Assert.Empty(WrittenRow.Differences(await new PatternPage(visit).RowsAsync(), SmallCloth.Rows));
        await TapAsync(page, AriaRole.Link, "Weave along");

        var weaving = new WeavePage(visit);
        await weaving.UntilReadyAsync();
        await Weaving.AllAsync(weaving, SmallCloth.Rows, SmallCloth.PlaceOf, () => weaving.Next.TapAsync());
    }

    private async Task SetUpAsync(Visit visit)
    {
        var page = visit.Page;
        await visit.GoAsync(await SetUp.AddressAsync(Server));
        await TypeAsync(page, "Studio name", SetUp.Studio);
        await TypeAsync(page, "Public handle", "tansy-lane");
        await TypeAsync(page, "E-mail", SetUp.Email);
        await TypeAsync(page, "Passphrase", SetUp.Passphrase);
        await TypeAsync(page, "The same passphrase again", SetUp.Passphrase);
        foreach (var sample in await page.Locator("[name=Samples]").AllAsync())
        {
            await sample.TapAsync();
            await Assertions.Expect(sample).Not.ToBeCheckedAsync();
        }

        await TapAsync(page, AriaRole.Button, "Set up the shop");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Level = 1 })).ToHaveTextAsync("My patterns", new LocatorAssertionsToHaveTextOptions { Timeout = SetUp.Patience });
    }

    private static Task TapAsync(IPage page, AriaRole role, string name) =>
        page.GetByRole(role, new PageGetByRoleOptions { Name = name, Exact = true }).TapAsync();

    private static async Task TypeAsync(IPage page, string label, string text)
    {
        var field = page.GetByLabel(label, new PageGetByLabelOptions { Exact = true });
        await field.TapAsync();
        await Assertions.Expect(field).ToBeFocusedAsync();
        // what stands in a field with a number is one sign
        for (var sign = (await field.InputValueAsync()).Length; sign > 0; sign--)
        {
            await page.Keyboard.PressAsync("Backspace");
            await page.Keyboard.PressAsync("Delete");
        }

        await page.Keyboard.TypeAsync(text);
    }
}
