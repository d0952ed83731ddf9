using System.Buffers.Binary;
using System.Net;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class ClothPageTests
{
    private static readonly PatternDocument Striped = Charts.DiamondPiece with
    {
        Title = "Harbour lights",
        Cloth = ClothLook.Plain with { Warp = new YarnLook(new Thickness(2, ThicknessUnit.Millimetres), "white"), Wefts = [new YarnLook(null, "rust")], Ends = [new ColourRun(6, "blue"), new ColourRun(2, "sea")], Own = [new OwnColour("sea", new Rgb(0x12, 0x34, 0x56))] },
    };

    [Fact]
    public async Task Readers_see_both_sides_of_the_cloth_with_a_text_for_each()
    {
        await using var shop = await IssuedShop.OpenAsync(Striped);
        var page = await shop.Reader.GetAsync(shop.Page);
        var piece = Piece.Of(Striped);
        var pictures = page.Html.QuerySelectorAll("figure.cloth svg");
        Assert.Equal(
            [Wording.English.ClothDescription(piece, true), Wording.English.ClothDescription(piece, true, ClothSide.Back)],
            pictures.Select(picture => picture.QuerySelector("desc")!.TextContent));
        Assert.All(pictures, picture => Assert.Contains("#123456", picture.InnerHtml, StringComparison.Ordinal));
        Assert.Equal(["Warp: 6 blue, 2 sea, repeated; 2 mm", "Weft: rust"], page.Html.QuerySelectorAll("ul.yarns li").Select(line => line.TextContent));
        Assert.Empty(Svg.Strange(pictures[0].OuterHtml));
    }

    [Fact]
    public async Task A_pattern_without_colours_names_none()
    {
        await using var shop = await IssuedShop.OpenAsync(Striped with { Cloth = ClothLook.Plain });
        var page = await shop.Reader.GetAsync(shop.Page);
        Assert.Equal(2, page.Html.QuerySelectorAll("figure.cloth svg").Length);
        Assert.Null(page.Html.QuerySelector("ul.yarns"));
    }

    [Fact]
    public async Task A_link_is_shown_with_a_picture_where_the_shop_has_an_address()
    {
        await using var shop = await IssuedShop.OpenAsync(Striped, "--PatternShop:PublicAddress=https://patterns.example.org");
        var page = await shop.Reader.GetAsync(shop.Page);
        string? Meta(string name) => page.Html.QuerySelector($"meta[property='og:{name}']")?.GetAttribute("content");
        Assert.Equal($"https://patterns.example.org/p/{shop.Id}/v/1/cloth.png", Meta("image"));
        Assert.Equal(("image/png", "1200", "630", "Harbour lights"), (Meta("image:type"), Meta("image:width"), Meta("image:height"), Meta("title")));
        Assert.StartsWith("Picture of the cloth, face", Meta("image:alt"), StringComparison.Ordinal);

        var picture = await shop.Reader.GetAsync($"/p/{shop.Id}/v/1/cloth.png");
        Assert.Equal((HttpStatusCode.OK, "image/png", "public, max-age=86400"), (picture.Status, picture.Headers["Content-Type"], picture.Headers["Cache-Control"]));
        // PNG, W3C recommendation: 8 bytes of signature, then IHDR with width and height
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], picture.Body[..8]);
        Assert.Equal((1200u, 630u), (BinaryPrimitives.ReadUInt32BigEndian(picture.Body.AsSpan(16)), BinaryPrimitives.ReadUInt32BigEndian(picture.Body.AsSpan(20))));
        Assert.Equal(picture.Body, (await shop.Reader.GetAsync($"/p/{shop.Id}/v/1/cloth.png")).Body);
        Assert.Equal($"\"{PatternWriter.Hash(picture.Body)}\"", picture.Headers["ETag"]);
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync($"/p/{shop.Id}/v/2/cloth.png")).Status);
    }

    [Fact]
    public async Task Without_an_address_no_page_names_a_picture()
    {
        await using var shop = await IssuedShop.OpenAsync(Striped);
        Assert.Empty((await shop.Reader.GetAsync(shop.Page)).Html.QuerySelectorAll("meta[property^='og:image']"));
    }
}
