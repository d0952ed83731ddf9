using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>The time zones that a maker can choose from, by region.</summary>
internal static class TimeZones
{
    public const string Utc = "UTC";

    private static readonly string[] Regions = ["Africa", "America", "Antarctica", "Arctic", "Asia", "Atlantic", "Australia", "Europe", "Indian", "Pacific"];

    /// <summary>Regions with the ids of their zones. UTC is not among them.</summary>
    public static IReadOnlyList<IGrouping<string, string>> ByRegion { get; } =
    [
        .. TimeZoneInfo.GetSystemTimeZones()
            .Select(zone => zone.Id)
            .Where(id => Regions.Contains(Region(id), StringComparer.Ordinal))
            .Order(StringComparer.Ordinal)
            .GroupBy(Region, StringComparer.Ordinal),
    ];

    /// <summary>"America/Argentina/Salta" is "Argentina, Salta" in its region.</summary>
    public static string Place(string id) => id[(id.IndexOf('/', StringComparison.Ordinal) + 1)..].Replace("/", ", ", StringComparison.Ordinal).Replace('_', ' ');

    /// <summary>The day that it is for a maker at that moment.</summary>
    public static DateOnly DayOf(Maker maker, DateTimeOffset moment) =>
        DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(moment, TimeZoneInfo.FindSystemTimeZoneById(maker.TimeZone)).DateTime);

    private static string Region(string id) => id.Split('/', 2)[0];
}
