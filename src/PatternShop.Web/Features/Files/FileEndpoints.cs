using Microsoft.Net.Http.Headers;

namespace PatternShop.Web;

/// <summary>Issued files at the hash of their bytes: what is at such an address never changes.</summary>
internal static class FileEndpoints
{
    private const int HashLength = 64;

    public static void MapFiles(this IEndpointRouteBuilder routes)
    {
        routes.MapPage("/files/{hash}/{name}", FileAsync);
        routes.MapPage("/files/{hash}/photo.jpg", FileAsync).WithMetadata(PhotoEndpoints.Policy);
    }

    private static async Task<IResult> FileAsync(string hash, HttpContext http, FileShelf shelf)
    {
        if (hash.Length != HashLength || !hash.All(char.IsAsciiHexDigitLower) || await shelf.FindAsync(hash, http.RequestAborted) is not { } file)
        {
            return Results.NotFound();
        }

        http.Response.Headers.CacheControl = "public, max-age=31536000, immutable";
        // a photo is looked at, everything else is kept
        return Results.Bytes(file.Bytes, file.MediaType, file.MediaType == PhotoEndpoints.MediaType ? null : file.Name, enableRangeProcessing: true, entityTag: new EntityTagHeaderValue($"\"{hash}\""));
    }
}
