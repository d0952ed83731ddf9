namespace PatternShop.Web;

/// <summary>Where a photo is, small and large.</summary>
/// <param name="Hash">The photo's name in the document.</param>
/// <param name="Small">Where the small picture is.</param>
/// <param name="Width">Width of the small picture in pixels.</param>
/// <param name="Height">Height of the small picture in pixels.</param>
/// <param name="Large">Where the large picture is.</param>
public sealed record PhotoLink(string Hash, string Small, int Width, int Height, string Large);
