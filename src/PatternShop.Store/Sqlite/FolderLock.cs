namespace PatternShop.Store;

/// <summary>Locks of the operating system on a data folder: they fall when their process ends, however it ends.</summary>
internal static class FolderLock
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);
    private const int Tries = 600;

    /// <summary>Waits up to half a minute for another process that is opening the same folder.</summary>
    /// <exception cref="StoreException">The other process is still opening it.</exception>
    public static async Task<IDisposable> TakeAsync(string folder, TimeProvider time, CancellationToken cancellationToken)
    {
        for (var tries = 1; ; tries++)
        {
            try
            {
                return DataFolder.OpenFile(Path.Combine(folder, "opening.lock"), FileShare.None);
            }
            catch (IOException failure) when (IsHeld(failure) && tries == Tries)
            {
                throw new StoreException("Another process has been opening the data folder for half a minute. Wait until it is done, or stop it, and start again.", failure);
            }
            catch (IOException failure) when (IsHeld(failure))
            {
                await Task.Delay(Pause, time, cancellationToken);
            }
        }
    }

    /// <summary>Takes the folder for the one server that writes in it. The operator's commands do not ask for this lock.</summary>
    /// <exception cref="StoreException">Another server has the folder.</exception>
    public static IDisposable TakeForServer(string folder)
    {
        try
        {
            return DataFolder.OpenFile(Path.Combine(folder, "server.lock"), FileShare.None);
        }
        catch (IOException failure) when (IsHeld(failure))
        {
            throw new StoreException("Another PatternShop server is running on this data folder. Stop it first, or name another folder for this one with --PatternShop:DataFolder.", failure);
        }
    }

    // a full disk or a folder that cannot be written fails as well, and no waiting helps there
    private static bool IsHeld(IOException failure) => failure.HResult == (OperatingSystem.IsWindows() ? SharingViolation : OperatingSystem.IsLinux() ? LinuxWouldBlock : BsdWouldBlock);

    private const int SharingViolation = unchecked((int)0x80070020);
    private const int LinuxWouldBlock = 11;
    private const int BsdWouldBlock = 35;
}
