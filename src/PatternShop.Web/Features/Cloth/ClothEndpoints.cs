using System.Globalization;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>The picture beside the chart: asked for by the browser when it likes, so that strokes wait for nothing.</summary>
internal static class ClothEndpoints
{
    private const string BackName = "back";

    public static void MapCloth(this IEndpointRouteBuilder studio) => studio.MapPage("/patterns/{id}/cloth/{side}.svg", PictureAsync);

    /// <summary>Where the picture of a pattern stands; the revision makes the address another one with every change.</summary>
    public static string Address(string id, ClothSide side, long revision) =>
        string.Create(CultureInfo.InvariantCulture, $"/studio/patterns/{id}/cloth/{Name(side)}.svg?revision={revision}");

    private static string Name(ClothSide side) => side == ClothSide.Back ? BackName : "face";

    private static async Task<IResult> PictureAsync(string id, string side, HttpContext http, Workroom workroom, Wording words)
    {
        ClothSide[] sides = [ClothSide.Face, ClothSide.Back];
        var asked = sides.Where(one => Name(one) == side).ToList();
        if (asked.Count == 0
            || !PatternId.TryParse(id, out var pattern)
            || await workroom.OpenAsync(http.User.Maker(), pattern, http.RequestAborted) is not { } open)
        {
            return Results.NotFound();
        }

        var piece = Piece.Of(open.Document);
        var whole = ClothDrawing.ShowsAll(piece, ClothRooms.Bench);
        http.Response.Headers.CacheControl = "private, max-age=86400";
        return Results.Text(
            SvgText.Of(ClothDrawing.Of(piece, ClothRooms.Bench, asked[0]), words.ClothCaption(whole, asked[0]), words.ClothDescription(piece, whole, asked[0]), "cloth"),
            "image/svg+xml");
    }
}
