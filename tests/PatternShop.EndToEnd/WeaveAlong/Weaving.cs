using Microsoft.Playwright;

namespace PatternShop.EndToEnd;

/// <summary>Weaves rows along, run by run, and sees at each step that the screen says the place and the run.</summary>
internal static class Weaving
{
    /// <param name="page">Where weave-along stands, at the first step.</param>
    /// <param name="rows">Every row of the piece.</param>
    /// <param name="placeOf">What the screen says of a row by its number.</param>
    /// <param name="next">Takes a step.</param>
    public static async Task AllAsync(WeavePage page, IReadOnlyList<WovenRow> rows, Func<int, string> placeOf, Func<Task> next)
    {
        foreach (var row in rows)
        {
            await Assertions.Expect(page.Place).ToHaveTextAsync(placeOf(row.Number));
            foreach (var run in row.Runs)
            {
                await Assertions.Expect(page.Now).ToHaveTextAsync(run.ToString());
                await next();
            }
        }

        await Assertions.Expect(page.Next).ToBeDisabledAsync();
        Xunit.Assert.Equal((rows.Count, 0), await page.KeptAsync());
    }
}
