namespace PatternShop.Web.Tests;

/// <summary>A folder of one test, gone afterwards.</summary>
internal sealed class Folder : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("patternshop-");

    public string Path => _folder.FullName;

    public string this[string name] => System.IO.Path.Combine(Path, name);

    /// <summary>Names of all files, sorted.</summary>
    public IReadOnlyList<string> Names =>
        [.. Directory.EnumerateFiles(Path, "*", SearchOption.AllDirectories).Select(file => System.IO.Path.GetRelativePath(Path, file)).Order(StringComparer.Ordinal)];

    public string Write(string name, string text)
    {
        File.WriteAllText(this[name], text);
        return this[name];
    }

    public void Dispose() => _folder.Delete(recursive: true);
}
