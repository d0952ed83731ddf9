using Microsoft.Playwright;

namespace PatternShop.EndToEnd;

/// <summary>The page on which an empty shop gets its maker.</summary>
internal static class SetUp
{
    public const string Studio = "Tansy Lane Weaving Room";
    /// <summary>Hashing a passphrase takes its time on a busy machine.</summary>
    public const float Patience = 60_000;

    public const string Email = "maker@example.org";
    public const string Passphrase = "four shuttles in a drawer";

    /// <summary>Reads the address from the server's log and sets the shop up; ends on the maker's patterns.</summary>
    public static Task DoAsync(Visit visit, ServerProcess server, bool samples = false) => DoAsync(visit, server, static () => Task.CompletedTask, samples);

    /// <summary>Where a new shop is set up, as its server says.</summary>
    public static async Task<string> AddressAsync(ServerProcess server)
    {
        var line = await server.LineAsync("/setup?code=");
        return line[line.IndexOf("/setup?code=", StringComparison.Ordinal)..].Trim();
    }

    /// <summary>The same, after something else was done on the page.</summary>
    public static async Task DoAsync(Visit visit, ServerProcess server, Func<Task> before, bool samples = false)
    {
        await visit.GoAsync(await AddressAsync(server));
        await before();
        var page = visit.Page;
        await page.GetByLabel("Studio name").FillAsync(Studio);
        await page.GetByLabel("Public handle").FillAsync("tansy-lane");
        await page.GetByLabel("E-mail").FillAsync(Email);
        await page.GetByLabel("Passphrase", new PageGetByLabelOptions { Exact = true }).FillAsync(Passphrase);
        await page.GetByLabel("The same passphrase again").FillAsync(Passphrase);
        foreach (var box in await page.Locator("[name=Samples]").AllAsync())
        {
            await box.SetCheckedAsync(samples);
        }

        await page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Set up the shop" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Level = 1 })).ToHaveTextAsync("My patterns", new LocatorAssertionsToHaveTextOptions { Timeout = Patience });
    }
}
