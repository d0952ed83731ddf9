using System.Net;
using AngleSharp.Dom;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class PublicPageTests(SharedShop shared) : IClassFixture<SharedShop>
{
    private static readonly PatternDocument Cloth = Charts.Document(Charts.TenEndDiamond, 2, balance: 1, floating: Charts.AlikeOver) with
    {
        Title = "Harbour lights, no. 2",
        Licence = "Weave it, <script>alert(1)</script> sell what you weave.",
        Notes = "Mine <img src=x onerror=alert(1)>\n& yours",
    };

    [Fact]
    public async Task The_page_of_a_version_has_everything_and_nothing_that_follows_a_reader()
    {
        var shop = await shared.OfAsync(static () => IssuedShop.OpenAsync(Cloth));
        var page = await shop.Reader.GetAsync(shop.Page);
        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Equal("Harbour lights, no. 2", page.Heading);
        Assert.Contains("Version 1, 24 November 2026 · Tansy Lane", page.Words, StringComparison.Ordinal);
        Assert.Contains("a multiple of 10, plus 1, plus 2 floating selvedges", page.Words, StringComparison.Ordinal);
        Assert.Equal(10, page.Html.QuerySelectorAll("table.rows tbody tr").Length);
        // computed: whole piece 1 of the check values
        Assert.Equal("[over 3, under 2, over 1, under 1, over 1, under 2] × 2, over 3", Words(page.Html.QuerySelector("#row-5 .runs [aria-hidden]")!));
        Assert.Contains("sell what you weave", page.Words, StringComparison.Ordinal);
        Assert.Contains("Take care", page.Words, StringComparison.Ordinal);
        Assert.Equal(["Printable, A4 (PDF)", "Printable, Letter (PDF)"], page.Html.QuerySelectorAll("ul.files")[0].QuerySelectorAll("a[type='application/pdf']").Select(Words));
        Assert.Equal(
            [
                "Large print, A4 (PDF)", "Large print, Letter (PDF)", "With little ink, A4 (PDF)", "With little ink, Letter (PDF)", "Row cover to cut out, A4 (PDF)",
                "Row cover to cut out, Letter (PDF)", "Chart as a picture (SVG)", "Directions as text", "Facts for programs (JSON)",
            ],
            page.Html.QuerySelectorAll("details.more ul.files a").Select(Words));
        Assert.All(page.Html.QuerySelectorAll("ul.files .size"), size => Assert.Matches("^[0-9]+ kB$", size.TextContent));
        Assert.DoesNotContain("Set-Cookie", page.Headers.Keys, StringComparer.OrdinalIgnoreCase);
        Assert.Empty(page.Html.QuerySelectorAll("script, form, iframe"));
        Assert.Equal(SecurityHeaders.StrictPolicy, page.Headers["Content-Security-Policy"]);
        Assert.Equal("nosniff", page.Headers["X-Content-Type-Options"]);
    }

    [Fact]
    public async Task What_makers_write_is_shown_as_they_wrote_it_and_never_run()
    {
        var hostile = Cloth with { Title = "\"><script>alert('t')</script>" };
        await using var shop = await IssuedShop.OpenAsync(hostile);
        foreach (var path in new[] { "/", shop.Page, shop.Page + "/v/1" })
        {
            var page = await shop.Reader.GetAsync(path);
            Assert.Equal(HttpStatusCode.OK, page.Status);
            Assert.Empty(page.Html.QuerySelectorAll("script"));
            Assert.DoesNotContain(page.Html.All.SelectMany(element => element.Attributes), attribute => attribute.Name.StartsWith("on", StringComparison.Ordinal));
            Assert.Contains(hostile.Title, page.Words, StringComparison.Ordinal);
        }

        var sheet = await shop.Reader.GetAsync(shop.Page);
        Assert.Contains("<script>alert(1)</script>", sheet.Words, StringComparison.Ordinal);
        Assert.Contains("<img src=x onerror=alert(1)>", sheet.Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_id_finds_the_page_and_another_slug_is_put_right()
    {
        var shop = await shared.OfAsync(static () => IssuedShop.OpenAsync(Cloth));
        Assert.Equal($"/p/{shop.Id}/harbour-lights-no-2", shop.Page);
        foreach (var path in new[] { $"/p/{shop.Id}", $"/p/{shop.Id}/harbor", $"/p/{shop.Id}/HARBOUR-lights-no-2" })
        {
            var answer = await shop.Reader.GetAsync(path);
            Assert.Equal((HttpStatusCode.MovedPermanently, shop.Page), (answer.Status, answer.Location));
        }

        Assert.Equal(shop.Page + "/v/1", (await shop.Reader.GetAsync($"/p/{shop.Id}/x/v/1")).Location);
        foreach (var path in new[] { "/p/0000000000/harbour-lights-no-2", "/p/short/x", shop.Page + "/v/2", shop.Page + "/v/0", shop.Page + "/v/99999999999", $"/p/{shop.Id}/v/2/picture.svg" })
        {
            Assert.Equal((path, HttpStatusCode.NotFound), (path, (await shop.Reader.GetAsync(path)).Status));
        }
    }

    [Fact]
    public async Task Old_versions_stay_and_say_that_there_is_a_newer_one()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth, "--PatternShop:PublicAddress=https://patterns.example.org");
        await shop.ReissueAsync(Cloth with { Title = "Harbour lamps", Motif = Cloth.Motif.With(0, 1, true) }, "Row 1 mended.");
        var newest = $"/p/{shop.Id}/harbour-lamps";
        Assert.Equal(newest, (await shop.Reader.GetAsync(shop.Page)).Location);
        var page = await shop.Reader.GetAsync(newest);
        Assert.Contains("Version 2, 24 November 2026", page.Words, StringComparison.Ordinal);
        Assert.Null(page.Html.QuerySelector(".newer"));
        Assert.Equal([$"{newest}/v/2", $"{newest}/v/1"], page.Html.QuerySelectorAll("ol.versions a").Select(link => link.GetAttribute("href")));
        Assert.Contains("Row 1 mended.", page.Words, StringComparison.Ordinal);

        var old = await shop.Reader.GetAsync(newest + "/v/1");
        Assert.Equal("Harbour lights, no. 2", old.Heading);
        Assert.Equal(newest, old.Html.QuerySelector(".newer a")!.GetAttribute("href"));
        Assert.Equal("https://patterns.example.org" + newest + "/v/1", Canonical(old));
        Assert.Equal("https://patterns.example.org" + newest, Canonical(await shop.Reader.GetAsync(newest + "/v/2")));
        Assert.Equal("https://patterns.example.org" + newest, Canonical(page));
    }

    [Fact]
    public async Task The_head_says_what_others_show_of_a_link()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var head = (await shop.Reader.GetAsync(shop.Page)).Html;
        Assert.Equal("Harbour lights, no. 2 · Tansy Lane", head.Title);
        Assert.Null(head.QuerySelector("link[rel=canonical]"));
        Assert.Equal("Harbour lights, no. 2", Meta(head, "og:title"));
        Assert.Equal("Tansy Lane", Meta(head, "og:site_name"));
        Assert.Equal("Harbour lights, no. 2 by Tansy Lane: a chart for small frame looms, 23 ends and 10 rows, with every row in words and a sheet to print.", Meta(head, "og:description"));
        Assert.Equal(Meta(head, "og:description"), head.QuerySelector("meta[name=description]")!.GetAttribute("content"));
        await shop.Shop.Makers.SetPublicAddressAsync("https://weave.example.org/", TestContext.Current.CancellationToken);
        Assert.Equal("https://weave.example.org" + shop.Page, Canonical(await shop.Reader.GetAsync(shop.Page)));
    }

    [Fact]
    public async Task Files_lie_at_their_hash_for_ever()
    {
        var shop = await shared.OfAsync(static () => IssuedShop.OpenAsync(Cloth));
        var links = (await shop.Reader.GetAsync(shop.Page)).Html.QuerySelectorAll("ul.files a").ToList();
        Assert.Equal(11, links.Count);
        foreach (var link in links)
        {
            var path = link.GetAttribute("href")!;
            var answer = await shop.Reader.GetAsync(path);
            var hash = path.Split('/')[2];
            Assert.Equal(PatternWriter.Hash(answer.Body), hash);
            Assert.Equal(link.GetAttribute("type"), answer.Headers["Content-Type"]);
            Assert.Equal("public, max-age=31536000, immutable", answer.Headers["Cache-Control"]);
            Assert.Equal($"\"{hash}\"", answer.Headers["ETag"]);
            Assert.StartsWith($"attachment; filename={path.Split('/')[3]}", answer.Headers["Content-Disposition"], StringComparison.Ordinal);
            Assert.Equal(SecurityHeaders.StrictPolicy, answer.Headers["Content-Security-Policy"]);

            var head = await shop.Reader.SendAsync(HttpMethod.Head, path);
            Assert.Equal((HttpStatusCode.OK, 0, answer.Body.Length.ToString(System.Globalization.CultureInfo.InvariantCulture)), (head.Status, head.Body.Length, head.Headers["Content-Length"]));
            var known = await shop.Reader.SendAsync(HttpMethod.Get, path, null, ("If-None-Match", $"\"{hash}\""));
            Assert.Equal((HttpStatusCode.NotModified, 0), (known.Status, known.Body.Length));
            var part = await shop.Reader.SendAsync(HttpMethod.Get, path, null, ("Range", "bytes=1-3"));
            Assert.Equal(HttpStatusCode.PartialContent, part.Status);
            Assert.Equal(answer.Body[1..4], part.Body);
        }

        foreach (var path in new[] { $"/files/{new string('0', 64)}/x.pdf", "/files/x/x.pdf", links[0].GetAttribute("href")!.ToUpperInvariant().Replace("/FILES", "/files", StringComparison.Ordinal) })
        {
            Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync(path)).Status);
        }
    }

    [Fact]
    public async Task Pages_are_not_sent_again_to_who_has_them()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        foreach (var path in new[] { "/", shop.Page, "/samples/first-steps" })
        {
            var tag = (await shop.Reader.GetAsync(path)).Headers["ETag"];
            var again = await shop.Reader.SendAsync(HttpMethod.Get, path, null, ("If-None-Match", tag));
            Assert.Equal((HttpStatusCode.NotModified, 0, tag), (again.Status, again.Body.Length, again.Headers["ETag"]));
            Assert.Equal(HttpStatusCode.OK, (await shop.Reader.SendAsync(HttpMethod.Get, path, null, ("If-None-Match", "W/\"other\""))).Status);
        }

        var before = (await shop.Reader.GetAsync(shop.Page)).Headers["ETag"];
        await shop.ReissueAsync(Cloth with { Notes = "" }, "");
        Assert.Equal(HttpStatusCode.OK, (await shop.Reader.SendAsync(HttpMethod.Get, shop.Page, null, ("If-None-Match", before))).Status);
    }

    [Fact]
    public async Task A_withdrawn_pattern_is_gone_with_its_files_and_comes_back_when_it_is_restored()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var file = (await shop.Reader.GetAsync(shop.Page)).Html.QuerySelector("ul.files a")!.GetAttribute("href")!;
        Assert.Equal(HttpStatusCode.OK, (await shop.Reader.GetAsync(file)).Status);
        await shop.Maker.PostAsync("/studio", $"/studio/patterns/{shop.Id}/withdraw");
        foreach (var path in new[] { shop.Page, shop.Page + "/v/1", $"/p/{shop.Id}" })
        {
            var gone = await shop.Reader.GetAsync(path);
            Assert.Equal((HttpStatusCode.Gone, "This pattern was withdrawn"), (gone.Status, gone.Heading));
            Assert.DoesNotContain("Harbour", gone.Text, StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync(file)).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync($"/p/{shop.Id}/v/1/picture.svg")).Status);
        Assert.DoesNotContain("Harbour lights, no. 2", (await shop.Reader.GetAsync("/")).Text, StringComparison.Ordinal);
        await shop.Maker.PostAsync("/studio", $"/studio/patterns/{shop.Id}/restore");
        Assert.Equal(HttpStatusCode.OK, (await shop.Reader.GetAsync(shop.Page)).Status);
        Assert.Equal(HttpStatusCode.OK, (await shop.Reader.GetAsync(file)).Status);
    }

    [Fact]
    public async Task The_shop_front_shows_what_is_published_with_its_picture()
    {
        var shop = await shared.OfAsync(static () => IssuedShop.OpenAsync(Cloth));
        var front = (await shop.Reader.GetAsync("/")).Html;
        var item = Assert.Single(front.QuerySelectorAll("ul.shelf li"));
        Assert.Equal(shop.Page, item.QuerySelector("a")!.GetAttribute("href"));
        Assert.Equal("Harbour lights, no. 2", item.QuerySelector(".title")!.TextContent);
        var picture = await shop.Reader.GetAsync(item.QuerySelector("img")!.GetAttribute("src")!);
        Assert.Equal((HttpStatusCode.OK, "image/svg+xml"), (picture.Status, picture.Headers["Content-Type"]));
        Assert.Contains("<svg", picture.Text, StringComparison.Ordinal);
        Assert.Equal("Tansy Lane: charts for small frame looms", front.Title);
        Assert.NotNull(front.QuerySelector("a[href='/samples']"));
    }

    [Fact]
    public async Task A_maker_who_reads_public_pages_gets_the_same_bytes_and_no_cookie()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        shop.Shop.Clock.Now += TimeSpan.FromDays(13);
        foreach (var path in new[] { "/", shop.Page })
        {
            var (mine, theirs) = (await shop.Maker.GetAsync(path), await shop.Reader.GetAsync(path));
            Assert.Equal(theirs.Text, mine.Text);
            Assert.DoesNotContain("Set-Cookie", mine.Headers.Keys, StringComparer.OrdinalIgnoreCase);
        }
    }

    [Theory]
    [InlineData("Harbour lights", "harbour-lights")]
    [InlineData("  Weaver's  knot -- No. 2! ", "weavers-knot-no-2")]
    [InlineData("木綿", "pattern")]
    [InlineData("<script>", "script")]
    [InlineData("Été", "t")]
    public void Slugs_are_small_letters_digits_and_hyphens(string title, string slug) => Assert.Equal(slug, Slug.Of(title));

    [Fact]
    public void Slugs_are_not_long() => Assert.Equal(new string('a', 60), Slug.Of(new string('a', 59) + "a-b"));

    private static string Words(IElement element) => string.Join(' ', element.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static string? Canonical(Reply page) => page.Html.QuerySelector("link[rel=canonical]")?.GetAttribute("href");

    private static string? Meta(IParentNode head, string property) => head.QuerySelector($"meta[property='{property}']")?.GetAttribute("content");
}

/// <summary>A shop with one pattern issued, its maker and a reader.</summary>
internal sealed record IssuedShop(TestShop Shop, Visitor Maker, Visitor Reader, PatternId Id, string Page) : IAsyncDisposable
{
    private long _revision = 1;

    public static async Task<IssuedShop> OpenAsync(PatternDocument document, params string[] settings)
    {
        var (shop, maker) = await TestShop.SetUpAsync(settings);
        var id = await shop.PatternAsync(document);
        await TestShop.IssueAsync(maker, id);
        var reader = shop.Visit();
        return new IssuedShop(shop, maker, reader, id, (await reader.GetAsync($"/p/{id}")).Location ?? throw new InvalidOperationException("It was not issued."));
    }

    public async Task ReissueAsync(PatternDocument document, string note, string kind = "correction")
    {
        await Shop.Workroom.SaveAsync((await Shop.MakerAsync()).Id, Id, new StepRequest("test", _revision, _revision, "Change", document));
        _revision++;
        await TestShop.IssueAsync(Maker, Id, note, kind);
    }

    public async ValueTask DisposeAsync()
    {
        Maker.Dispose();
        Reader.Dispose();
        await Shop.DisposeAsync();
    }
}
