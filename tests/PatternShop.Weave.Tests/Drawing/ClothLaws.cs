using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class ClothLaws
{
    private static readonly ClothRoom Plenty = new(2_000, 20_000, Thinnest: 0.01, Thickest: 4);

    [Fact]
    public void Every_crossing_of_the_face_shows_what_the_definitions_give() => Law.OfDocuments(AssertFace, small: 250, full: 20_000);

    [Fact]
    public void A_crossing_that_shows_the_other_thread_would_be_seen() => Law.CanFail(document =>
        AssertFace(document, Piece.Of(document with { Motif = document.Motif.With(0, 0, !document.Motif[0, 0]) })));

    /// <summary>Turned like a page: over and under exchanged and left and right exchanged, colours with their threads. Of a part, the same part.</summary>
    [Fact]
    public void The_back_is_the_face_exchanged_and_mirrored() => Law.OfDocuments(
        document =>
        {
            var piece = Piece.Of(document);
            foreach (var room in new[] { Plenty, new ClothRoom(20, 12, Thinnest: 2, Thickest: 4) })
            {
                var (face, ends, rows) = Seen(piece, room, ClothSide.Face);
                var (back, backEnds, backRows) = Seen(piece, room, ClothSide.Back);
                Assert.Equal((ends, rows), (backEnds, backRows));
                for (var row = 0; row < rows; row++)
                {
                    for (var end = 0; end < ends; end++)
                    {
                        var (here, there) = (face.Crossing(end, row), back.Crossing(ends - 1 - end, row));
                        Assert.NotEqual(SeenCloth.IsWeft(here), SeenCloth.IsWeft(there));
                    }
                }
            }
        },
        small: 100,
        full: 5_000);

    /// <summary>Between threads the ground shows, and between two rows the warp, whatever crosses beside it.</summary>
    [Fact]
    public void Gaps_show_what_lies_behind() => DocumentGen.Documents.Sample(
        document =>
        {
            var thin = new YarnLook(new Thickness(0.0001m, ThicknessUnit.Millimetres), null);
            var piece = Piece.Of(document with { Cloth = document.Cloth with { Warp = thin, Wefts = Enumerable.Repeat(thin, document.Rows.Wefts.Count).ToSequence() } });
            var (seen, ends, rows) = Seen(piece, Plenty, ClothSide.Face);
            for (var end = 0; end < ends; end++)
            {
                Assert.IsType<Box>(seen.At(end + 0.1, 0.1));
                Assert.False(SeenCloth.IsWeft(Assert.IsType<Strip>(seen.At(end + 0.5, rows - 0.1))));
                Assert.True(SeenCloth.IsWeft(Assert.IsType<Strip>(seen.At(end + 0.1, rows - 0.5))));
            }
        },
        iter: Effort.Of(100, 5_000));

    /// <summary>Wraps lie side by side, so as many ends as wraps to the inch cover it (common practice, no source); 25.4 mm are an inch (1959).</summary>
    [Theory]
    [InlineData("12", ThicknessUnit.WrapsPerInch, "12", 1)]
    [InlineData("12", ThicknessUnit.WrapsPerInch, "6", 0.5)]
    [InlineData("12", ThicknessUnit.WrapsPerInch, "24", 1)]
    [InlineData("2.54", ThicknessUnit.Millimetres, "4", 0.4)]
    [InlineData("25.4", ThicknessUnit.Millimetres, "0.5", 0.5)]
    public void Cover_is_thickness_times_sett(string amount, ThicknessUnit unit, string sett, double cover)
    {
        static decimal Of(string text) => decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
        var document = Charts.Document("x./.x", 4) with { Gauge = new Gauge(new Density(Of(sett), DensityUnit.PerInch), new Density(Of(sett), DensityUnit.PerInch)) };
        var look = new YarnLook(new Thickness(Of(amount), unit), null);
        var drawing = ClothDrawing.Of(Piece.Of(document with { Cloth = new ClothLook(look, [look], [], [], []) }), Plenty);
        var pitch = drawing.Width / 8;
        Assert.All(drawing.Shapes.OfType<Strip>().GroupBy(SeenCloth.IsWeft), threads => Assert.Equal(cover, threads.Max(strip => strip.Thickness) / pitch, 9));
    }

    [Theory]
    [InlineData("4", "4", 1)]
    [InlineData("4", "8", 2)]
    [InlineData("10", "5", 0.5)]
    public void The_picture_has_the_proportions_of_the_cloth(string sett, string rows, double ratio)
    {
        static Density Per(string amount) => new(decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), DensityUnit.PerInch);
        var document = Charts.Document("x./.x", 4, steps: [new Repeat(4, [new ChartRows(1, 2, 1)])]) with { Gauge = new Gauge(Per(sett), Per(rows)) };
        var drawing = ClothDrawing.Of(Piece.Of(document), Plenty);
        Assert.Equal(ratio, drawing.Width / drawing.Height, 9);
    }

    [Fact]
    public void A_large_piece_is_a_part_in_few_elements()
    {
        var motif = BitGrid.Create(500, 1000, (row, end) => (row + end) % 2 == 0);
        var document = Charts.Document("x") with { Motif = motif, Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new Repeat(200, [new ChartRows(1, 500, 1)])]) };
        var piece = Piece.Of(document);
        var room = new ClothRoom(150, 120, Thinnest: 2, Thickest: 6);
        Assert.False(ClothDrawing.ShowsAll(piece, room));
        var drawing = ClothDrawing.Of(piece, room);
        Assert.InRange(drawing.Width, 148, 150);
        Assert.InRange(drawing.Height, 118, 120);
        var svg = SvgText.Of(drawing, "Large", "", "x");
        Assert.InRange(svg.Length, 10_000, 200_000);
        Assert.InRange(svg.Split("<path").Length, 4, 12);
    }

    [Fact]
    public void A_picture_of_a_piece_without_colours_has_the_shades_of_paper() => Assert.All(
        ClothDrawing.Of(Piece.Of(Charts.Document(Charts.TenEndDiamond)), Plenty).Shapes.OfType<Strip>(),
        strip => Assert.Null(strip.Colour));

    [Fact]
    public void What_is_seen_is_said_in_words()
    {
        var piece = Piece.Of(Charts.Document("x../.x.", steps: [new Repeat(2, [new ChartRows(1, 2, 1)])]));
        Assert.Equal(
            "Picture of the cloth, face, the whole piece: a dark weft over and under a light warp, as sett and row density put them. Of the 12 crossings of the piece the weft is seen at 4.",
            Wording.English.ClothDescription(piece, whole: true));
        var coloured = Piece.Of(piece.Document with { Cloth = new ClothLook(new YarnLook(null, "cream"), [new YarnLook(null, "rust")], [], [new ColourRun(2, "red"), new ColourRun(1, "blue")], []) });
        Assert.Equal(
            "Picture of the cloth, back, its lower right corner: a weft of 2 red, 1 blue, repeated, over and under a cream warp, as sett and row density put them. Of the 12 crossings of the piece the weft is seen at 8.",
            Wording.English.ClothDescription(coloured, whole: false, ClothSide.Back));
    }

    [Fact]
    public void What_to_take_names_an_order_in_place_of_the_one_colour()
    {
        var two = new Thickness(2, ThicknessUnit.Millimetres);
        var one = Charts.Document("x../.x.") with { Cloth = new ClothLook(new YarnLook(two, "cream"), [new YarnLook(null, "rust")], [new ColourRun(2, "red")], [], []) };
        Assert.Equal(["Warp: 2 red, repeated; 2 mm", "Weft: rust"], Wording.English.YarnsToTake(one));
        var many = one with
        {
            Rows = one.Rows with { Wefts = [new Weft(Side.Left), new Weft(Side.Left)], Steps = [new ChartRows(1, 1, 1), new ChartRows(2, 2, 2)] },
            Cloth = one.Cloth with { Ends = [], Wefts = [new YarnLook(two, "rust"), new YarnLook(null, "blue")], Rows = [new ColourRun(3, "moss"), new ColourRun(1, "sand")] },
        };
        Assert.Equal(["Warp: cream, 2 mm", "Rows: 3 moss, 1 sand, repeated", "Weft 1: 2 mm"], Wording.English.YarnsToTake(many));
        Assert.Empty(Wording.English.YarnsToTake(one with { Cloth = ClothLook.Plain }));
    }

    private static void AssertFace(PatternDocument document) => AssertFace(document, Piece.Of(document));

    private static void AssertFace(PatternDocument document, Piece drawn)
    {
        var (seen, ends, rows) = Seen(drawn, Plenty, ClothSide.Face);
        var oracle = Oracle.Rows(document);
        Assert.Equal((oracle[0].Over.Count, oracle.Count), (ends, rows));
        for (var row = 0; row < rows; row++)
        {
            for (var end = 0; end < ends; end++)
            {
                var strip = seen.Crossing(end, row);
                Assert.Equal(oracle[row].Over[end], SeenCloth.IsWeft(strip));
                Assert.Equal(SeenCloth.IsWeft(strip) ? WeftColour(document, oracle[row]) : WarpColour(document, end, ends), strip.Colour);
            }
        }
    }

    private static (SeenCloth Seen, int Ends, int Rows) Seen(Piece piece, ClothRoom room, ClothSide side)
    {
        var drawing = ClothDrawing.Of(piece, room, side);
        // the first strips of each direction are the whole threads
        var strips = drawing.Shapes.OfType<Strip>().ToList();
        var ends = strips.Where(strip => !SeenCloth.IsWeft(strip)).Select(strip => Math.Round(strip.X1, 6)).Distinct().Count();
        var rows = strips.Where(SeenCloth.IsWeft).Select(strip => Math.Round(strip.Y1, 6)).Distinct().Count();
        return (new SeenCloth(drawing, ends, rows), ends, rows);
    }

    // the orders written out thread by thread, from the fields of the document alone
    private static Rgb? WarpColour(PatternDocument document, int column, int ends)
    {
        var order = WrittenOut(document.Cloth.Ends);
        var floating = document.Width.Floating is null ? 0 : 1;
        var end = column < floating ? 0 : column >= ends - floating ? ends - (2 * floating) - 1 : column - floating;
        return Shown(document, order.Count > 0 ? order[end % order.Count] : document.Cloth.Warp.Colour);
    }

    private static Rgb? WeftColour(PatternDocument document, OracleRow row)
    {
        var order = WrittenOut(document.Cloth.Rows);
        var look = row.Weft <= document.Cloth.Wefts.Count ? document.Cloth.Wefts[row.Weft - 1].Colour : null;
        return Shown(document, order.Count > 0 ? order[(row.Number - 1) % order.Count] : look);
    }

    private static List<string> WrittenOut(Sequence<ColourRun> order) => [.. order.SelectMany(run => Enumerable.Repeat(run.Colour, run.Count))];

    private static Rgb? Shown(PatternDocument document, string? name) =>
        name is null ? null : NamedColours.All.Concat(document.Cloth.Own).Single(colour => colour.Name == name).Value;
}
