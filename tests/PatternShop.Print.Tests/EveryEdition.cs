using PatternShop.Weave;

namespace PatternShop.Print.Tests;

/// <summary>Every file that is made of one piece: its words in many scripts, with links, a code and a licence line.</summary>
internal static class EveryEdition
{
    private static readonly Piece Made = Piece.Of(Samples.ManyScripts);
    private static readonly Piece Before = Piece.Of(Samples.ManyScripts with { Motif = Samples.ManyScripts.Motif.With(2, 4, true) });

    /// <summary>What the code at the foot of every sheet says.</summary>
    public const string Address = "https://weave.example.org/c/ABCD1234";

    public static VersionLine Version { get; } = new(2, new DateOnly(2026, 11, 24), "https://weave.example.org/p/0123456789/x/v/2")
    {
        Copy = new Copy("ABCD-1234", Address),
        Maker = "Studio at the mill",
        LicenceLine = "For one loom",
    };

    /// <summary>How each is made, by its name.</summary>
    public static IReadOnlyDictionary<string, Func<byte[]>> All { get; } = new Dictionary<string, Func<byte[]>>(
    [
        .. from paper in new[] { Paper.A4, Paper.Letter }
           from setting in PrintSetting.All
           select new KeyValuePair<string, Func<byte[]>>($"{paper.Name} {setting.Name}", () => Printable.Make(Made, Version, paper, Wording.English, setting)),
        new("test print", () => Printable.Make(Made, VersionLine.Test, Paper.A4, Wording.English)),
        new("cover, A4", () => RowCover.Make(Made, Version, Paper.A4, Wording.English)),
        new("cover, Letter", () => RowCover.Make(Made, Version, Paper.Letter, Wording.English)),
        new("slip", () => CorrectionSlip.Make(Before, Made, (new VersionLine(1, new DateOnly(2026, 11, 5)), Version), Paper.A4, Wording.English)),
    ],
    StringComparer.Ordinal);

    /// <summary>Those whose sheets carry the code.</summary>
    public static IEnumerable<string> WithCode => All.Keys.Where(name => name != "test print");

    /// <summary>The paper of one, in millimetres.</summary>
    public static Paper PaperOf(string name) => name.Contains("Letter", StringComparison.Ordinal) ? Paper.Letter : Paper.A4;
}
