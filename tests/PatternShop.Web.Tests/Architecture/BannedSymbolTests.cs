using System.Diagnostics;
using System.Globalization;
using System.Runtime.InteropServices;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>
/// Clock, culture and randomness of the machine are banned. The compiler itself, with the analyzer and the list that all
/// projects are built with, is shown a use of each.
/// </summary>
public sealed partial class BannedSymbolTests
{
    private static readonly Dictionary<string, string> Uses = new(StringComparer.Ordinal)
    {
        ["P:System.DateTime.Now"] = "_ = DateTime.Now;",
        ["P:System.DateTime.UtcNow"] = "_ = DateTime.UtcNow;",
        ["P:System.DateTime.Today"] = "_ = DateTime.Today;",
        ["M:System.DateTime.ToLocalTime"] = "_ = default(DateTime).ToLocalTime();",
        ["P:System.DateTimeOffset.Now"] = "_ = DateTimeOffset.Now;",
        ["P:System.DateTimeOffset.UtcNow"] = "_ = DateTimeOffset.UtcNow;",
        ["P:System.DateTimeOffset.LocalDateTime"] = "_ = default(DateTimeOffset).LocalDateTime;",
        ["M:System.DateTimeOffset.ToLocalTime"] = "_ = default(DateTimeOffset).ToLocalTime();",
        ["P:System.TimeZoneInfo.Local"] = "_ = TimeZoneInfo.Local;",
        ["P:System.Environment.TickCount"] = "_ = Environment.TickCount;",
        ["P:System.Environment.TickCount64"] = "_ = Environment.TickCount64;",
        ["P:System.Globalization.CultureInfo.CurrentCulture"] = "_ = CultureInfo.CurrentCulture;",
        ["P:System.Globalization.CultureInfo.CurrentUICulture"] = "_ = CultureInfo.CurrentUICulture;",
        ["P:System.Globalization.CultureInfo.InstalledUICulture"] = "_ = CultureInfo.InstalledUICulture;",
        ["P:System.Random.Shared"] = "_ = Random.Shared;",
        ["M:System.Random.#ctor"] = "_ = new Random();",
        ["M:System.Guid.NewGuid"] = "_ = Guid.NewGuid();",
        ["M:System.Guid.CreateVersion7"] = "_ = Guid.CreateVersion7();",
        ["M:System.IO.Path.GetTempFileName"] = "_ = Path.GetTempFileName();",
        ["M:System.Threading.Thread.Sleep(System.Int32)"] = "Thread.Sleep(1);",
        ["M:System.Threading.Thread.Sleep(System.TimeSpan)"] = "Thread.Sleep(TimeSpan.Zero);",
        ["M:System.Threading.Tasks.Task.Delay(System.Int32)"] = "_ = Task.Delay(1);",
        ["M:System.Threading.Tasks.Task.Delay(System.Int32,System.Threading.CancellationToken)"] = "_ = Task.Delay(1, CancellationToken.None);",
        ["M:System.Threading.Tasks.Task.Delay(System.TimeSpan)"] = "_ = Task.Delay(TimeSpan.Zero);",
        ["M:System.Threading.Tasks.Task.Delay(System.TimeSpan,System.Threading.CancellationToken)"] = "_ = Task.Delay(TimeSpan.Zero, CancellationToken.None);",
    };

    private static readonly string[] Fine =
    [
        "_ = TimeProvider.System.GetUtcNow();", "_ = CultureInfo.InvariantCulture;", "_ = new Random(7);", "_ = Task.Delay(TimeSpan.Zero, TimeProvider.System);",
    ];

    [Fact]
    public void The_list_has_no_entry_that_was_not_tried() =>
        Assert.Equal(Uses.Keys.Order(StringComparer.Ordinal), Listed().Order(StringComparer.Ordinal));

    [Fact]
    public async Task The_compiler_refuses_each_of_them_and_nothing_else()
    {
        var banned = await BannedLines([.. Uses.Values, .. Fine]);
        Assert.Equal(Enumerable.Range(0, Uses.Count), banned);
    }

    [Fact]
    public void All_projects_are_built_with_the_list()
    {
        var house = XDocument.Load(Checkout.Path("Directory.Build.props"));
        Assert.Contains(house.Descendants("AdditionalFiles"), file => ((string?)file.Attribute("Include"))?.EndsWith("BannedSymbols.txt", StringComparison.Ordinal) == true);
        Assert.All(Checkout.ProjectFiles, file => Assert.Contains(Analyzer, AnalyzersOf(file), StringComparer.Ordinal));
    }

    [Fact]
    public void Nobody_silences_it()
    {
        var silent = from file in Checkout.Files
                     where Path.GetExtension(file) is ".cs" or ".razor" or ".csproj" or ".props" or ".targets" or ".editorconfig"
                     where !file.EndsWith("BannedSymbolTests.cs", StringComparison.Ordinal) && !file.EndsWith("HouseRuleTests.cs", StringComparison.Ordinal)
                     where File.ReadAllText(Checkout.Path(file)).Contains("RS0030", StringComparison.Ordinal)
                     select file;
        Assert.Empty(silent);
    }

    private const string Analyzer = "Microsoft.CodeAnalysis.BannedApiAnalyzers";

    private static IEnumerable<string> Listed() =>
        File.ReadLines(Checkout.Path("BannedSymbols.txt")).Where(line => line.Length > 0).Select(line => line[..line.IndexOf(';', StringComparison.Ordinal)]);

    /// <summary>Compiles the statements, one a line, and says which (from 0) are refused as banned.</summary>
    private static async Task<IEnumerable<int>> BannedLines(IReadOnlyList<string> statements)
    {
        var folder = Directory.CreateTempSubdirectory();
        try
        {
            var source = Path.Combine(folder.FullName, "Seed.cs");
            string[] before = ["using System; using System.Globalization; using System.IO; using System.Threading; using System.Threading.Tasks;", "static class Seed { static void Uses() {"];
            await File.WriteAllLinesAsync(source, [.. before, .. statements, "} }"]);
            var output = await Compile(source, Path.Combine(folder.FullName, "seed.dll"));
            return BannedLine().Matches(output).Select(match => int.Parse(match.Groups["line"].Value, CultureInfo.InvariantCulture) - before.Length - 1).Distinct().Order();
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static async Task<string> Compile(string source, string target)
    {
        var runtime = RuntimeEnvironment.GetRuntimeDirectory();
        var dotnet = Path.GetFullPath(Path.Combine(runtime, "..", "..", ".."));
        var compiler = Directory.EnumerateDirectories(Path.Combine(dotnet, "sdk"), "10.*").Order(StringComparer.Ordinal).Last();
        var start = new ProcessStartInfo(Path.Combine(dotnet, "dotnet")) { RedirectStandardOutput = true, UseShellExecute = false };
        string[] references = [.. Directory.EnumerateFiles(runtime, "System*.dll").Where(file => !file.EndsWith(".Native.dll", StringComparison.Ordinal))];
        string[] arguments =
        [
            "exec", Path.Combine(compiler, "Roslyn", "bincore", "csc.dll"), "/nologo", "/noconfig", "/nostdlib", "/target:library", "/warnaserror+:RS0030",
            $"/out:{target}", $"/additionalfile:{Checkout.Path("BannedSymbols.txt")}", .. AnalyzerFiles().Select(file => $"/analyzer:{file}"),
            .. references.Select(file => $"/reference:{file}"), source,
        ];
        Array.ForEach(arguments, start.ArgumentList.Add);
        using var process = Process.Start(start)!;
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        return output;
    }

    private static IEnumerable<string> AnalyzerFiles()
    {
        using var assets = Assets("tests/PatternShop.Web.Tests/PatternShop.Web.Tests.csproj");
        var library = assets.RootElement.GetProperty("libraries").EnumerateObject().Single(library => library.Name.StartsWith(Analyzer + "/", StringComparison.Ordinal));
        var packages = assets.RootElement.GetProperty("packageFolders").EnumerateObject().First().Name;
        var folder = Path.Combine(packages, library.Value.GetProperty("path").GetString()!, "analyzers", "dotnet", "cs");
        return [.. Directory.EnumerateFiles(folder, "*.dll")];
    }

    private static List<string> AnalyzersOf(string projectFile)
    {
        using var assets = Assets(projectFile);
        return [.. assets.RootElement.GetProperty("libraries").EnumerateObject().Select(library => library.Name[..library.Name.IndexOf('/', StringComparison.Ordinal)])];
    }

    private static JsonDocument Assets(string projectFile) =>
        JsonDocument.Parse(File.ReadAllText(Path.Combine(Checkout.Path(Path.GetDirectoryName(projectFile)!), "obj", "project.assets.json")));

    [GeneratedRegex("""\((?<line>\d+),\d+\): error RS0030""", RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex BannedLine();
}
