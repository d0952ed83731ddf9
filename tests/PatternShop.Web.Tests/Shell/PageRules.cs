using AngleSharp.Dom;
using AngleSharp.Html.Dom;

namespace PatternShop.Web.Tests;

/// <summary>What every static page must keep, so that the strict policy holds and readers of all kinds find their way.</summary>
internal static class PageRules
{
    /// <summary>What is wrong with a page; empty when all is well.</summary>
    public static IReadOnlyList<string> Faults(IHtmlDocument page) =>
    [
        .. page.QuerySelectorAll("script").Where(script => !IsModuleOrData(script)).Select(_ => "<script>"),
        .. page.QuerySelectorAll("style, iframe, object, embed, base").Select(element => $"<{element.LocalName}>"),
        .. from element in page.All
           from attribute in element.Attributes
           where IsInline(attribute)
           select $"<{element.LocalName} {attribute.Name}={attribute.Value}>",
        .. from element in page.All
           from name in new[] { "src", "href", "action", "poster" }
           let address = element.GetAttribute(name)
           where address is not null && !IsOwn(address) && !IsMarkedLink(element, address)
           select $"leads away: {address}",
        .. page.QuerySelectorAll("[id]").GroupBy(element => element.Id!, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => $"id twice: {group.Key}"),
        .. page.QuerySelectorAll("[aria-labelledby]").SelectMany(element => element.GetAttribute("aria-labelledby")!.Split(' ')).Where(id => page.GetElementById(id) is null).Select(id => $"no element {id}"),
        .. Headings(page),
        .. page.QuerySelectorAll("main").Length == 1 ? Array.Empty<string>() : ["not one main part"],
        .. page.DocumentElement.GetAttribute("lang") is { Length: > 0 } ? Array.Empty<string>() : ["no language"],
        .. page.Title is { Length: > 0 } ? Array.Empty<string>() : ["no title"],
    ];

    private static bool IsInline(IAttr attribute) =>
        attribute.Name == "style" || attribute.Name.StartsWith("on", StringComparison.OrdinalIgnoreCase) || attribute.Value.Contains("javascript:", StringComparison.OrdinalIgnoreCase);

    // a module of ours, or data, which no browser runs
    private static bool IsModuleOrData(IElement script) => script.GetAttribute("type") switch
    {
        "module" => script.GetAttribute("src") is { } source && IsOwn(source) && script.TextContent.Length == 0,
        "application/json" => !script.HasAttribute("src"),
        _ => false,
    };

    // a link that a maker gave may lead away, if it says nothing of where it comes from and vouches for nothing
    private static bool IsMarkedLink(IElement element, string address) =>
        element.LocalName == "a" && address.StartsWith("https://", StringComparison.Ordinal) && element.GetAttribute("rel") == "noopener noreferrer nofollow";

    private static bool IsOwn(string address) =>
        (address.StartsWith('/') && !address.StartsWith("//", StringComparison.Ordinal)) || address.StartsWith('#');

    private static IEnumerable<string> Headings(IHtmlDocument page)
    {
        var levels = page.QuerySelectorAll("h1, h2, h3, h4, h5, h6").Select(heading => heading.LocalName[1] - '0').ToList();
        if (levels.Count(level => level == 1) != 1)
        {
            yield return "not one heading of the first level";
        }

        foreach (var (above, level) in levels.Zip(levels.Skip(1)).Where(pair => pair.Second > pair.First + 1))
        {
            yield return $"heading {level} under {above}";
        }
    }
}
