using System.Globalization;

namespace PatternShop.Web;

/// <summary>Makes ids that tie labels to their fields.</summary>
internal static class FieldId
{
    private static long _last;

    public static string Next() => "f" + Interlocked.Increment(ref _last).ToString(CultureInfo.InvariantCulture);
}
