namespace PatternShop.Weave;

/// <summary>Recognizes files that hold no JSON by how they begin.</summary>
internal static class FileKind
{
    /// <summary>The problem of a file that cannot hold a pattern, whatever else is in it; null for one that may.</summary>
    public static FileProblem? Problem(ReadOnlySpan<byte> file)
    {
        if (Encoding(file) is { } encoding)
        {
            return NotAPattern($": its text is {encoding}", "If it is a pattern, open it in a text editor, save it as UTF-8, then read it again.");
        }

        if (Name(file) is { } name)
        {
            return NotAPattern($": it is {name}", "Choose a pattern that was downloaded from PatternShop; its name ends in .json.");
        }

        // a slash begins a comment, which has a problem of its own
        var text = file[PatternReader.Mark(file)..].TrimStart(" \t\r\n"u8);
        return text.IsEmpty || text[0] is (byte)'{' or (byte)'[' or (byte)'/'
            ? null
            : NotAPattern("", "Choose a pattern that was downloaded from PatternShop; its name ends in .json.");
    }

    private static FileProblem NotAPattern(string why, string remedy) =>
        new(ProblemCodes.NotAPattern, "", 0, $"This isn't a PatternShop file{why}.", remedy);

    // without a mark at the start, JSON in these encodings shows itself by the zero bytes of its first character
    private static string? Encoding(ReadOnlySpan<byte> file) => file switch
    {
        [0xFF, 0xFE, 0, 0, ..] or [0, 0, 0xFE, 0xFF, ..] or [0, 0, 0, not 0, ..] or [not 0, 0, 0, 0, ..] => "UTF-32",
        [0xFF, 0xFE, ..] or [0xFE, 0xFF, ..] or [0, not 0, ..] or [not 0, 0, ..] => "UTF-16",
        _ => null,
    };

    private static string? Name(ReadOnlySpan<byte> file) => file switch
    {
        [0x89, (byte)'P', (byte)'N', (byte)'G', ..] => "a PNG picture",
        [0xFF, 0xD8, 0xFF, ..] => "a JPEG picture",
        [(byte)'G', (byte)'I', (byte)'F', (byte)'8', ..] => "a GIF picture",
        [(byte)'%', (byte)'P', (byte)'D', (byte)'F', ..] => "a PDF document",
        [(byte)'P', (byte)'K', 3, 4, ..] => "a ZIP archive",
        [0x1F, 0x8B, ..] => "a gzip archive",
        [(byte)'{', (byte)'\\', (byte)'r', (byte)'t', (byte)'f', ..] => "a document of a word processor (RTF)",
        _ => null,
    };
}
