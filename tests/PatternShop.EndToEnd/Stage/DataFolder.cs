namespace PatternShop.EndToEnd;

/// <summary>Where a server keeps its data; it outlives the server, so that another can go on with it.</summary>
public sealed class DataFolder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("patternshop-");

    public string Path => _folder.FullName;

    public void Dispose() => _folder.Delete(recursive: true);
}
