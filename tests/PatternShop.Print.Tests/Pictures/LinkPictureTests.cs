using PatternShop.Tests.Shared;
using PatternShop.Weave;
using SkiaSharp;
using Xunit;

namespace PatternShop.Print.Tests;

public sealed class LinkPictureTests
{
    private static readonly Rgb White = new(0xF7, 0xF4, 0xEC);
    private static readonly Rgb Blue = new(0x3D, 0x66, 0x98);

    /// <summary>25 ends of 48 points are 1200; 13 rows leave 3 points above and below.</summary>
    [Fact]
    public void Every_crossing_has_the_colour_of_the_thread_that_lies_on_the_face()
    {
        var document = Of(Charts.Document(Charts.TenEndDiamond, 2, balance: 5, steps: [new Repeat(13, [new ChartRows(2, 2, 1)])]));
        using var picture = SKBitmap.Decode(LinkPicture.Png(Piece.Of(document)));
        Assert.Equal((LinkPicture.Width, LinkPicture.Height), (picture.Width, picture.Height));
        foreach (var row in Oracle.Rows(document))
        {
            for (var end = 0; end < 25; end++)
            {
                var point = picture.GetPixel((end * 48) + 24, 630 - 3 - ((row.Number - 1) * 48) - 24);
                Assert.Equal(row.Over[end] ? Blue : White, new Rgb(point.Red, point.Green, point.Blue));
            }
        }
    }

    [Theory]
    [InlineData(1, 1)]
    [InlineData(32, 1)]
    [InlineData(1, 320)]
    [InlineData(80, 240)]
    public void Pieces_of_every_shape_make_a_picture_of_one_size_and_the_same_one_twice(int repeats, int times)
    {
        var piece = Piece.Of(Of(Charts.Document(Charts.TenEndDiamond, repeats, floating: Charts.AlikeUnder, steps: [new Repeat(times, [new ChartRows(1, 10, 1)])])));
        var png = LinkPicture.Png(piece);
        Assert.Equal(png, LinkPicture.Png(piece));
        Assert.InRange(png.Length, 1_000, 300_000);
        using var picture = SKBitmap.Decode(png);
        Assert.Equal((LinkPicture.Width, LinkPicture.Height), (picture.Width, picture.Height));
    }

    private static PatternDocument Of(PatternDocument document) => document with
    {
        Gauge = new Gauge(new Density(4, DensityUnit.PerInch), new Density(4, DensityUnit.PerInch)),
        Cloth = ClothLook.Plain with { Warp = new YarnLook(null, "white"), Wefts = [new YarnLook(null, "blue")] },
    };
}
