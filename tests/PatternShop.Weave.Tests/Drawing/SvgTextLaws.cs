using System.Xml.Linq;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class SvgTextLaws
{
    private static readonly XNamespace Svg = "http://www.w3.org/2000/svg";

    [Fact]
    public void Charts_are_well_formed_and_the_makers_words_are_only_text() => Law.OfDocuments(
        document =>
        {
            var piece = Piece.Of(document);
            var drawing = ChartDrawing.Of(piece, 5, Wording.English);
            var root = Parse(SvgText.Of(drawing, document.Title, document.Notes, "chart"));
            Assert.Equal(Svg + "svg", root.Name);
            Assert.Equal(document.Title, root.Element(Svg + "title")!.Value);
            Assert.Equal(document.Notes, root.Element(Svg + "desc")!.Value);
            string[] allowed = ["svg", "title", "desc", "g", "path", "text"];
            Assert.All(root.DescendantsAndSelf(), element => Assert.Contains(element.Name.LocalName, allowed));
            Assert.Equal(["chart-title", "chart-desc"], root.Descendants().Attributes("id").Select(id => id.Value));
        },
        small: 200,
        full: 5_000);

    [Theory]
    [InlineData("</title><script>alert(1)</script>")]
    [InlineData("a & b < c > \"d\" 'e' ]]> &amp; <!-- -->")]
    public void Markup_in_a_title_stays_text(string title)
    {
        var drawing = new Drawing(10, 10, [new Label(1, 2, 3, title, TextAnchor.Start, Bold: false, Shade.Black)]);
        var root = Parse(SvgText.Of(drawing, title, title, "x"));
        Assert.Equal([title, title, title], root.Descendants().Where(element => element.Name.LocalName is "title" or "desc" or "text").Select(element => element.Value));
        Assert.Empty(root.Descendants(Svg + "script"));
    }

    [Fact]
    public void A_large_chart_is_few_elements()
    {
        var motif = BitGrid.Create(100, 100, (row, end) => (row + end) % 4 < 2);
        var document = Charts.Document("x") with { Motif = motif, Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, 100, 1)]) };
        var root = Parse(SvgText.Of(ChartDrawing.Of(Piece.Of(document), 3, Wording.English), "Large", "", "x"));
        Assert.InRange(root.Descendants(Svg + "path").Count(), 1, 500);
    }

    [Fact]
    public void Numbers_are_written_with_points_and_three_decimals() => Assert.Contains(
        "<path fill=\"#2b2b2b\" d=\"M0.123 1h2.5v10h-2.5z\"/>",
        SvgText.Of(new Drawing(20, 20, [new Box(0.12345, 1, 2.5, 10, Shade.Dark)]), "t", "d", "x"),
        StringComparison.Ordinal);

    private static XElement Parse(string svg) => XDocument.Parse(svg, LoadOptions.PreserveWhitespace).Root!;
}
