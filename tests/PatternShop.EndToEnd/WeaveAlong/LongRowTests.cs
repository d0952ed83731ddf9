using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Rows that are longer than the screen, a whole row at a time: all of them can be read, by touch, wheel and keys.</summary>
public sealed partial class LongRowTests(Stage stage) : Journey(stage)
{
    private const string Address = "/samples/hazel-diamonds/weave";
    private const int Runs = 240;

    // where the row stands, where the word of the button does, and whether the end of the row is in sight
    private const string Measure =
        """
        () => {
          const row = document.querySelector('.whole'), box = row.getBoundingClientRect(), next = document.querySelector('#next span').getBoundingClientRect();
          const words = document.createRange();
          words.selectNodeContents(row);
          const lines = [...words.getClientRects()], apart = box.right <= next.left + 1 || next.right <= box.left + 1 || box.bottom <= next.top + 1;
          return {
            scrolls: row.scrollHeight > row.clientHeight + 1, top: row.scrollTop, apart, inside: box.bottom <= innerHeight + 1 && box.height > 60,
            begins: lines[0].top >= box.top - 1, ends: lines.at(-1).bottom <= box.bottom + 1, wide: lines.some(line => line.right > box.right + 1 || line.left < box.left - 1),
            focus: document.activeElement === row,
          };
        }
        """;

    [Theory]
    [InlineData(390, 844, 100)]
    [InlineData(320, 568, 150)]
    [InlineData(1280, 800, 100)]
    [InlineData(844, 390, 150)]
    public async Task A_row_that_is_too_long_is_scrolled_by_wheel_and_keys_and_a_tap_on_it_is_a_step(int width, int height, int text)
    {
        var (visit, page) = await OpenLongAsync(width, height);
        if (text != 100)
        {
            await Larger.TextAsync(visit, text);
        }

        var row = visit.Page.Locator(".whole");
        Assert.EndsWith("over 7", await row.InnerTextAsync(), StringComparison.Ordinal);
        var seen = await MeasureAsync(visit);
        Assert.True(Is(seen, "scrolls") && Is(seen, "apart") && Is(seen, "inside") && Is(seen, "begins") && !Is(seen, "ends") && !Is(seen, "wide"), seen.ToString());

        // what is under the pointer scrolls, although all around it is one button
        await row.HoverAsync();
        await visit.Page.Mouse.WheelAsync(0, 100_000);
        await UntilAsync(visit, "row => row.scrollTop > 0 && row.scrollTop + row.clientHeight >= row.scrollHeight - 1");
        seen = await MeasureAsync(visit);
        Assert.True(Is(seen, "apart") && Is(seen, "ends") && !Is(seen, "begins"), seen.ToString());
        Assert.Equal((0, 0), await page.KeptAsync());

        // a step shows the next row from its beginning
        await row.ClickAsync();
        Assert.Equal((1, 0), await page.KeptAsync());
        await UntilAsync(visit, "row => row.scrollTop === 0");

        // the row is reached from the button by one key, and then the keys that scroll belong to it; all others step
        await page.Next.FocusAsync();
        await visit.Page.Keyboard.PressAsync("Shift+Tab");
        Assert.True(Is(await MeasureAsync(visit), "focus"));
        Assert.Empty(await Axe.FindingsAsync(visit));
        foreach (var (key, then) in new[] { ("ArrowDown", "row.scrollTop > 0"), ("End", "row.scrollTop + row.clientHeight >= row.scrollHeight - 1"), ("PageUp", "row.scrollTop + row.clientHeight < row.scrollHeight - 1"), ("Home", "row.scrollTop === 0") })
        {
            await visit.Page.Keyboard.PressAsync(key);
            await UntilAsync(visit, "row => " + then);
            Assert.Equal((key, (1, 0)), (key, await page.KeptAsync()));
        }

        await visit.Page.Keyboard.PressAsync(" ");
        Assert.Equal((2, 0), await page.KeptAsync());
        await UntilAsync(visit, "row => row.scrollTop === 0 && document.activeElement === row");
        await visit.Page.Keyboard.PressAsync("Enter");
        Assert.Equal((3, 0), await page.KeptAsync());

        // whoever has not gone to the row steps with every key
        await row.ClickAsync();
        await visit.Page.Keyboard.PressAsync("PageDown");
        Assert.Equal((5, 0), await page.KeptAsync());
    }

    [Fact]
    public async Task A_row_that_fits_is_no_stop_for_keys_and_selecting_words_of_it_is_no_step()
    {
        var visit = await OpenAsync(Reader.Desk);
        var page = new WeavePage(visit);
        await page.GoAsync(Address);
        await ByRowsAsync(visit, page);
        await page.Next.FocusAsync();
        await visit.Page.Keyboard.PressAsync("Shift+Tab");
        Assert.Equal("more", await visit.Page.EvaluateAsync<string>("document.activeElement.id"));
        var box = (await visit.Page.Locator(".whole").BoundingBoxAsync())!;
        await visit.Page.Mouse.MoveAsync(box.X + 5, box.Y + 15);
        await visit.Page.Mouse.DownAsync();
        await visit.Page.Mouse.MoveAsync(box.X + 300, box.Y + 15, new MouseMoveOptions { Steps = 4 });
        await visit.Page.Mouse.UpAsync();
        Assert.NotEqual("", await visit.Page.EvaluateAsync<string>("getSelection().toString()"));
        Assert.Equal((0, 0), await page.KeptAsync());
        await visit.Page.Mouse.ClickAsync(box.X + 300, box.Y + 15);
        Assert.Equal((1, 0), await page.KeptAsync());
    }

    internal static async Task ByRowsAsync(Visit visit, WeavePage page)
    {
        await page.More.ClickAsync();
        await visit.Page.Locator("#by-rows").CheckAsync();
        await visit.Page.Keyboard.PressAsync("Escape");
        await visit.Page.Locator(".whole").WaitForAsync();
    }

    private static async Task<JsonElement> MeasureAsync(Visit visit) => await visit.Page.EvaluateAsync<JsonElement>(Measure);

    private static async Task UntilAsync(Visit visit, string isSo) => await visit.Page.WaitForFunctionAsync($"() => ({isSo})(document.querySelector('.whole'))");

    private static int Length(int run) => 1 + (run % 9);

    private static bool Is(JsonElement seen, string name) => seen.GetProperty(name).GetBoolean();

    // No sample has rows of hundreds of runs, so the page's data is changed on its way: runs of all lengths up to nine.
    private async Task<(Visit Visit, WeavePage Page)> OpenLongAsync(int width, int height)
    {
        var visit = await OpenAsync(new Reader(width, height));
        await visit.Page.RouteAsync("**" + Address, async route =>
        {
            var answer = await route.FetchAsync();
            var body = Data().Replace(await answer.TextAsync(), found =>
            {
                var data = JsonNode.Parse(found.Groups["data"].Value)!.AsObject();
                var runs = string.Concat(Enumerable.Range(1, Runs).Select(run => FormattableString.Invariant($"{(run % 2 == 0 ? 'o' : 'u')}{Length(run)}")));
                data["readings"] = new JsonArray([.. data["readings"]!.AsArray().Select(reading => JsonValue.Create(reading!.GetValue<string>()[..1] + runs))]);
                data["ends"] = Enumerable.Range(1, Runs).Sum(Length);
                return found.Groups["before"].Value + data.ToJsonString() + "</script>";
            });
            await route.FulfillAsync(new RouteFulfillOptions { Response = answer, Body = body });
        });
        var page = new WeavePage(visit);
        await page.GoAsync(Address);
        await ByRowsAsync(visit, page);
        return (visit, page);
    }

    [GeneratedRegex("(?<before><script type=\"application/json\" id=\"piece\">)(?<data>[^<]*)</script>", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Data();
}
