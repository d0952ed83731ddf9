using AngleSharp.Html.Parser;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>What holds for every page, whatever it shows.</summary>
public sealed class StaticPageTests(WebServer server)
{
    private const string Policy =
        "default-src 'none'; img-src 'self' data:; style-src 'self'; font-src 'self'; script-src 'self'; connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

    public static TheoryData<string, int> Pages => new(
        [("/", 200), ("/samples", 200), ("/nothing-here", 404), ("/p/nothing-here", 404), ("/samples/kestrel/nothing-here", 404), (WebServer.FaultAddress, 500), (WebServer.HostileAddress, 200),
            .. SamplePages.Names.Select(name => ($"/samples/{name}", 200))]);

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Pages_have_their_status_and_keep_the_rules(string address, int status)
    {
        var answer = await server.Get(address);
        Assert.Equal(status, answer.Status);
        Assert.Equal("text/html; charset=utf-8", answer.Header("Content-Type"));
        Assert.Empty(PageRules.Faults(answer.Page()));
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Answers_carry_the_strict_policy_and_no_cookie(string address, int status)
    {
        var answer = await server.Get(address);
        Assert.Equal(status, answer.Status);
        Assert.Equal(Policy, answer.Header("Content-Security-Policy"));
        Assert.Equal("nosniff", answer.Header("X-Content-Type-Options"));
        Assert.Equal("same-origin", answer.Header("Referrer-Policy"));
        Assert.Equal("", answer.Header("Set-Cookie"));
        Assert.Equal("", answer.Header("Server"));
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/samples/kestrel")]
    [InlineData("/samples/kestrel/chart.svg")]
    [InlineData("/css/public.css")]
    [InlineData("/nothing-here")]
    public async Task Only_the_headers_of_a_page_can_be_asked_for(string address)
    {
        var whole = await server.Get(address);
        var head = await server.Get(address, HttpMethod.Head);
        Assert.Equal(whole.Status, head.Status);
        Assert.Equal(whole.Header("Content-Type"), head.Header("Content-Type"));
        Assert.Equal(whole.Header("Content-Security-Policy"), head.Header("Content-Security-Policy"));
        Assert.Empty(head.Bytes);
        Assert.NotEmpty(whole.Bytes);
    }

    [Fact]
    public async Task Pages_lead_only_to_what_is_there()
    {
        var links = new HashSet<string>(StringComparer.Ordinal);
        foreach (var address in SamplePages.Names.Select(name => $"/samples/{name}").Append("/").Append("/samples"))
        {
            var page = (await server.Get(address)).Page();
            links.UnionWith(page.QuerySelectorAll("[href]").Select(link => link.GetAttribute("href")!));
        }

        Assert.Contains("/css/public.css", links);
        foreach (var link in links.Where(link => link.StartsWith('/')))
        {
            // makers are asked to sign in first
            Assert.Equal((link, link == "/studio" ? 302 : 200), (link, (await server.Get(link)).Status));
        }
    }

    [Fact]
    public async Task An_address_says_what_it_cannot_do()
    {
        var answer = await server.Get("/", HttpMethod.Post);
        Assert.Equal(405, answer.Status);
        Assert.Equal("This address cannot do that", answer.Page().QuerySelector("h1")?.TextContent);
    }

    [Fact]
    public async Task The_server_says_that_it_is_well()
    {
        var answer = await server.Get("/healthz");
        Assert.Equal((200, "Healthy"), (answer.Status, answer.Text));
    }

    [Theory]
    [InlineData("<script>1</script>", "<script>")]
    [InlineData("<script type=module>1</script>", "<script>")]
    [InlineData("<script src='/a.js'></script>", "<script>")]
    [InlineData("<p style='color:red'>a</p>", "<p style=color:red>")]
    [InlineData("<p onclick='x()'>a</p>", "<p onclick=x()>")]
    [InlineData("<a href='https://example.org/'>a</a>", "leads away: https://example.org/")]
    [InlineData("<img src='//example.org/a.png' alt=''>", "leads away: //example.org/a.png")]
    [InlineData("<p id=a>a</p><p id=a>b</p>", "id twice: a")]
    [InlineData("<section aria-labelledby=gone></section>", "no element gone")]
    [InlineData("<h3>a</h3>", "heading 3 under 1")]
    [InlineData("<main></main>", "not one main part")]
    public void Each_rule_can_be_broken(string part, string fault)
    {
        var page = new HtmlParser().ParseDocument($"<!DOCTYPE html><html lang=en><title>t</title><main><h1>h</h1></main>{part}");
        Assert.Equal(fault, Assert.Single(PageRules.Faults(page)));
    }
}
