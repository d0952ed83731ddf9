using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Weaving on by keys and foot pedals after something else was opened, and with the screen kept on.</summary>
public sealed class HandsFreeTests(Stage stage) : Journey(stage)
{
    private const string Address = "/samples/hazel-diamonds/weave";

    // a wake lock as browsers have it, which says how often it was asked for and refuses when it is told to
    private const string WakeLock =
        """
        window.asked = 0;
        Object.defineProperty(navigator, 'wakeLock', { value: { request: async () => {
          window.asked++;
          if (localStorage.getItem('refuses')) { throw new DOMException('low battery', 'NotAllowedError'); }
          const lock = new EventTarget();
          lock.release = async () => { lock.dispatchEvent(new Event('release')); };
          window.lock = lock;
          return lock;
        } } });
        """;

    [Theory]
    [InlineData("the button that closes")]
    [InlineData("escape")]
    [InlineData("go to row")]
    [InlineData("lost row")]
    [InlineData("list")]
    [InlineData("tap on back")]
    public async Task Keys_and_pedals_go_on_at_once_after(string what)
    {
        var visit = await OpenAsync(Reader.Phone);
        var page = new WeavePage(visit);
        await page.GoAsync(Address);
        await visit.Page.EvaluateAsync("() => { for (let i = 0; i < 3; i++) document.getElementById('next').click(); }");
        var (woven, step) = await DoAsync(visit, page, what);
        Assert.Equal((woven, step), await page.KeptAsync());
        await visit.Page.WaitForFunctionAsync("() => document.activeElement.id === 'next'");
        foreach (var key in new[] { "Enter", " ", "PageDown", "ArrowRight", "ArrowDown" })
        {
            await visit.Page.Keyboard.PressAsync(key);
            Assert.Equal((key, (woven, ++step)), (key, await page.KeptAsync()));
        }

        await visit.Page.Keyboard.PressAsync("PageUp");
        Assert.Equal((woven, --step), await page.KeptAsync());
    }

    // where there is nothing more to weave, the one button that still steps has the focus
    [Fact]
    public async Task At_the_end_the_way_back_has_the_focus()
    {
        var visit = await OpenAsync(Reader.Phone);
        var page = new WeavePage(visit);
        await page.GoAsync(Address);
        await visit.Page.EvaluateAsync("() => { for (let i = 0; i < 1000; i++) document.getElementById('next').click(); }");
        await Assertions.Expect(page.Next).ToBeDisabledAsync();
        await page.More.ClickAsync();
        await visit.Page.Keyboard.PressAsync("Escape");
        await visit.Page.WaitForFunctionAsync("() => document.activeElement.id === 'back'");
    }

    [Fact]
    public async Task The_wish_to_keep_the_screen_on_is_remembered_and_a_refusal_is_told()
    {
        var visit = await OpenAsync(Reader.Phone);
        await visit.Page.AddInitScriptAsync(WakeLock);
        var page = new WeavePage(visit);
        await page.GoAsync(Address);
        Assert.Equal(0, await AskedAsync(visit));
        await page.More.ClickAsync();
        await visit.Page.GetByLabel("Keep the screen on").CheckAsync();
        Assert.Equal(1, await AskedAsync(visit));
        var refused = visit.Page.Locator("#dark");
        await Assertions.Expect(refused).ToBeHiddenAsync();

        // on another page too, and again whenever the page comes back into sight
        await page.GoAsync("/samples/first-steps/weave");
        Assert.Equal(1, await AskedAsync(visit));
        await visit.Page.EvaluateAsync("document.dispatchEvent(new Event('visibilitychange'))");
        Assert.Equal(2, await AskedAsync(visit));
        await visit.Page.EvaluateAsync("window.lock.release()");
        await Assertions.Expect(refused).ToHaveTextAsync("Your screen may go dark.");

        await visit.Page.EvaluateAsync("localStorage.setItem('refuses', 'yes')");
        await visit.Page.ReloadAsync();
        await page.UntilReadyAsync();
        await Assertions.Expect(refused).ToBeVisibleAsync();
        await page.More.ClickAsync();
        await Assertions.Expect(visit.Page.GetByLabel("Keep the screen on")).ToBeCheckedAsync();
        await Assertions.Expect(visit.Page.Locator("#awake-refused")).ToBeVisibleAsync();
        Assert.Empty(await Axe.FindingsAsync(visit));

        // the next time it is granted, nothing is told any more
        await visit.Page.EvaluateAsync("() => { localStorage.removeItem('refuses'); document.dispatchEvent(new Event('visibilitychange')); }");
        await Assertions.Expect(refused).ToBeHiddenAsync();
        await visit.Page.GetByLabel("Keep the screen on").UncheckAsync();
        await visit.Page.ReloadAsync();
        await page.UntilReadyAsync();
        Assert.Equal(0, await AskedAsync(visit));
    }

    [Fact]
    public async Task A_browser_that_cannot_keep_the_screen_on_says_so()
    {
        var visit = await OpenAsync(Reader.Phone);
        await visit.Page.AddInitScriptAsync("Object.defineProperty(navigator, 'wakeLock', { value: undefined })");
        var page = new WeavePage(visit);
        await page.GoAsync(Address);
        await page.More.ClickAsync();
        await Assertions.Expect(visit.Page.GetByLabel("Keep the screen on")).ToBeDisabledAsync();
        await Assertions.Expect(visit.Page.Locator("#awake-missing")).ToContainTextAsync("This browser can't keep the screen on.");
        await Assertions.Expect(visit.Page.Locator("#dark")).ToBeHiddenAsync();
    }

    private static Task<int> AskedAsync(Visit visit) => visit.Page.EvaluateAsync<int>("window.asked");

    // what is opened and closed again, and the place afterwards
    private static async Task<(int Woven, int Step)> DoAsync(Visit visit, WeavePage page, string what)
    {
        if (what == "tap on back")
        {
            await page.Back.ClickAsync();
            return (0, 2);
        }

        await page.More.ClickAsync();
        switch (what)
        {
            case "escape":
                await visit.Page.Keyboard.PressAsync("Escape");
                return (0, 3);
            case "go to row":
                await visit.Page.Locator("#jump-row").FillAsync("12");
                await visit.Page.Keyboard.PressAsync("Enter");
                return (11, 0);
            case "lost row":
                await visit.Page.Locator("#lost-open").ClickAsync();
                await visit.Page.Keyboard.PressAsync("Escape");
                return (0, 3);
            case "list":
                await visit.Page.Locator("#show-rows").ClickAsync();
                await visit.Page.WaitForFunctionAsync("() => document.activeElement.id === 'one-row'");
                await visit.Page.Keyboard.PressAsync("Enter");
                return (0, 3);
            default:
                await visit.Page.GetByText("Go on weaving").ClickAsync();
                return (0, 3);
        }
    }
}
