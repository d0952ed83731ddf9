namespace PatternShop.EndToEnd;

/// <summary>Larger letters, as somebody who asks their browser for them gets them.</summary>
internal static class Larger
{
    /// <param name="visit">A window on weave-along, whose letters are 106.25 % of what the browser says.</param>
    /// <param name="percent">How large.</param>
    public static Task TextAsync(Visit visit, int percent) => visit.Page.EvaluateAsync(
        "percent => { const sheet = new CSSStyleSheet(); sheet.replaceSync(`html { font-size: ${percent * 1.0625}% }`); document.adoptedStyleSheets = [sheet]; dispatchEvent(new Event('resize')); }", percent);
}
