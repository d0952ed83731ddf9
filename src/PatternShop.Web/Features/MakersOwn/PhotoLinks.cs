using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Brings photos and where they are together.</summary>
internal static class PhotoLinks
{
    /// <summary>The photos that can be shown, in their order.</summary>
    public static IReadOnlyList<(Photo Photo, PhotoLink Link)> Join(IEnumerable<Photo> photos, IReadOnlyList<PhotoLink> links) =>
        [.. photos.Join(links, photo => photo.Hash, link => link.Hash, (photo, link) => (photo, link), StringComparer.Ordinal)];
}
