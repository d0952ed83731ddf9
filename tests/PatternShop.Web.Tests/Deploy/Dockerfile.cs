using PatternShop.Tests.Shared;

namespace PatternShop.Web.Tests;

/// <summary>The instructions of deploy/Dockerfile, one after another; comments are left out and continued lines joined.</summary>
internal static class Dockerfile
{
    public static IReadOnlyList<(string Word, string Text)> Read() => Parse(File.ReadAllLines(Checkout.Path("deploy/Dockerfile")));

    public static IReadOnlyList<(string Word, string Text)> Parse(IEnumerable<string> lines)
    {
        var instructions = new List<(string, string)>();
        var begun = "";
        foreach (var line in lines.Select(line => line.Trim()).Where(line => line.Length > 0 && !line.StartsWith('#')))
        {
            begun += line.TrimEnd('\\');
            if (!line.EndsWith('\\'))
            {
                var parts = begun.Split(' ', 2, StringSplitOptions.TrimEntries);
                instructions.Add(parts is [var word, { Length: > 0 } text] && word.All(char.IsAsciiLetterUpper) ? (word, text) : throw new FormatException($"\"{begun}\" is no instruction."));
                begun = "";
            }
        }

        return begun.Length == 0 ? instructions : throw new FormatException("The last line is continued.");
    }

    /// <summary>The instructions of the image that is run: those after the last FROM, that included.</summary>
    public static IReadOnlyList<(string Word, string Text)> Final(IReadOnlyList<(string Word, string Text)> all) =>
        [.. all.Skip(all.Index().Last(instruction => instruction.Item.Word == "FROM").Index)];

    /// <summary>The variables that the image sets.</summary>
    public static IReadOnlyDictionary<string, string> Variables(IReadOnlyList<(string Word, string Text)> instructions) => instructions
        .Where(instruction => instruction.Word == "ENV")
        .SelectMany(instruction => instruction.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        .Select(pair => pair.Split('=', 2))
        .ToDictionary(pair => pair[0], pair => pair[1], StringComparer.Ordinal);
}
