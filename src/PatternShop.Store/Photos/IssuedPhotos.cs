using System.Globalization;
using Microsoft.EntityFrameworkCore;
using PatternShop.Weave;

namespace PatternShop.Store;

/// <summary>Puts the photos that a document names among the files of a version, so that they are kept, hidden and shown again with it.</summary>
internal static class IssuedPhotos
{
    /// <summary>How the editions of photos begin; all other editions are files to be downloaded.</summary>
    public const string Edition = "photo-";

    private const string MediaType = "image/jpeg";

    /// <summary>The photos of a document; those that are not kept are named.</summary>
    public static async Task<(IReadOnlyList<IssuedFile> Files, IReadOnlyList<FieldProblem> Problems)> OfAsync(
        StoreContext context, string pattern, PatternDocument document, CancellationToken cancellationToken)
    {
        var files = new List<IssuedFile>();
        var problems = new List<FieldProblem>();
        foreach (var (place, photo) in document.Photos.Index())
        {
            if (await context.Photos.SingleOrDefaultAsync(row => row.PatternId == pattern && row.Hash == photo.Hash, cancellationToken) is { } row)
            {
                var name = Edition + (place + 1).ToString(CultureInfo.InvariantCulture);
                files.Add(new IssuedFile(name, name + ".jpg", MediaType, row.Large));
                files.Add(new IssuedFile(name + "-small", name + "-small.jpg", MediaType, row.Small));
            }
            else
            {
                problems.Add(new FieldProblem("Photos", $"The photo “{photo.Caption}” is not kept here.", "Take it out, or choose it again."));
            }
        }

        return (files, problems);
    }
}
