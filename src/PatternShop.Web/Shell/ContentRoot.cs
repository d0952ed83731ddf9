namespace PatternShop.Web;

/// <summary>Where the pages' files and the default data folder are. It depends on where the program is, never on where it was started from.</summary>
internal static class ContentRoot
{
    private const string Project = "PatternShop.Web.csproj";

    /// <summary>
    /// Returns the program's own folder when it was published, and the project's folder when it runs from a build of the source.
    /// Null, which means the current folder, when it is neither.
    /// </summary>
    /// <param name="program">The folder of the program's assembly.</param>
    public static string? Of(string program)
    {
        if (Directory.Exists(Path.Combine(program, "wwwroot")))
        {
            return program;
        }

        var folder = new DirectoryInfo(program);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, Project)))
        {
            folder = folder.Parent;
        }

        return folder?.FullName;
    }
}
