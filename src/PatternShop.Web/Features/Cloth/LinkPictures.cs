using System.Globalization;
using Microsoft.Net.Http.Headers;
using PatternShop.Print;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>
/// The pictures that links to versions are shown with, made when they are first asked for: a version never changes, and neither does its
/// picture. Known by the version's hash; those that were asked for last are kept.
/// </summary>
internal sealed class LinkPictures
{
    private const long MostBytes = 16L * 1024 * 1024;
    private readonly BoundedShelf<byte[]> _shelf = new(MostBytes, static bytes => bytes.Length);

    public byte[] Of(IssuedVersion version, Piece piece)
    {
        if (!_shelf.TryGet(version.Hash, out var bytes))
        {
            bytes = LinkPicture.Png(piece);
            _shelf.Put(version.Hash, bytes);
        }

        return bytes!;
    }
}

/// <summary>Where those pictures stand.</summary>
internal static class LinkPictureEndpoints
{
    public static void MapLinkPictures(this IEndpointRouteBuilder routes) => routes.MapPage("/p/{id}/v/{number:int}/cloth.png", PictureAsync).WithMetadata(new ShownElsewhere());

    /// <summary>The address of a version's picture, from the top of the shop.</summary>
    public static string Address(PatternId id, int number) => string.Create(CultureInfo.InvariantCulture, $"/p/{id}/v/{number}/cloth.png");

    private static async Task<IResult> PictureAsync(string id, int number, HttpContext http, VersionReader reader, LinkPictures pictures)
    {
        if (!PatternId.TryParse(id, out var pattern) || await reader.FindAsync(pattern, number, http.RequestAborted) is not { } found)
        {
            return Results.NotFound();
        }

        var bytes = pictures.Of(found.Version, found.Piece);
        http.Response.Headers.CacheControl = "public, max-age=86400";
        return Results.Bytes(bytes, LinkPicture.MediaType, entityTag: new EntityTagHeaderValue($"\"{PatternWriter.Hash(bytes)}\""));
    }
}
