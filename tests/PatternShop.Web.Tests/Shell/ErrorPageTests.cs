using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>What a reader is told when something went wrong, and what the log says about the same thing.</summary>
public sealed class ErrorPageTests(WebServer server)
{
    [Fact]
    public async Task A_fault_shows_a_number_that_stands_in_the_log_beside_the_exception()
    {
        var first = await server.Get(WebServer.FaultAddress);
        var second = await server.Get(WebServer.FaultAddress);
        var (one, other) = (Id(first), Id(second));
        Assert.Equal("Something broke on our side", first.Page().QuerySelector("h1")?.TextContent);
        Assert.NotEqual(one, other);
        foreach (var id in new[] { one, other })
        {
            var line = Assert.Single(server.Log, line => line.Contains(id, StringComparison.Ordinal));
            Assert.Contains($"Fault {id} at GET {WebServer.FaultAddress}", line, StringComparison.Ordinal);
            Assert.Contains("thrown on purpose", line, StringComparison.Ordinal);
            Assert.Contains(nameof(InvalidOperationException), line, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_fault_tells_strangers_nothing_about_itself()
    {
        var text = (await server.Get(WebServer.FaultAddress)).Text;
        Assert.DoesNotContain("thrown on purpose", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_missing_page_says_what_to_do_and_never_echoes_the_address()
    {
        var answer = await server.Get("/none/%3Cscript%3Ealert(1)%3C/script%3E");
        Assert.Equal(404, answer.Status);
        Assert.Equal("There is nothing at this address", answer.Page().QuerySelector("h1")?.TextContent);
        Assert.NotNull(answer.Page().QuerySelector("main a[href='/']"));
        Assert.DoesNotContain("alert(1)", answer.Text, StringComparison.Ordinal);
    }

    private static string Id(Answer answer)
    {
        var id = answer.Page().QuerySelector("main code")?.TextContent;
        Assert.Matches("^[0-9a-f]{12}$", id);
        return id!;
    }
}
