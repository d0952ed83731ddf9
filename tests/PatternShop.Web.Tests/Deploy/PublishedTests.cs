using System.Net;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The published program, started as the container starts it.</summary>
[Collection(nameof(PublishedServer))]
public sealed class PublishedTests(PublishedServer published)
{
    private const UnixFileMode Mine = UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute;

    [Fact]
    public async Task From_an_empty_folder_to_the_first_page_set_up_stopped_and_started_again()
    {
        var data = published.NewDataFolder("data");
        CookieContainer cookies;
        using (var first = await published.RunningAsync(data, isNew: true))
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

        using var second = await published.RunningAsync(data, isNew: false);
        using var again = new Visitor(second.Address);
        again.Handler.CookieContainer = cookies;
        Assert.Equal("First steps", (await again.GetAsync("/studio")).Html.QuerySelector("ul.bench h2")!.TextContent.Trim());
        Assert.Equal(0, await second.StopAsync());
        Assert.DoesNotContain(RunningServer.SetUpWords, await second.Rest, StringComparison.Ordinal);
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
}
