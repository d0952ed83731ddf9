using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>How large pictures of the cloth are drawn. At most about 70 × 60 threads, so that a picture stays light.</summary>
internal static class ClothRooms
{
    /// <summary>On the pages of readers.</summary>
    public static ClothRoom Page { get; } = new(150, 120, Thinnest: 2, Thickest: 7);

    /// <summary>Beside the chart.</summary>
    public static ClothRoom Bench { get; } = new(105, 72, Thinnest: 1.6, Thickest: 6);

    /// <summary>In lists.</summary>
    public static ClothRoom Card { get; } = new(60, 45, Thinnest: 1.5, Thickest: 4);
}
