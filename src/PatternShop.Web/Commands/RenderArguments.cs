namespace PatternShop.Web;

/// <summary>What was typed after <c>render</c>.</summary>
/// <param name="Files">The pattern files; at least one.</param>
/// <param name="Folder">Where what is made of them goes.</param>
internal sealed record RenderArguments(IReadOnlyList<string> Files, string Folder)
{
    private const string Out = "--out";

    /// <summary>Returns the arguments, or null and what is wrong with them.</summary>
    public static RenderArguments? Read(IReadOnlyList<string> typed, out string problem)
    {
        var (files, folders) = (new List<string>(), new List<string>());
        for (var at = 0; at < typed.Count; at++)
        {
            if (typed[at] == Out && at + 1 < typed.Count && typed[at + 1].Length > 0 && !IsOption(typed[at + 1]))
            {
                folders.Add(typed[++at]);
            }
            else
            {
                files.Add(typed[at]);
            }
        }

        problem = files switch
        {
            _ when files.Contains(Out, StringComparer.Ordinal) => $"There is no folder after {Out}. Write {Out} and the folder in which the files are to be made.",
            _ when files.Find(IsOption) is { } unknown => $"render has no option {unknown}. Leave it out.",
            _ when folders.Count > 1 => $"{Out} is given {(folders.Count == 2 ? "twice" : "more than twice")}: {string.Join(", ", folders)}. Give one folder.",
            [] => "No pattern file is named. Name one or more.",
            _ when folders.Count == 0 => $"{Out} is missing. Write {Out} and the folder in which the files are to be made.",
            _ => "",
        };
        return problem.Length == 0 ? new RenderArguments(files, folders[0]) : null;
    }

    private static bool IsOption(string word) => word.StartsWith("--", StringComparison.Ordinal);
}
