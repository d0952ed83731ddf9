using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>What a report is about, in words.</summary>
internal static class ReportText
{
    private const int ShortMost = 80;

    /// <summary>"Row 4 of version 2", or "Version 2" when it is about no single row.</summary>
    public static string Where(Report report, Wording words) => report.Row is { } row
        ? $"Row {words.Number(row)} of version {words.Number(report.Number)}"
        : $"Version {words.Number(report.Number)}";

    /// <summary>The beginning of a text, whole characters.</summary>
    public static string Short(string text)
    {
        var runes = text.ReplaceLineEndings(" ").EnumerateRunes().ToList();
        return runes.Count <= ShortMost ? string.Concat(runes) : string.Concat(runes.Take(ShortMost)) + "…";
    }
}
