using System.Globalization;

namespace PatternShop.Weave;

/// <summary>What came of reading a pattern file.</summary>
public abstract record ReadResult
{
    private ReadResult()
    {
    }

    /// <summary>The file is good.</summary>
    /// <param name="Document">What it holds.</param>
    /// <param name="Format">The format in which it was written, from 1 to <see cref="PatternWriter.Format"/>.</param>
    public sealed record Read(PatternDocument Document, int Format) : ReadResult;

    /// <summary>The file cannot be used.</summary>
    /// <param name="Problems">Everything that is wrong, in the order of the file; at least one.</param>
    public sealed record Refused(Sequence<Problem> Problems) : ReadResult;
}

/// <summary>Reads pattern files of every format that was ever written.</summary>
public static class PatternReader
{
    /// <summary>
    /// Reads UTF-8 JSON, with or without a byte order mark. Never throws on input. Lists every problem; only where the JSON
    /// itself breaks, or the format is not known, the rest cannot be judged.
    /// </summary>
    public static ReadResult Read(ReadOnlySpan<byte> utf8) => Read(utf8, NewWordsOf, out _);

    /// <summary>
    /// Reads what this program has stored. It differs from <see cref="Read(ReadOnlySpan{byte})"/> in what <see cref="NewWords"/> ask of words:
    /// a document that was stored before that was asked is never refused for it.
    /// </summary>
    public static ReadResult ReadStored(ReadOnlySpan<byte> utf8) => Read(utf8, static _ => [], out _);

    /// <summary>Reads as <see cref="Read(ReadOnlySpan{byte})"/> does, and says how many steps that took.</summary>
    internal static ReadResult Read(ReadOnlySpan<byte> utf8, out long steps) => Read(utf8, NewWordsOf, out steps);

    private static Sequence<Problem> NewWordsOf(PatternDocument document) => NewWords.Check(document);

    private static ReadResult Read(ReadOnlySpan<byte> utf8, Func<PatternDocument, Sequence<Problem>> besides, out long steps)
    {
        var problems = new FileProblems();
        var read = utf8.Length > Bounds.FileBytes ? TooLarge(problems) : Read(utf8, problems, besides);
        ReadResult result = problems.Any ? new ReadResult.Refused(problems.Located(utf8)) : read!;
        steps = problems.Steps.Count;
        return result;
    }

    /// <summary>Bytes of the byte order mark at the start.</summary>
    internal static int Mark(ReadOnlySpan<byte> utf8) => utf8.StartsWith("\uFEFF"u8) ? 3 : 0;

    private static ReadResult.Read? TooLarge(FileProblems problems)
    {
        problems.Add(
            ProblemCodes.FileTooLarge,
            JsonPlace.None,
            $"The file is larger than {Plain.Number(Bounds.FileBytes / (1024 * 1024))} MB, the most that a pattern file may be.",
            "Choose a pattern file; they are much smaller.");
        return null;
    }

    private static ReadResult.Read? Read(ReadOnlySpan<byte> utf8, FileProblems problems, Func<PatternDocument, Sequence<Problem>> besides)
    {
        if (FileKind.Problem(utf8) is { } kind)
        {
            problems.Add(kind);
            return null;
        }

        if (JsonParser.Parse(utf8, Mark(utf8), problems) is not { } value)
        {
            return null;
        }

        if (value is not JsonObject root)
        {
            problems.Add(ProblemCodes.WrongType, value.Place, $"This isn't a PatternShop file: it holds {value.Kind}, not a pattern.", "Choose a file that holds a pattern, an object in braces.");
            return null;
        }

        return Format(root, problems) is { } format ? Document(root, format, problems, besides) : null;
    }

    private static ReadResult.Read Document(JsonObject root, int format, FileProblems problems, Func<PatternDocument, Sequence<Problem>> besides)
    {
        var (current, strays) = FormatUpgrades.ToCurrent(root, format);
        foreach (var stray in strays)
        {
            problems.Add(stray);
        }

        var (document, sizes) = new DocumentBinder(problems).Bind(current);
        foreach (var problem in DocumentRules.Check(document, sizes).Concat(besides(document)))
        {
            problems.Add(Placed(problem, current));
        }

        return new ReadResult.Read(document, format);
    }

    /// <summary>The format number; the current one where it is missing or no number, which is noted; null where the rest cannot be judged.</summary>
    private static int? Format(JsonObject root, FileProblems problems)
    {
        if (root["format"] is null)
        {
            problems.Add(
                ProblemCodes.MissingMember,
                root.Place.Member("format", root.Place.Offset),
                "\"format\" is missing.",
                $"Add \"format\": {Plain.Number(PatternWriter.Format)}.");
            return PatternWriter.Format;
        }

        var members = new MemberReader(root, problems);
        var format = members.Whole("format", int.MinValue, null);
        if (format == int.MinValue)
        {
            return PatternWriter.Format;
        }

        if (format is >= 1 and <= PatternWriter.Format)
        {
            return format;
        }

        var place = root["format"]!.Place;
        if (format > PatternWriter.Format)
        {
            problems.Add(
                ProblemCodes.FormatNewer,
                place,
                $"The file is of format {Plain.Number(format)}; this program knows formats up to {Plain.Number(PatternWriter.Format)}.",
                "Open it with the newer program that wrote it, and bring this one up to date.");
        }
        else
        {
            problems.Add(ProblemCodes.FormatUnknown, place, $"There is no format {Plain.Number(format)}.", $"Write \"format\": {Plain.Number(PatternWriter.Format)}.");
        }

        return null;
    }

    /// <summary>Finds where the part that a rule speaks of stands in the file; for what is not written there, the nearest thing around it.</summary>
    private static FileProblem Placed(Problem problem, JsonObject root)
    {
        JsonValue at = root;
        var complete = true;
        foreach (var part in problem.Pointer.Split('/').Skip(1))
        {
            var next = at switch
            {
                JsonObject json => json[part],
                JsonArray array => array.Items[int.Parse(part, CultureInfo.InvariantCulture)],
                _ => null,
            };
            complete &= next is not null;
            at = next ?? at;
        }

        return new FileProblem(problem.Code, complete ? at.Place.Pointer : problem.Pointer, at.Place.Offset, problem.What, problem.Remedy);
    }
}
