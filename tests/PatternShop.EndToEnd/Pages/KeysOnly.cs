using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Somebody who has a keyboard and nothing else: goes from control to control by the tab key, sees where they are, and types.</summary>
internal sealed class KeysOnly(Visit visit)
{
    // more stops than any page has
    private const int Stops = 250;

    private IPage Page => visit.Page;

    /// <summary>Goes on by the tab key until the focus is there; it shows at every stop on the way.</summary>
    /// <param name="target">Where to go.</param>
    public async Task GoToAsync(ILocator target)
    {
        await target.WaitForAsync();
        var hidden = new SortedSet<string>(StringComparer.Ordinal);
        for (var stop = 0; stop < Stops; stop++)
        {
            var seen = await target.EvaluateAsync<string[]>(Look);
            if (seen[1].Length > 0)
            {
                hidden.Add(seen[1]);
            }

            if (seen[0] == "there")
            {
                Assert.Empty(hidden);
                return;
            }

            await PressAsync("Tab");
        }

        Assert.Fail($"The tab key does not lead to {target}.");
    }

    public Task PressAsync(string key) => Page.Keyboard.PressAsync(key);

    public async Task PressAsync(string key, int times)
    {
        for (var time = 0; time < times; time++)
        {
            await PressAsync(key);
        }
    }

    /// <summary>Goes to a field and types over what stands there.</summary>
    public async Task TypeAsync(string label, string text)
    {
        await GoToAsync(Page.GetByLabel(label, new PageGetByLabelOptions { Exact = true }));
        await PressAsync("Control+a");
        await Page.Keyboard.TypeAsync(text);
    }

    /// <summary>Goes to a link or button and presses enter.</summary>
    public async Task EnterAsync(AriaRole role, string name)
    {
        await GoToAsync(Page.GetByRole(role, new PageGetByRoleOptions { Name = name, Exact = true }));
        await PressAsync("Enter");
    }

    // an outline on the control itself, or, where the control is hidden, on the words that stand for it
    private const string Look =
        """
        it => {
          const now = document.activeElement;
          const shows = one => {
            const style = one && getComputedStyle(one);
            return style && ((style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2) || style.boxShadow !== 'none');
          };
          const seen = now === document.body || now === document.documentElement || shows(now) || shows(now.nextElementSibling) || shows(now.closest('label'));
          return [it === now ? "there" : "", seen ? "" : now.outerHTML.slice(0, 200)];
        }
        """;
}
