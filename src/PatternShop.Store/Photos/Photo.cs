namespace PatternShop.Store;

/// <summary>A picture as a file.</summary>
public sealed record PictureFile(byte[] Bytes, int Width, int Height);

/// <summary>A photo without its bytes: what pages need to show it.</summary>
/// <param name="Hash">Hash of the large picture: its name in documents.</param>
/// <param name="Width">Pixels across of the large picture.</param>
/// <param name="Height">Pixels down of the large picture.</param>
/// <param name="SmallHash">Hash of the small picture.</param>
/// <param name="SmallWidth">Pixels across of the small picture.</param>
/// <param name="SmallHeight">Pixels down of the small picture.</param>
public sealed record PhotoCard(string Hash, int Width, int Height, string SmallHash, int SmallWidth, int SmallHeight);

/// <summary>What came of a photo that was to be kept.</summary>
public abstract record KeepResult
{
    private KeepResult()
    {
    }

    /// <summary>It is kept, or was kept already.</summary>
    public sealed record Kept(PhotoCard Photo) : KeepResult;

    /// <summary>The pattern has as many as are kept.</summary>
    public sealed record Full(int Most) : KeepResult;

    /// <summary>The maker has no such pattern.</summary>
    public sealed record Missing : KeepResult;
}
