using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>A weaver with yarn in both hands: every tap one step, nothing lost, everything to be undone.</summary>
public sealed partial class WeaveAlongTests(Stage stage) : Journey(stage)
{
    private const string Address = "/samples/hazel-diamonds/weave";
    private const int LongTimes = 10;

    [Theory]
    [InlineData("click")]
    [InlineData("key")]
    public async Task A_thousand_taps_faster_than_a_frame_are_a_thousand_steps(string how)
    {
        var (visit, page, rows) = await LongPieceAsync();
        var tap = how == "click"
            ? "document.getElementById('next').click()"
            : "document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'PageDown', bubbles: true, cancelable: true }))";
        await visit.Page.EvaluateAsync($$"""() => { for (let i = 0; i < 1000; i++) { {{tap}}; } }""");
        Assert.Equal(1000, await page.StepsAsync(rows));
        await Assertions.Expect(page.Place).ToHaveTextAsync(PlaceOf(rows, 1000));
    }

    [Fact]
    public async Task One_touch_one_click_or_one_key_is_one_step_also_when_a_key_is_held_or_the_button_has_the_focus()
    {
        var (visit, page, rows) = await LongPieceAsync();
        await visit.Page.Touchscreen.TapAsync(195, 500);
        Assert.Equal(1, await page.StepsAsync(rows));
        await visit.Page.Mouse.ClickAsync(60, 780);
        Assert.Equal(2, await page.StepsAsync(rows));
        await page.Next.FocusAsync();
        await visit.Page.Keyboard.PressAsync("Enter");
        Assert.Equal(3, await page.StepsAsync(rows));
        await visit.Page.Keyboard.PressAsync(" ");
        Assert.Equal(4, await page.StepsAsync(rows));
        foreach (var key in new[] { " ", "Enter", "PageDown" })
        {
            var before = await page.StepsAsync(rows);
            for (var held = 0; held < 5; held++)
            {
                await visit.Page.Keyboard.DownAsync(key);
            }

            await visit.Page.Keyboard.UpAsync(key);
            Assert.Equal((key, before + 1), (key, await page.StepsAsync(rows)));
        }

        await page.Back.FocusAsync();
        await visit.Page.Keyboard.PressAsync(" ");
        await visit.Page.Keyboard.PressAsync("Enter");
        Assert.Equal(5, await page.StepsAsync(rows));
    }

    [Fact]
    public async Task A_lost_row_is_found_by_keys_alone_and_going_there_is_undone()
    {
        var visit = await OpenAsync(Reader.Phone);
        var page = new WeavePage(visit);
        await page.GoAsync(Address);
        await page.More.PressAsync("Enter");
        await visit.Page.Locator("#lost-open").PressAsync("Enter");
        // run by run, always the first that is offered, then the row below where that tells more
        var runs = visit.Page.Locator("#lost-runs button");
        while (await runs.CountAsync() > 0)
        {
            await runs.First.PressAsync("Enter");
        }

        var below = visit.Page.Locator("#lost-below");
        if (await below.IsVisibleAsync())
        {
            await below.PressAsync("Enter");
            await runs.First.PressAsync("Enter");
        }

        var found = visit.Page.Locator("#lost-rows button").First;
        var number = int.Parse(LastRow().Match(await found.InnerTextAsync()).Groups["row"].ValueSpan, CultureInfo.InvariantCulture);
        Assert.Equal((0, 0), await page.KeptAsync());
        await found.PressAsync("Enter");
        Assert.Equal((number, 0), await page.KeptAsync());
        await Assertions.Expect(visit.Page.Locator("#next:focus, #back:focus")).ToHaveCountAsync(1);
        await visit.Page.Keyboard.PressAsync("Backspace");
        Assert.Equal((0, 0), await page.KeptAsync());
    }

    [Fact]
    public async Task The_place_survives_a_reload_and_back_undoes_every_step_and_every_jump()
    {
        var visit = await OpenAsync(Reader.Phone);
        var page = new WeavePage(visit);
        await page.GoAsync(Address);
        await visit.Page.EvaluateAsync("() => { for (let i = 0; i < 40; i++) document.getElementById('next').click(); }");
        var place = await page.KeptAsync();
        Assert.NotEqual((0, 0), place);
        var run = await page.Now.InnerTextAsync();
        await visit.Page.ReloadAsync();
        await page.UntilReadyAsync();
        Assert.Equal((place, run), (await page.KeptAsync(), await page.Now.InnerTextAsync()));

        await JumpAsync(page, visit, 14);
        await Assertions.Expect(page.Place).ToHaveTextAsync("Row 4 of 10 · time 2 of 2 (row 14 of 22)");
        await page.Next.ClickAsync();
        await visit.Page.ReloadAsync();
        await page.UntilReadyAsync();
        await page.Back.ClickAsync();
        await page.Back.ClickAsync();
        Assert.Equal(place, await page.KeptAsync());
        await visit.Page.EvaluateAsync("() => { for (let i = 0; i < 40; i++) document.getElementById('back').click(); }");
        Assert.Equal((0, 0), await page.KeptAsync());
        await Assertions.Expect(page.Back).ToBeDisabledAsync();
    }

    [Fact]
    public async Task Whole_rows_are_a_step_each_when_the_weaver_says_so_and_it_stays_so()
    {
        var visit = await OpenAsync(Reader.Phone);
        var page = new WeavePage(visit);
        await page.GoAsync(Address);
        await page.More.ClickAsync();
        await visit.Page.Locator("#by-rows").CheckAsync();
        await visit.Page.GetByText("Go on weaving").ClickAsync();
        for (var row = 1; row <= 4; row++)
        {
            await page.Next.ClickAsync();
        }

        await visit.Page.ReloadAsync();
        await page.UntilReadyAsync();
        Assert.Equal((4, 0), await page.KeptAsync());
        // computed: whole piece 1 of the check values, row 5 from the left
        Assert.Equal("[over 3, under 2, over 1, under 1, over 1, under 2] × 2, over 3", await visit.Page.Locator(".whole").InnerTextAsync());
    }

    private static async Task JumpAsync(WeavePage page, Visit visit, int row)
    {
        await page.More.ClickAsync();
        await visit.Page.Locator("#jump-row").FillAsync(row.ToString(System.Globalization.CultureInfo.InvariantCulture));
        await visit.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Go", Exact = true }).ClickAsync();
    }

    private static string PlaceOf(IReadOnlyList<WovenRow> rows, int steps)
    {
        var number = 1 + Enumerable.Range(1, rows.Count).Count(woven => rows.Take(woven).Sum(row => row.Runs.Count) <= steps);
        return FormattableString.Invariant($"Row {((number - 1) % 10) + 1} of 10 · time {((number - 1) / 10) + 1} of {LongTimes} (row {number} of {rows.Count})");
    }

    // No sample has a thousand runs, so the repeated rows of one are woven more often: the page's data is changed on its way.
    private async Task<(Visit Visit, WeavePage Page, IReadOnlyList<WovenRow> Rows)> LongPieceAsync()
    {
        var once = WeavingOrder.Of((await FactsAsync("hazel-diamonds")).GetProperty("input"));
        IReadOnlyList<WovenRow> rows = [.. Enumerable.Repeat(once.Take(10), LongTimes).SelectMany(time => time), .. once.Skip(20)];
        var visit = await OpenAsync(Reader.Phone);
        await visit.Page.RouteAsync("**" + Address, async route =>
        {
            var answer = await route.FetchAsync();
            var text = await answer.TextAsync();
            var longer = text
                .Replace("\"each\":10,\"times\":2", FormattableString.Invariant($"\"each\":10,\"times\":{LongTimes}"), StringComparison.Ordinal)
                .Replace("\"rows\":22", FormattableString.Invariant($"\"rows\":{rows.Count}"), StringComparison.Ordinal);
            Assert.NotEqual(text, longer);
            await route.FulfillAsync(new RouteFulfillOptions { Response = answer, Body = longer });
        });
        var page = new WeavePage(visit);
        await page.GoAsync(Address);
        return (visit, page, rows);
    }

    private async Task<JsonElement> FactsAsync(string name) =>
        JsonSerializer.Deserialize<JsonElement>(await Server.Http.GetStringAsync(new Uri($"/samples/{name}/facts.json", UriKind.Relative), TestContext.Current.CancellationToken));

    // "Row 4 of 10 · time 2 of 2 (row 14 of 22): go on with row 15"
    [GeneratedRegex("(?<row>[0-9]+) of", RegexOptions.RightToLeft | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex LastRow();
}
