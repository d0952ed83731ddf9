using System.Text;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>The stage itself: every kind of fault is heard, evidence is kept, a server that was killed goes on.</summary>
public sealed class StageTests(Stage stage)
{
    private const string Strict = "default-src 'none'; img-src 'self' data:; style-src 'self'; script-src 'self'";
    private const string Plain = "<!DOCTYPE html><html lang=en><title>t</title><link rel=icon href='data:,'><meta name=viewport content='width=device-width'>";

    [Theory]
    [InlineData("<p>fine</p>", true, "")]
    [InlineData("<p style='color:red'>a</p>", true, "console error: Applying inline style violates")]
    [InlineData("<p style='color:red'>a</p>", true, "console error: violation of style-src-attr by inline")]
    [InlineData("<p style='color:red'>a</p>", false, "console error: Applying inline style violates")]
    [InlineData("<script>1</script>", true, "console error: Executing inline script violates")]
    [InlineData("<img src='https://example.org/a.png' alt=''>", true, "console error: Loading the image 'https://example.org/a.png' violates")]
    [InlineData("<img src='/gone.png' alt=''>", true, "answer 404: /gone.png")]
    [InlineData("<script src='/test.js'></script>", true, "exception: ")]
    public async Task What_goes_wrong_on_a_page_is_heard(string body, bool script, string fault)
    {
        await using var visit = await VisitAsync(Reader.Desk with { Script = script }, body);
        Assert.Equal(fault.Length == 0, visit.Faults.Count == 0);
        Assert.True(fault.Length == 0 || visit.Faults.Any(heard => heard.StartsWith(fault, StringComparison.Ordinal)), string.Join('\n', visit.Faults));
    }

    [Fact]
    public async Task A_request_to_others_is_heard()
    {
        await using var visit = await VisitAsync(Reader.Desk, "<img src='https://example.org/a.png' alt=''>", policy: "default-src *");
        Assert.Contains("request to others: https://example.org/a.png", visit.Faults);
    }

    [Theory]
    [InlineData("<div style='width:700px'>wide</div>", 600, false)]
    [InlineData("<div style='width:700px'>wide</div>", 390, false)]
    [InlineData("<div style='width:700px'>wide</div>", 800, true)]
    [InlineData("<div style='overflow:auto'><div style='width:700px'>wide</div></div>", 390, true)]
    public async Task A_page_that_is_too_wide_is_seen(string body, int width, bool fits)
    {
        await using var visit = await VisitAsync(new Reader(width), body, policy: "");
        Assert.Equal(fits, (await Width.OverflowAsync(visit)).Length == 0);
    }

    [Fact]
    public async Task Axe_finds_what_is_wrong()
    {
        await using var visit = await VisitAsync(Reader.Desk, "<main><h1>h</h1><img src='data:,'><p>a</p></main>", policy: "");
        Assert.StartsWith("image-alt: ", Assert.Single(await Axe.FindingsAsync(visit)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Evidence_is_kept()
    {
        using var folder = new DataFolder();
        await using var visit = await VisitAsync(Reader.Desk, "<p style='color:red'>a</p>");
        var kept = await Evidence.KeepAsync(folder.Path, "A journey/with \"signs\"", [visit], "the log");
        Assert.Equal(Path.Combine(folder.Path, "A_journey_with__signs_"), kept);
        Assert.Equal(["server.log", "window-1.html", "window-1.log", "window-1.png"], Directory.EnumerateFiles(kept).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Contains("inline style", await File.ReadAllTextAsync(Path.Combine(kept, "window-1.log"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        var picture = await File.ReadAllBytesAsync(Path.Combine(kept, "window-1.png"), TestContext.Current.CancellationToken);
        Assert.Equal("PNG", Encoding.ASCII.GetString(picture, 1, 3));
    }

    [Fact]
    public async Task A_server_that_was_killed_goes_on_at_the_same_address()
    {
        using var data = new DataFolder();
        var first = await ServerProcess.StartAsync(data);
        var kept = Directory.EnumerateFileSystemEntries(data.Path).Order(StringComparer.Ordinal).ToList();
        await using var second = await first.StartAgainAsync();
        Assert.NotEmpty(kept);
        Assert.Superset(kept.ToHashSet(StringComparer.Ordinal), Directory.EnumerateFileSystemEntries(data.Path).ToHashSet(StringComparer.Ordinal));
        Assert.Equal(first.Address, second.Address);
        Assert.Equal("Healthy", await second.Http.GetStringAsync(new Uri("/healthz", UriKind.Relative), TestContext.Current.CancellationToken));
    }

    private async Task<Visit> VisitAsync(Reader reader, string body, string policy = Strict)
    {
        var visit = await Visit.OpenAsync(stage.Browser, stage.Server.Address, reader);
        await visit.Page.RouteAsync("**/test", route => route.FulfillAsync(new RouteFulfillOptions
        {
            ContentType = "text/html",
            Headers = new Dictionary<string, string>(StringComparer.Ordinal) { ["Content-Security-Policy"] = policy },
            Body = Plain + body,
        }));
        await visit.Page.RouteAsync("**/test.js", route => route.FulfillAsync(new RouteFulfillOptions { ContentType = "text/javascript", Body = "throw new Error('on purpose');" }));
        await visit.Page.RouteAsync("https://example.org/**", route => route.FulfillAsync(new RouteFulfillOptions { ContentType = "image/svg+xml", Body = "<svg xmlns='http://www.w3.org/2000/svg'/>" }));
        await visit.GoAsync("/test");
        return visit;
    }
}
