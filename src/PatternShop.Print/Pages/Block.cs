namespace PatternShop.Print;

/// <summary>
/// Something that is laid out down the page. Immutable: asked to fit into a room, it answers what is painted there and
/// hands back the block that goes on elsewhere. Places are relative to the room's top left corner.
/// </summary>
internal abstract record Block
{
    /// <summary>Lays out as much as fits.</summary>
    /// <param name="width">Width of the room in millimetres.</param>
    /// <param name="height">Height of the room in millimetres.</param>
    /// <param name="fresh">Whether nothing stands above on the page. Then something must be placed even if it sticks out, because no other page has more room.</param>
    public abstract Fit Fit(double width, double height, bool fresh);
}

/// <summary>What a block did with a room.</summary>
/// <param name="Items">What is painted, in reading order.</param>
/// <param name="Height">The height that was used.</param>
/// <param name="Rest">What found no room, or null.</param>
internal sealed record Fit(Items Items, double Height, Block? Rest)
{
    /// <summary>Everything has to go elsewhere.</summary>
    public static Fit Nothing(Block block) => new([], 0, block);

    /// <summary>Whether nothing was placed although there is something to place.</summary>
    public bool IsNothing => Rest is not null && Items.IsEmpty;
}
