using System.Net;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>Public pages are compressed, whatever the scheme; what holds a token, a maker's things or a private address is not.</summary>
public sealed class OpenCompressionTests
{
    [Theory]
    [InlineData("http")]
    [InlineData("https")]
    public async Task What_may_be_kept_is_compressed_and_nothing_else_is(string scheme)
    {
        await using var shop = await IssuedShop.OpenAsync(Charts.Document(Charts.TenEndDiamond), "--PatternShop:KnownProxies=127.0.0.1");
        var preview = await TestShop.PreviewAsync(shop.Maker, shop.Id);
        var sent = await shop.Reader.FillAsync(shop.Page + "/v/1/report", shop.Page + "/v/1/report", ("Text", "Wrong."));
        foreach (var (path, isOpen) in new[]
        {
            ("/", true), (shop.Page, true), (shop.Page + "/weave", true), ($"/p/{shop.Id}/v/1/picture.svg", true), ("/c", true), ("/samples/kestrel/directions.txt", true),
            ("/sign-in", false), (shop.Page + "/v/1/report", false), (sent.Location!, false), (preview, false), (preview + "/weave", false), (preview + "/chart.svg", false),
        })
        {
            await Is(shop.Reader, path, isOpen);
        }

        await Is(shop.Maker, $"/studio/patterns/{shop.Id}/preview", false);
        await Is(shop.Maker, "/studio", false);

        async Task Is(Visitor visitor, string path, bool isOpen)
        {
            // as a browser sends them over TLS
            var cookies = string.Join("; ", visitor.Cookies.Select(cookie => $"__Host-{cookie}"));
            var answer = await visitor.SendAsync(HttpMethod.Get, path, null, ("Accept-Encoding", "br, gzip"), ("X-Forwarded-Proto", scheme), ("Cookie", cookies));
            Assert.Equal((path, HttpStatusCode.OK, isOpen ? "br" : null), (path, answer.Status, answer.Headers.GetValueOrDefault("Content-Encoding")));
            Assert.Equal((path, !isOpen), (path, answer.Headers.GetValueOrDefault("Cache-Control", "").Contains("no-store", StringComparison.Ordinal)));
        }
    }
}
