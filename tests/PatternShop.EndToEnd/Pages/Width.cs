namespace PatternShop.EndToEnd;

/// <summary>Whether a page fits its window.</summary>
internal static class Width
{
    /// <summary>What sticks out at the right so that the page scrolls sideways; empty when all fits.</summary>
    public static Task<string[]> OverflowAsync(Visit visit) => visit.Page.EvaluateAsync<string[]>(
        """
        () => {
          const root = document.documentElement, wide = Math.min(outerWidth, innerWidth);
          if (root.scrollWidth <= wide && root.clientWidth <= wide) return [];
          const scrolls = e => e && e !== root && (getComputedStyle(e).overflowX !== 'visible' || scrolls(e.parentElement));
          return [...document.querySelectorAll('body *')]
            .filter(e => e.getBoundingClientRect().right > wide + 1 && !scrolls(e.parentElement))
            .slice(0, 5).map(e => `${e.tagName} ${e.className} ${Math.round(e.getBoundingClientRect().right)} of ${wide}`)
            .concat(`page ${root.scrollWidth} of ${wide}`);
        }
        """);
}
