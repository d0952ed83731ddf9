using System.Diagnostics;
using System.Globalization;
using BenchmarkDotNet.Environments;
using PatternShop.Tests.Shared;

namespace PatternShop.Benchmarks;

/// <summary>When and where cases were measured.</summary>
internal sealed record Run(string Date, string Commit, string Machine)
{
    public static Run Of(HostEnvironmentInfo host, TimeProvider clock)
    {
        var machine = string.Join("; ", host.ToFormattedString().Select(line => line.Trim()).Where(line => line.Length > 0));
        return new Run(clock.GetUtcNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), CommitNow(), machine.Replace("|", "/", StringComparison.Ordinal));
    }

    private static string CommitNow()
    {
        var changed = Git("status", "--porcelain", "--", ".", ":!tests/PatternShop.Benchmarks/README.md").Length > 0;
        return Git("rev-parse", "--short", "HEAD") + (changed ? " with changes that are not committed" : "");
    }

    private static string Git(params string[] arguments)
    {
        using var git = Process.Start(new ProcessStartInfo("git", arguments) { WorkingDirectory = Checkout.Top, RedirectStandardOutput = true, UseShellExecute = false })
            ?? throw new InvalidOperationException("git did not start.");
        var output = git.StandardOutput.ReadToEnd().Trim();
        git.WaitForExit();
        return output;
    }
}
