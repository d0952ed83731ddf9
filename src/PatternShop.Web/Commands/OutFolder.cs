namespace PatternShop.Web;

/// <summary>The folder in which a command makes files.</summary>
internal static class OutFolder
{
    private const string Remedy = "Choose another folder with --out.";

    /// <summary>Says why something that is there already cannot be the folder, with what to do; null when nothing is in the way.</summary>
    public static string? InTheWay(string folder) =>
        Directory.Exists(folder) ? null
        : new FileInfo(folder).LinkTarget is { } target ? $"this is a link to {target}, which is not a folder. {Remedy}"
        : File.Exists(folder) ? $"this is a file, not a folder. {Remedy}"
        : null;

    /// <summary>Makes the folder where there is none. Says why it cannot be made, with what to do; null when it is there.</summary>
    public static string? Make(string folder)
    {
        try
        {
            Directory.CreateDirectory(folder);
            return null;
        }
        catch (UnauthorizedAccessException)
        {
            return $"you have no permission to make this folder. {Remedy}";
        }
        catch (PathTooLongException)
        {
            return $"the name of this folder is too long. {Remedy}";
        }
        catch (IOException)
        {
            return $"this folder can't be made: {Parent(folder)}. {Remedy}";
        }
    }

    // the system speaks of a path that it did not find, whatever the reason
    private static string Parent(string folder)
    {
        var parent = Path.GetFullPath(folder);
        while (Path.GetDirectoryName(parent) is { } above && !Path.Exists(parent))
        {
            parent = above;
        }

        return Directory.Exists(parent) ? $"nothing can be made in {parent}" : $"{parent} is not a folder";
    }
}
