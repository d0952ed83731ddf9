using System.Globalization;
using Microsoft.Playwright;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>
/// Looks at a page in light, dark and high contrast at 320, 768 and 1280 px: all that axe knows once, and in every look what a theme or a
/// width can change. The quick run takes each theme and each width once; the full run all nine looks, and colours forced by the system.
/// </summary>
internal static class Looking
{
    private static readonly int[] Widths = [320, 768, 1280];

    private static readonly PageEmulateMediaOptions[] Themes =
    [
        new() { ColorScheme = ColorScheme.Light, Contrast = Contrast.NoPreference, ForcedColors = ForcedColors.None },
        new() { ColorScheme = ColorScheme.Dark, Contrast = Contrast.NoPreference, ForcedColors = ForcedColors.None },
        new() { ColorScheme = ColorScheme.Light, Contrast = Contrast.More, ForcedColors = ForcedColors.None },
        new() { ColorScheme = ColorScheme.Dark, Contrast = Contrast.More, ForcedColors = ForcedColors.None },
        new() { ColorScheme = ColorScheme.Dark, Contrast = Contrast.More, ForcedColors = ForcedColors.Active },
    ];

    private static readonly (int Theme, int Width)[] Quick = [(0, 1280), (1, 320), (2, 768)];

    private static IEnumerable<(int Theme, int Width)> Looks => Effort.IsFull
        ? from theme in Enumerable.Range(0, Themes.Length) from width in Widths.Reverse() select (theme, width)
        : Quick;

    /// <summary>What is wrong with the page that stands there, which is known by its heading first.</summary>
    public static async Task<IReadOnlyList<string>> FaultsAsync(Visit visit, string heading)
    {
        var address = new Uri(visit.Page.Url).PathAndQuery;
        var shown = visit.Page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Name = heading, Exact = true }).First;
        var faults = new List<string>();
        foreach (var (theme, width) in Looks)
        {
            await visit.Page.EmulateMediaAsync(Themes[theme]);
            await visit.Page.SetViewportSizeAsync(width, 900);
            await Assertions.Expect(shown).ToBeVisibleAsync();
            Assert.Equal(width, await visit.Page.EvaluateAsync<int>("innerWidth"));
            var look = string.Create(CultureInfo.InvariantCulture, $"{address}, look {theme}, {width} px");
            faults.AddRange((theme == 0 && width == 1280 ? await Axe.FindingsAsync(visit) : await Axe.LooksAsync(visit, Themes[theme].ForcedColors == ForcedColors.Active)).Select(finding => $"{look}: {finding}"));
            faults.AddRange((await Width.OverflowAsync(visit)).Select(wide => $"{look}: {wide}"));
            faults.AddRange((await ContrastAsync(visit, Themes[theme].Contrast == Contrast.More)).Select(soft => $"{look}: {soft}"));
        }

        await visit.Page.EmulateMediaAsync(Themes[0]);
        await visit.Page.SetViewportSizeAsync(Reader.Desk.Width, Reader.Desk.Height);
        return faults;
    }

    // soft words become as strong as the others where more contrast is asked for, and only there
    private static Task<string[]> ContrastAsync(Visit visit, bool more) => visit.Page.EvaluateAsync<string[]>(
        """
        more => {
          const root = getComputedStyle(document.documentElement);
          const [soft, ink] = ['--soft', '--ink'].map(name => root.getPropertyValue(name).trim());
          return ink !== '' && (soft === ink) === more ? [] : [`soft words are ${soft}, others ${ink}`];
        }
        """,
        more);
}
