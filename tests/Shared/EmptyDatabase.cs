using PatternShop.Store;

namespace PatternShop.Tests.Shared;

/// <summary>
/// A database as the program makes it in a new folder, made by the program once a run of tests, so that not each of them brings one up through
/// all migrations. That way itself is proven where a store, or the published program, opens a folder that is empty.
/// </summary>
internal static class EmptyDatabase
{
    private static readonly Lazy<Task<byte[]>> Made = new(MakeAsync);

    /// <summary>Puts it into a data folder, which is made.</summary>
    public static async Task PutAsync(string folder)
    {
        var bytes = await Made.Value;
        DataFolder.Make(folder);
        using var files = new SqliteFile(folder, TimeSpan.Zero);
        await using var file = DataFolder.OpenFile(files.Path, FileShare.None);
        await file.WriteAsync(bytes);
    }

    private static async Task<byte[]> MakeAsync()
    {
        var folder = Directory.CreateTempSubdirectory("empty");
        try
        {
            var files = new SqliteFile(folder.FullName, TimeSpan.FromSeconds(30));
            await new SqliteOpening(files, TimeProvider.System).OpenAsync(CancellationToken.None);
            // folds the log into the file
            files.Dispose();
            return await File.ReadAllBytesAsync(files.Path);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
