using PatternShop.Weave;
using Xunit;

namespace PatternShop.Print.Tests;

public sealed class FinishedFileTests
{
    [Fact]
    public void Sample_plan_to_file()
    {
        foreach (var (name, document) in Pieces.All)
        {
            File.WriteAllBytes(Path.Combine("/tmp/pt", $"{name}.pdf"), Printable.Make(Piece.Of(document), VersionLine.NotIssued, Paper.A4, Wording.English));
            File.WriteAllBytes(Path.Combine("/tmp/pt", $"{name}-l.pdf"), Printable.Make(Piece.Of(document), VersionLine.NotIssued, Paper.Letter, Wording.English));
        }
    }
}
