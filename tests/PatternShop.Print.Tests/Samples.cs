using PatternShop.Tests.Shared;
using PatternShop.Weave;

namespace PatternShop.Print.Tests;

/// <summary>The sample documents, and pieces of kinds that are not among them.</summary>
internal static class Samples
{
    /// <summary>Every sample by the name of its file.</summary>
    public static IReadOnlyDictionary<string, PatternDocument> All { get; } = Directory
        .EnumerateFiles(Checkout.Path("tests/Shared/Samples"), "*.json")
        .Order(StringComparer.Ordinal)
        .ToDictionary(file => Path.GetFileNameWithoutExtension(file), Read, StringComparer.Ordinal);

    public static IEnumerable<string> Names => All.Keys;

    /// <summary>The diamond of the whole pieces: 23 ends, 22 rows.</summary>
    public static PatternDocument Diamond => Charts.DiamondPiece;

    /// <summary>A piece with words in scripts that the house font lacks, of which some no font of ours has.</summary>
    public static PatternDocument ManyScripts { get; } = Diamond with
    {
        Title = "Ένα μικρό σχέδιο — с каймой 中文",
        Language = "el",
        Notes = "Beat gently. 🧶 Leave long tails.\nשלום.",
        Licence = "Weave it, sell what you weave, do not sell the chart.",
    };

    /// <summary>A piece without repeats whose chart takes several sheets.</summary>
    public static PatternDocument Large { get; } = Charts.Document("x") with
    {
        Title = "Wide and long",
        Motif = BitGrid.Create(64, 90, (row, end) => ((row * 7) + (end * 3) + (row * end / 5)) % 7 < 3),
        Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, 64, 1)]),
    };

    public static byte[] Print(PatternDocument document, Paper? paper = null) =>
        Printable.Make(Piece.Of(document), VersionLine.NotIssued, paper ?? Paper.A4, Wording.English);

    private static PatternDocument Read(string file) => PatternReader.Read(File.ReadAllBytes(file)) is ReadResult.Read read
        ? read.Document
        : throw new InvalidOperationException($"{file} is not a pattern document.");
}
