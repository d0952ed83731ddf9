using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>
/// <c>render FILE… --out DIR</c>: writes directions, facts, chart and both sheets of each document. A bad file is
/// named with every problem; the others are still made.
/// </summary>
internal static class RenderCommand
{
    private const int Done = 0;
    private const int BadFile = 1;
    private const int BadUse = 2;

    public static async Task<int> RunAsync(string[] args, TextWriter output, TextWriter errors)
    {
        if (!TryParse(args, out var files, out var folder))
        {
            await errors.WriteLineAsync("usage: render FILE… --out DIR\nWrites NAME.directions.txt, NAME.facts.json, NAME.chart.svg, NAME.a4.pdf and NAME.letter.pdf for each document.");
            return BadUse;
        }

        var taken = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        var worst = Done;
        foreach (var file in files)
        {
            var name = Path.GetFileNameWithoutExtension(file);
            var made = taken.TryAdd(name, file)
                ? await RenderAsync(file, name, folder, output, errors)
                : await RefuseAsync(errors, file, $"its files would be named like those of {taken[name]}", "Rename one of the two.");
            worst = made ? worst : BadFile;
        }

        return worst;
    }

    private static bool TryParse(string[] args, out List<string> files, out string folder)
    {
        (files, folder) = ([], "");
        for (var i = 0; i < args.Length; i++)
        {
            if (args[i] != "--out")
            {
                files.Add(args[i]);
            }
            else if (++i < args.Length)
            {
                folder = args[i];
            }
        }

        return files.Count > 0 && folder.Length > 0 && !files.Exists(file => file.StartsWith("--", StringComparison.Ordinal));
    }

    private static async Task<bool> RenderAsync(string file, string name, string folder, TextWriter output, TextWriter errors)
    {
        try
        {
            var bytes = await File.ReadAllBytesAsync(file);
            var result = PatternReader.Read(bytes);
            if (result is ReadResult.Refused refused)
            {
                await errors.WriteLineAsync($"{file}: not made, {refused.Problems.Count} {(refused.Problems.Count == 1 ? "problem" : "problems")}");
                foreach (var problem in refused.Problems)
                {
                    await errors.WriteLineAsync($"  {file}:{problem.Line}:{problem.Column} {(problem.Pointer.Length == 0 ? "(whole file)" : problem.Pointer)} [{problem.Code}] {problem.What} {problem.Remedy}");
                }

                return false;
            }

            Directory.CreateDirectory(folder);
            var piece = Piece.Of(((ReadResult.Read)result).Document);
            foreach (var made in new PieceFiles(Wording.English).Of(piece))
            {
                var path = Path.Combine(folder, $"{name}.{made.Kind}");
                await File.WriteAllBytesAsync(path, made.Bytes);
                await output.WriteLineAsync(path);
            }

            return true;
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return await RefuseAsync(errors, file, problem.Message, "Check the path and its permissions.");
        }
    }

    private static async Task<bool> RefuseAsync(TextWriter errors, string file, string what, string remedy)
    {
        await errors.WriteLineAsync($"{file}: not made: {what} {remedy}");
        return false;
    }
}
