using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>
/// <c>render FILE… --out DIR</c>: writes directions, facts, chart and both sheets of each document. A bad file is
/// named with every problem; the others are still made.
/// </summary>
internal static class RenderCommand
{
    private const string Usage = "usage: render FILE… --out DIR\nWrites NAME.directions.txt, NAME.facts.json, NAME.chart.svg, NAME.a4.pdf and NAME.letter.pdf for each document.";

    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter errors)
    {
        if (RenderArguments.Read(args, out var problem) is not { } arguments)
        {
            await errors.WriteLineAsync($"{problem}\n{Usage}");
            return CommandLine.BadUse;
        }

        if (OutFolder.InTheWay(arguments.Folder) is { } inTheWay)
        {
            await RefuseAsync(errors, arguments.Folder, inTheWay);
            return CommandLine.Failed;
        }

        var taken = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        var worst = CommandLine.Done;
        foreach (var file in arguments.Files)
        {
            if (await ReadAsync(file, errors) is not { } document)
            {
                worst = CommandLine.Failed;
                continue;
            }

            var name = Path.GetFileNameWithoutExtension(file);
            if (!taken.TryAdd(name, file))
            {
                await RefuseAsync(errors, file, $"its files would be named like those of {taken[name]}. Rename one of the two.");
                worst = CommandLine.Failed;
            }
            else if (OutFolder.Make(arguments.Folder) is { } unmade)
            {
                await RefuseAsync(errors, arguments.Folder, unmade);
                return CommandLine.Failed;
            }
            else if (!await MakeAsync(file, document, Path.Combine(arguments.Folder, name), output, errors))
            {
                worst = CommandLine.Failed;
            }
        }

        return worst;
    }

    /// <summary>The document of a file; null when there is none, which is explained.</summary>
    private static async Task<PatternDocument?> ReadAsync(string file, TextWriter errors)
    {
        var (bytes, problem) = await SourceFile.ReadAsync(file);
        if (problem is not null)
        {
            await RefuseAsync(errors, file, problem);
            return null;
        }

        var result = PatternReader.Read(bytes.Span);
        if (result is ReadResult.Refused refused)
        {
            await errors.WriteLineAsync($"{file}: not made, {refused.Problems.Count} {(refused.Problems.Count == 1 ? "problem" : "problems")}");
            foreach (var wrong in refused.Problems)
            {
                await errors.WriteLineAsync($"  {file}:{wrong.Line}:{wrong.Column} {(wrong.Pointer.Length == 0 ? "(whole file)" : wrong.Pointer)} [{wrong.Code}] {wrong.What} {wrong.Remedy}");
            }

            return null;
        }

        return ((ReadResult.Read)result).Document;
    }

    private static async Task<bool> MakeAsync(string file, PatternDocument document, string stem, TextWriter output, TextWriter errors)
    {
        foreach (var made in new PieceFiles(Wording.English).Of(Piece.Of(document)))
        {
            var path = $"{stem}.{made.Kind}";
            try
            {
                await File.WriteAllBytesAsync(path, made.Bytes);
            }
            catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
            {
                var why = Directory.Exists(path) ? "a folder has this name." : failure is UnauthorizedAccessException ? "you have no permission to write there." : failure.Message;
                await RefuseAsync(errors, file, $"{path} can't be written: {why} Choose another folder with --out.");
                return false;
            }

            await output.WriteLineAsync(path);
        }

        return true;
    }

    private static Task RefuseAsync(TextWriter errors, string what, string why) => errors.WriteLineAsync($"{what}: not made: {why}");
}
