namespace PatternShop.Store;

/// <summary>The data folder is nobody's business but the program's.</summary>
internal static class DataFolder
{
    private const UnixFileMode Mine = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const UnixFileMode MyFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;

    /// <summary>Makes a folder with mode 0700; one that is there already keeps the mode that somebody gave it.</summary>
    public static void Make(string folder)
    {
        if (OperatingSystem.IsWindows())
        {
            Directory.CreateDirectory(folder);
        }
        else if (!Directory.Exists(folder))
        {
            Directory.CreateDirectory(folder, Mine);
        }
    }

    /// <summary>Makes an empty file with mode 0600, unless it is there. SQLite gives its log the same mode.</summary>
    public static void MakeFile(string path) => OpenFile(path, FileShare.ReadWrite).Dispose();

    /// <summary>Opens a file, made with mode 0600 where it is missing.</summary>
    public static FileStream OpenFile(string path, FileShare share)
    {
        var options = new FileStreamOptions { Mode = FileMode.OpenOrCreate, Access = FileAccess.ReadWrite, Share = share };
        if (!OperatingSystem.IsWindows())
        {
            options.UnixCreateMode = MyFile;
        }

        return new FileStream(path, options);
    }
}
