namespace PatternShop.Store;

/// <summary>A lock of the operating system: it falls when its process ends, however it ends.</summary>
internal static class FolderLock
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);
    private const int Tries = 600;

    /// <summary>Waits up to half a minute for another process that is opening the same folder.</summary>
    public static async Task<IDisposable> TakeAsync(string folder, TimeProvider time, CancellationToken cancellationToken)
    {
        for (var tries = 1; ; tries++)
        {
            try
            {
                return DataFolder.OpenFile(Path.Combine(folder, "opening.lock"), FileShare.None);
            }
            catch (IOException failure) when (tries == Tries)
            {
                throw new StoreException("Another process has been opening the data folder for half a minute: " + failure.Message, failure);
            }
            catch (IOException) when (Directory.Exists(folder))
            {
                await Task.Delay(Pause, time, cancellationToken);
            }
        }
    }
}
