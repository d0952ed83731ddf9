using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>How a sheet says which copy it is.</summary>
/// <param name="Code">The short code as people read it.</param>
/// <param name="Address">The whole address that answers for the code; null while the shop has none.</param>
public sealed record Copy(string Code, string? Address);

/// <summary>A version that mended mistakes of the one before it, as its later sheets say.</summary>
/// <param name="Number">Of the version.</param>
/// <param name="Date">The day of issue.</param>
/// <param name="What">What it corrected, such as <see cref="Wording.CorrectedText"/> says it.</param>
public sealed record Correction(int Number, DateOnly Date, string What);

/// <summary>Which version of a pattern a sheet shows: an issued one, numbered and dated, or what is not issued yet.</summary>
/// <param name="Number">From 1; null when not issued.</param>
/// <param name="Date">The day of issue; null when not issued.</param>
/// <param name="Address">Where readers find this version, in full; null when it is not issued or the shop has no address.</param>
public sealed record VersionLine(int? Number, DateOnly? Date, string? Address = null)
{
    /// <summary>The copy that sheets name at their foot; null when they name none.</summary>
    public Copy? Copy { get; init; }

    /// <summary>Who made the pattern, as readers know them; empty where it is not said.</summary>
    public string Maker { get; init; } = "";

    /// <summary>To whom or how the copy is licensed, in a line at the foot of every sheet; empty for free patterns.</summary>
    public string LicenceLine { get; init; } = "";

    /// <summary>The corrections up to this version, the first one first; empty where there was none.</summary>
    public Sequence<Correction> Corrections { get; init; } = [];

    /// <summary>Whether every sheet says that it is the maker's own test print.</summary>
    public bool IsTest { get; init; }

    /// <summary>What the maker prints for themselves of what is not issued.</summary>
    public static VersionLine Test { get; } = new VersionLine(null, null) { IsTest = true };

    /// <summary>What the maker is still changing.</summary>
    public static VersionLine NotIssued { get; } = new(null, null);

    /// <summary>The line as it is printed.</summary>
    public string Text(Wording wording)
    {
        ArgumentNullException.ThrowIfNull(wording);
        return Number is { } number && Date is { } date ? wording.VersionText(number, date) : wording.NotIssuedText;
    }

    /// <summary>Maker and version as they stand under the title.</summary>
    public string FullText(Wording wording) => Maker.Length == 0 ? Text(wording) : $"{Maker} · {Text(wording)}";
}
