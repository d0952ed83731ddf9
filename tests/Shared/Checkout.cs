namespace PatternShop.Tests.Shared;

/// <summary>The project's files, as they stand where the tests were built.</summary>
public static class Checkout
{
    private static readonly HashSet<string> Made = new(StringComparer.Ordinal)
    {
        ".git", ".tools", ".vs", ".idea", "bin", "obj", "artifacts", "data", "wwwroot", "TestResults", "BenchmarkDotNet.Artifacts",
    };

    /// <summary>The folder that holds PatternShop.sln.</summary>
    public static string Top { get; } = FindTop();

    public static string Path(string relative) => System.IO.Path.Combine(Top, relative);

    /// <summary>All files that people keep, none that a build makes; relative to the top, with forward slashes.</summary>
    public static IReadOnlyList<string> Files { get; } = [.. FilesIn(Top).Order(StringComparer.Ordinal)];

    /// <summary>The project files under src and tests.</summary>
    public static IReadOnlyList<string> ProjectFiles { get; } =
        [.. Files.Where(file => file.EndsWith(".csproj", StringComparison.Ordinal))];

    private static IEnumerable<string> FilesIn(string folder)
    {
        foreach (var file in Directory.EnumerateFiles(folder).Where(file => !Made.Contains(System.IO.Path.GetFileName(file))))
        {
            yield return System.IO.Path.GetRelativePath(Top, file).Replace('\\', '/');
        }

        foreach (var inner in Directory.EnumerateDirectories(folder).Where(inner => !Made.Contains(System.IO.Path.GetFileName(inner))))
        {
            foreach (var file in FilesIn(inner))
            {
                yield return file;
            }
        }
    }

    private static string FindTop()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(System.IO.Path.Combine(folder.FullName, "PatternShop.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new InvalidOperationException("The tests were built outside the project.");
    }
}
