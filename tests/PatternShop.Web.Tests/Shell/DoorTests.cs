using System.Net;
using System.Net.WebSockets;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>What the server lets in, and what browsers are told to let in: from other sites, over TLS and without.</summary>
public sealed class DoorTests
{
    private const string Public = "https://patterns.example.org";
    private static readonly string[] BehindProxy = ["--PatternShop:KnownProxies=127.0.0.1", "--PatternShop:PublicAddress=" + Public];
    private static readonly (string Name, string Value) Tls = ("X-Forwarded-Proto", "https");

    [Theory]
    [InlineData("own", HttpStatusCode.SwitchingProtocols)]
    [InlineData(Public, HttpStatusCode.SwitchingProtocols)]
    [InlineData("", HttpStatusCode.Forbidden)]
    [InlineData("null", HttpStatusCode.Forbidden)]
    [InlineData("https://elsewhere.example", HttpStatusCode.Forbidden)]
    [InlineData("https://patterns.example.org.elsewhere.example", HttpStatusCode.Forbidden)]
    [InlineData("https://patterns.example.org:8443", HttpStatusCode.Forbidden)]
    [InlineData("http://127.0.0.1:1", HttpStatusCode.Forbidden)]
    public async Task The_workbench_takes_a_websocket_from_a_page_of_its_own_only(string origin, HttpStatusCode status)
    {
        var (shop, maker) = await TestShop.SetUpAsync(BehindProxy);
        await using var _ = shop;
        Assert.Equal(status, await ConnectAsync(shop, origin == "own" ? shop.Address.GetLeftPart(UriPartial.Authority) : origin, [("Cookie", $"patternshop.maker={maker.Cookies["patternshop.maker"]!.Value}")]));
        maker.Dispose();
    }

    [Fact]
    public async Task Behind_a_proxy_with_TLS_the_websocket_opens_with_the_marked_cookie_alone()
    {
        var (shop, maker) = await TestShop.SetUpAsync(BehindProxy);
        await using var _ = shop;
        var session = $"patternshop.maker={maker.Cookies["patternshop.maker"]!.Value}";
        Assert.Equal(HttpStatusCode.SwitchingProtocols, await ConnectAsync(shop, Public, [("Cookie", "__Host-" + session), ("Host", "patterns.example.org"), Tls]));
        // a cookie without the mark may have been set by another host of the domain: whoever has an old one signs in again
        Assert.NotEqual(HttpStatusCode.SwitchingProtocols, await ConnectAsync(shop, Public, [("Cookie", session), ("Host", "patterns.example.org"), Tls]));
        maker.Dispose();
    }

    [Fact]
    public async Task What_the_circuit_asks_for_beside_its_websocket_is_refused_to_other_sites_too()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        Assert.Equal(HttpStatusCode.Forbidden, (await maker.SendAsync(HttpMethod.Post, "/_blazor/negotiate?negotiateVersion=1", null, ("Origin", "https://elsewhere.example"))).Status);
        Assert.Equal(HttpStatusCode.OK, (await maker.SendAsync(HttpMethod.Post, "/_blazor/negotiate?negotiateVersion=1", null, ("Origin", shop.Address.GetLeftPart(UriPartial.Authority)))).Status);
        maker.Dispose();
    }

    [Theory]
    [InlineData("https", "shop.example", true)]
    [InlineData("http", "patterns.example.org", true)]
    [InlineData("http", "127.0.0.1", false)]
    public async Task Over_TLS_every_cookie_is_marked_so_that_no_other_host_can_set_it(string scheme, string host, bool isMarked)
    {
        await using var shop = await TestShop.OpenAsync(null, BehindProxy);
        using var visitor = shop.Visit();
        (string, string)[] headers = [("X-Forwarded-Proto", scheme), ("Host", host)];
        var code = shop.SetUpPath.Split('=')[1];
        var setUp = await visitor.SendAsync(HttpMethod.Get, $"/setup?code={code}", null, headers);
        var carried = Set(setUp);
        var page = await visitor.SendAsync(HttpMethod.Get, "/setup", null, [.. headers, ("Cookie", carried[0].Split(';')[0])]);
        var token = page.Html.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        using var form = new FormUrlEncodedContent(
            [.. TestShop.SetUpFields().Select(field => KeyValuePair.Create(field.Name, field.Value)), new("Code", code), new("__RequestVerificationToken", token)]);
        var done = await visitor.SendAsync(HttpMethod.Post, "/setup", form, [.. headers, ("Cookie", Set(page)[0].Split(';')[0])]);
        Assert.Equal("/studio", done.Location);
        // the mark of a known browser is of use at the public address only, whence it always has that name
        string[] cookies = [.. carried, .. Set(page), .. Set(done).Where(cookie => isMarked || !cookie.Contains("patternshop.browser=", StringComparison.Ordinal))];
        Assert.True(cookies.Length >= 4, string.Join('\n', cookies));
        Assert.All(cookies, cookie =>
        {
            Assert.Equal(isMarked, cookie.StartsWith("__Host-patternshop.", StringComparison.Ordinal));
            Assert.Equal(isMarked, cookie.Contains("; secure", StringComparison.Ordinal));
            Assert.Contains("; path=/;", cookie, StringComparison.Ordinal);
            Assert.DoesNotContain("domain", cookie, StringComparison.OrdinalIgnoreCase);
        });
        var session = Set(done).Single(cookie => cookie.Contains("patternshop.maker=", StringComparison.Ordinal)).Split(';')[0];
        Assert.Equal(HttpStatusCode.OK, (await visitor.SendAsync(HttpMethod.Get, "/studio", null, [.. headers, ("Cookie", session)])).Status);
    }

    [Fact]
    public async Task A_browser_that_came_over_TLS_is_told_to_stay_there()
    {
        await using var shop = await TestShop.OpenAsync(null, BehindProxy);
        using var visitor = shop.Visit();
        Assert.Equal("max-age=31536000", (await visitor.SendAsync(HttpMethod.Get, "/", null, Tls)).Headers.GetValueOrDefault("Strict-Transport-Security"));
        Assert.DoesNotContain("Strict-Transport-Security", (await visitor.GetAsync("/")).Headers.Keys, StringComparer.OrdinalIgnoreCase);
        await using var direct = await TestShop.OpenAsync();
        using var liar = direct.Visit();
        Assert.DoesNotContain("Strict-Transport-Security", (await liar.SendAsync(HttpMethod.Get, "/", null, Tls)).Headers.Keys, StringComparer.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task Other_sites_may_show_the_picture_of_a_link_and_nothing_else()
    {
        await using var shop = await IssuedShop.OpenAsync(Charts.Document(Charts.TenEndDiamond));
        foreach (var (path, policy) in new[]
        {
            ($"/p/{shop.Id}/v/1/cloth.png", "cross-origin"), ("/", "same-origin"), (shop.Page, "same-origin"), ($"/p/{shop.Id}/v/1/picture.svg", "same-origin"), ("/none", "same-origin"),
            ("/css/public.css", "same-origin"), ("/samples/kestrel/a4.pdf", "same-origin"),
        })
        {
            Assert.Equal((path, policy), (path, (await shop.Reader.GetAsync(path)).Headers.GetValueOrDefault("Cross-Origin-Resource-Policy")));
        }
    }

    private static string[] Set(Reply reply) => reply.Headers.GetValueOrDefault("Set-Cookie", "").Split(", ").Aggregate(new List<string>(), Join).ToArray();

    // dates hold a comma too
    private static List<string> Join(List<string> cookies, string part)
    {
        if (part.Contains("patternshop.", StringComparison.Ordinal))
        {
            cookies.Add(part);
        }
        else if (cookies.Count > 0)
        {
            cookies[^1] += ", " + part;
        }

        return cookies;
    }

    private static async Task<HttpStatusCode> ConnectAsync(TestShop shop, string origin, (string Name, string Value)[] headers)
    {
        using var socket = new ClientWebSocket();
        socket.Options.CollectHttpResponseDetails = true;
        socket.Options.Proxy = null;
        foreach (var (name, value) in origin.Length > 0 ? [("Origin", origin), .. headers] : headers)
        {
            socket.Options.SetRequestHeader(name, value);
        }

        try
        {
            await socket.ConnectAsync(new UriBuilder(shop.Address) { Scheme = "ws", Path = "/_blazor" }.Uri, TestContext.Current.CancellationToken);
        }
        catch (WebSocketException)
        {
            // the answer says why
        }

        socket.Abort();
        return socket.HttpStatusCode;
    }
}
