using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Reads a file that the caller of a command has named.</summary>
internal static class SourceFile
{
    // links that lead in a circle: ELOOP on Linux and on BSD, ERROR_CANT_RESOLVE_FILENAME on Windows
    private static readonly int[] LinkLoops = [40, 62, unchecked((int)0x80070781)];

    /// <summary>Returns the file's bytes, at most one more than a pattern file may have; or why there are none, with what to do.</summary>
    public static async Task<(ReadOnlyMemory<byte> Bytes, string? Problem)> ReadAsync(string path)
    {
        if (Directory.Exists(path))
        {
            return (default, "this is a folder. Name the pattern files in it.");
        }

        if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal))
        {
            return (default, "this can't be the name of a file. Name a pattern file.");
        }

        try
        {
            await using var file = File.OpenRead(path);
            return (await BoundedReading.BytesAsync(file, Bounds.FileBytes, CancellationToken.None), null);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return (default, Reason(path, failure));
        }
    }

    private static string Reason(string path, Exception failure) => failure switch
    {
        FileNotFoundException when new FileInfo(path).LinkTarget is { } target => $"this is a link to {target}, which isn't there. Name the file itself.",
        FileNotFoundException or DirectoryNotFoundException => "there is no such file. Check the name, and the folder from which it is named.",
        UnauthorizedAccessException => "you have no permission to read this file. Change its permissions, or name a copy that you can read.",
        _ when LinkLoops.Contains(failure.HResult) => "this is a link that leads back to itself. Name the file itself.",
        _ => $"it can't be read: {failure.Message} Name another file.",
    };
}
