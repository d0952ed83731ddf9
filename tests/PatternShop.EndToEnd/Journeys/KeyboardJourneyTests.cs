using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>From setting up to the last row, by keys alone: after the first address nothing is clicked, touched or filled in past the keyboard.</summary>
public sealed class KeyboardJourneyTests(Stage stage, OwnServer own) : Journey(stage), IClassFixture<OwnServer>
{
    protected override ServerProcess Server => own.Server;

    [Fact]
    public async Task The_whole_job_is_done_by_keys_alone()
    {
        var visit = await OpenAsync(Reader.Desk);
        var page = visit.Page;
        var keys = new KeysOnly(visit);
        await SetUpAsync(visit, keys);

        await keys.EnterAsync(AriaRole.Link, "New pattern");
        await keys.TypeAsync("Title", SmallCloth.Title);
        await keys.TypeAsync("Ends in the motif", "4");
        await keys.TypeAsync("Rows in the motif", "4");
        await keys.EnterAsync(AriaRole.Button, "Begin");

        var editor = new EditorPage(visit);
        await editor.SavedAsync();
        await DrawAsync(page, keys);
        await editor.SavedAsync();
        await keys.TypeAsync("Repeats across", "2");
        await keys.PressAsync("Tab");
        await Assertions.Expect(page.GetByText("2 × 4 = 8, + 2 floating selvedges = 10 ends").First).ToBeVisibleAsync();
        await editor.SavedAsync();
        Assert.Empty(WrittenRow.Differences(await editor.RowsAsync(), SmallCloth.Rows));

        await keys.EnterAsync(AriaRole.Link, "Preview and issue");
        await keys.TypeAsync("A note for readers", "As woven.");
        await keys.EnterAsync(AriaRole.Button, "Issue version 1");
        await keys.EnterAsync(AriaRole.Link, "Its page");
        await Assertions.Expect(new PatternPage(visit).Heading).ToHaveTextAsync(SmallCloth.Title);
        Assert.Empty(WrittenRow.Differences(await new PatternPage(visit).RowsAsync(), SmallCloth.Rows));
        await keys.EnterAsync(AriaRole.Link, "Weave along");

        var weaving = new WeavePage(visit);
        await weaving.UntilReadyAsync();
        await keys.GoToAsync(weaving.Next);
        await Weaving.AllAsync(weaving, SmallCloth.Rows, SmallCloth.PlaceOf, () => keys.PressAsync(" "));
    }

    private async Task SetUpAsync(Visit visit, KeysOnly keys)
    {
        await visit.GoAsync(await SetUp.AddressAsync(Server));
        await keys.TypeAsync("Studio name", SetUp.Studio);
        await keys.TypeAsync("Public handle", "tansy-lane");
        await keys.TypeAsync("E-mail", SetUp.Email);
        await keys.TypeAsync("Passphrase", SetUp.Passphrase);
        await keys.TypeAsync("The same passphrase again", SetUp.Passphrase);
        foreach (var sample in await visit.Page.Locator("[name=Samples]:checked").AllAsync())
        {
            await keys.GoToAsync(visit.Page.Locator("[name=Samples]:checked").First);
            await keys.PressAsync(" ");
        }

        await keys.EnterAsync(AriaRole.Button, "Set up the shop");
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Level = 1 })).ToHaveTextAsync("My patterns", new LocatorAssertionsToHaveTextOptions { Timeout = SetUp.Patience });
    }

    // the cursor begins at the top left: row by row from the lowest
    private static async Task DrawAsync(IPage page, KeysOnly keys)
    {
        await keys.GoToAsync(page.GetByRole(AriaRole.Grid));
        await keys.PressAsync("Control+Home");
        for (var row = 1; row <= SmallCloth.Size; row++)
        {
            await keys.PressAsync("Home");
            for (var end = 1; end <= SmallCloth.Size; end++)
            {
                if (SmallCloth.IsOver(row, end))
                {
                    await keys.PressAsync(" ");
                }

                await keys.PressAsync("ArrowRight");
            }

            await keys.PressAsync("ArrowUp");
        }
    }
}
