using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Brings photos and where they are together.</summary>
internal static class PhotoLinks
{
    /// <summary>Where photos are, when pictures are at an address made from their hash.</summary>
    public static IReadOnlyList<PhotoLink> Of(IEnumerable<PhotoCard> photos, Func<string, string> address) =>
        [.. photos.Select(photo => new PhotoLink(photo.Hash, address(photo.SmallHash), photo.SmallWidth, photo.SmallHeight, address(photo.Hash)))];

    /// <summary>The photos that can be shown, in their order.</summary>
    public static IReadOnlyList<(Photo Photo, PhotoLink Link)> Join(IEnumerable<Photo> photos, IReadOnlyList<PhotoLink> links) =>
        [.. photos.Join(links, photo => photo.Hash, link => link.Hash, (photo, link) => (photo, link), StringComparer.Ordinal)];
}
