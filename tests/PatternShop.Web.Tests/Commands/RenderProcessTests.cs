using System.Diagnostics;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The same documents make the same bytes in any process, time zone, culture, folder and at any time.</summary>
public sealed class RenderProcessTests
{
    // what stands on the path may be a script, whose shell would speak of a locale that the machine lacks
    private static readonly string Host = Path.GetFullPath(Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", "dotnet"));

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(2);

    [Fact]
    public async Task Two_processes_far_apart_make_the_same_bytes()
    {
        using var folder = new Folder();
        var (west, east) = (folder["west"], folder["east"]);
        var here = await Render(west, [], Machine("Pacific/Honolulu", "C"));
        var there = await Render(east, ["faketime", "2031-02-28 23:59:58"], Machine("Pacific/Kiritimati", "de_DE.UTF-8"));
        Assert.Equal((0, ""), here);
        Assert.Equal((0, ""), there);
        var sums = Sums(west);
        Assert.Equal(SamplePages.Names.Count * 5, sums.Count);
        Assert.Equal(sums, Sums(east));
        await File.AppendAllTextAsync(Path.Combine(east, sums.Keys.First()), " ", TestContext.Current.CancellationToken);
        Assert.NotEqual(sums, Sums(east));
    }

    [Fact]
    public async Task The_exit_code_and_the_message_leave_the_process()
    {
        using var folder = new Folder();
        var bad = folder.Write("bad.json", "{ \"format\": 3,\n  oops }");
        var run = await Run([], ["render", bad, "--out", folder["made"]], Machine("UTC", "C"));
        Assert.Equal(1, run.Code);
        Assert.Contains($"  {bad}:2:3 ", run.Errors, StringComparison.Ordinal);
        Assert.Equal(2, (await Run([], ["render"], Machine("UTC", "C"))).Code);
    }

    private static Task<(int Code, string Errors)> Render(string target, string[] before, Dictionary<string, string> machine) =>
        Run(before, ["render", .. SamplePages.Names.Select(SamplePages.File), "--out", target], machine);

    // A program that stands before is used where the machine has it.
    private static async Task<(int Code, string Errors)> Run(string[] before, string[] args, Dictionary<string, string> machine)
    {
        string[] prefix = before.Length > 0 && OnPath(before[0]) ? before : [];
        string[] command = [.. prefix, Host, Path.Combine(AppContext.BaseDirectory, "PatternShop.Web.dll"), .. args];
        var start = new ProcessStartInfo(command[0], command[1..]) { RedirectStandardOutput = true, RedirectStandardError = true, UseShellExecute = false };
        foreach (var (name, value) in machine)
        {
            start.Environment[name] = value;
        }

        using var process = Process.Start(start)!;
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(Patience);
        var (output, errors) = (process.StandardOutput.ReadToEndAsync(patience.Token), process.StandardError.ReadToEndAsync(patience.Token));
        try
        {
            await process.WaitForExitAsync(patience.Token);
        }
        catch (OperationCanceledException)
        {
            process.Kill(entireProcessTree: true);
            throw;
        }

        await output;
        return (process.ExitCode, await errors);
    }

    private static Dictionary<string, string> Machine(string zone, string culture) => new(StringComparer.Ordinal)
    {
        ["TZ"] = zone,
        ["LANG"] = culture,
        ["LC_ALL"] = culture,
    };

    private static bool OnPath(string program) =>
        (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator).Any(folder => File.Exists(Path.Combine(folder, program)));

    private static SortedDictionary<string, string> Sums(string folder) =>
        new(Directory.EnumerateFiles(folder).ToDictionary(file => Path.GetFileName(file), file => Convert.ToHexString(SHA256.HashData(File.ReadAllBytes(file))), StringComparer.Ordinal), StringComparer.Ordinal);
}
