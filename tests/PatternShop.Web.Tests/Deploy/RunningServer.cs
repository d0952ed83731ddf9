using System.Diagnostics;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The published program while it runs.</summary>
internal sealed record RunningServer(Process Process, Uri Address, string SetUpPath, Task<string> Rest) : IDisposable
{
    public const string SetUpWords = "Set it up once, at ";
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>Waits until a program that was just started listens and, if its folder is new, has said how to set up.</summary>
    public static async Task<RunningServer> HearAsync(Process process, bool isNew)
    {
        using var guard = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        guard.CancelAfter(Patience);
        Uri? address = null;
        Uri? setUp = null;
        while ((address is null || (isNew && setUp is null)) && await process.StandardOutput.ReadLineAsync(guard.Token) is { } line)
        {
            address ??= After(line, "Now listening on: ");
            setUp ??= After(line, SetUpWords);
        }

        Assert.NotNull(address);
        return new RunningServer(process, address, setUp?.PathAndQuery ?? "", process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken));
    }

    /// <summary>Asks it to end, as a container engine does, and says with which code it did.</summary>
    public async Task<int> StopAsync()
    {
        using (var kill = Process.Start("sh", ["-c", FormattableString.Invariant($"kill -TERM {Process.Id}")]))
        {
            await kill.WaitForExitAsync();
        }

        await Process.WaitForExitAsync().WaitAsync(Patience);
        return Process.ExitCode;
    }

    public void Dispose()
    {
        if (!Process.HasExited)
        {
            Process.Kill();
        }

        Process.Dispose();
    }

    private static Uri? After(string line, string words) =>
        line.IndexOf(words, StringComparison.Ordinal) is var at and >= 0 ? new Uri(line[(at + words.Length)..]) : null;
}
