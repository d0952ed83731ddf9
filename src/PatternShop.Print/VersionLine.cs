using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>How a sheet says which copy it is.</summary>
/// <param name="Code">The short code as people read it.</param>
/// <param name="Address">The whole address that answers for the code; null while the shop has none.</param>
public sealed record Copy(string Code, string? Address);

/// <summary>Which version of a pattern a sheet shows: an issued one, numbered and dated, or what is not issued yet.</summary>
/// <param name="Number">From 1; null when not issued.</param>
/// <param name="Date">The day of issue; null when not issued.</param>
/// <param name="Address">Where readers find this version, in full; null when it is not issued or the shop has no address.</param>
public sealed record VersionLine(int? Number, DateOnly? Date, string? Address = null)
{
    /// <summary>The copy that sheets name at their foot; null when they name none.</summary>
    public Copy? Copy { get; init; }

    /// <summary>What the maker is still changing.</summary>
    public static VersionLine NotIssued { get; } = new(null, null);

    /// <summary>The line as it is printed.</summary>
    public string Text(Wording wording)
    {
        ArgumentNullException.ThrowIfNull(wording);
        return Number is { } number && Date is { } date ? wording.VersionText(number, date) : wording.NotIssuedText;
    }
}
