using System.Diagnostics;
using System.Net;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The published program, started as the container starts it.</summary>
public sealed class PublishedTests(PublishedServer published) : IClassFixture<PublishedServer>
{
    private const UnixFileMode Mine = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;
    private const string SetUpWords = "Set it up once, at ";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    [Fact]
    public async Task From_an_empty_folder_to_the_first_page_set_up_stopped_and_started_again()
    {
        var data = published.NewDataFolder("data");
        CookieContainer cookies;
        using (var first = await RunningAsync(data, isNew: true))
        {
            using var visitor = new Visitor(first.Address);
            Assert.Equal(HttpStatusCode.OK, (await visitor.GetAsync("/")).Status);
            if (!OperatingSystem.IsWindows())
            {
                Assert.Equal(Mine, File.GetUnixFileMode(data));
            }

            await StylesAndScriptsAreThere(visitor);
            Assert.Equal("/studio", (await visitor.FillAsync(first.SetUpPath, "/setup", [.. TestShop.SetUpFields(), ("Samples", "first-steps")])).Location);
            Assert.Equal(HttpStatusCode.OK, (await visitor.GetAsync("/studio")).Status);
            cookies = visitor.Handler.CookieContainer;
            Assert.Equal(0, await HealthAsync(first.Address));
            Assert.Equal(0, await first.StopAsync());
            Assert.NotEqual(0, await HealthAsync(first.Address));
        }

        using var second = await RunningAsync(data, isNew: false);
        using var again = new Visitor(second.Address);
        again.Handler.CookieContainer = cookies;
        Assert.Equal("First steps", (await again.GetAsync("/studio")).Html.QuerySelector("ul.bench h2")!.TextContent.Trim());
        Assert.Equal(0, await second.StopAsync());
        Assert.DoesNotContain(SetUpWords, await second.Rest, StringComparison.Ordinal);
    }

    private static async Task StylesAndScriptsAreThere(Visitor visitor)
    {
        foreach (var path in new[] { "/css/public.css", "/css/bench.css", "/icons/mark.svg", "/_framework/blazor.web.js", "/_content/MudBlazor/MudBlazor.min.css" })
        {
            var answer = await visitor.GetAsync(path);
            Assert.Equal((path, HttpStatusCode.OK, true), (path, answer.Status, answer.Body.Length > 100));
        }
    }

    private async Task<int> HealthAsync(Uri address)
    {
        using var process = published.Run(["health", address.ToString()]);
        await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return process.ExitCode;
    }

    private async Task<Running> RunningAsync(string data, bool isNew)
    {
        var process = published.Run(["--urls", "http://127.0.0.1:0"], ("PatternShop__DataFolder", data));
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
        return new Running(process, address, setUp?.PathAndQuery ?? "", process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken));
    }

    private static Uri? After(string line, string words) =>
        line.IndexOf(words, StringComparison.Ordinal) is var at and >= 0 ? new Uri(line[(at + words.Length)..]) : null;

    private sealed record Running(Process Process, Uri Address, string SetUpPath, Task<string> Rest) : IDisposable
    {
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
    }
}
