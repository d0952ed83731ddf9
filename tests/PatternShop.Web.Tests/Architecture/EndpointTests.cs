using System.Net;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>
/// Every address that the server answers at is listed in <see cref="KnownRoutes"/> with what it is for: a new one without a line fails. The
/// addresses of makers are then asked for by strangers and by another maker, and nothing may come of it.
/// </summary>
public sealed class EndpointTests
{
    private static readonly (string, string)[] Fields = [("revision", "1"), ("Note", ""), ("sample", "first-steps"), ("Answer", "Thank you."), ("Text", "")];

    [Fact]
    public async Task Every_address_has_a_line_and_every_line_an_address()
    {
        await using var shop = await TestShop.OpenAsync();
        Assert.Equal(KnownRoutes.All.Select(route => route.Endpoint).Order(StringComparer.Ordinal), Endpoints(shop).Select(Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Every_address_says_whom_it_lets_in_and_it_is_whom_the_line_says()
    {
        await using var shop = await TestShop.OpenAsync();
        foreach (var endpoint in Endpoints(shop))
        {
            var open = KnownRoutes.All.Single(route => route.Endpoint == Name(endpoint)).For is For.Everybody or For.EverybodysForm;
            Assert.Equal(open, endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null);
            Assert.Equal(!open, endpoint.Metadata.GetMetadata<IAuthorizeData>() is not null);
        }
    }

    [Fact]
    public async Task Every_page_is_listed_with_its_heading_so_that_none_is_left_out_where_pages_are_looked_at()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var patterns = await PatternsAsync(shop, maker);
        var owner = (await shop.MakerAsync()).Id;
        var document = (await shop.Workroom.OpenAsync(owner, patterns.Issued, TestContext.Current.CancellationToken))!.Document;
        await shop.Workroom.SaveAsync(owner, patterns.Issued, new StepRequest("test", 1, 1, "Turn a cell", document with { Motif = document.Motif.With(0, 0, !document.Motif[0, 0]) }), TestContext.Current.CancellationToken);
        await TestShop.IssueAsync(maker, patterns.Issued);
        var sent = Assert.IsType<SendResult.Sent>(await shop.Services.GetRequiredService<ReportDesk>().SendAsync(patterns.Issued, 1, new NewReport(1, "Wrong.", ""), TestContext.Current.CancellationToken));
        var preview = await shop.Services.GetRequiredService<PreviewDesk>().BeginAsync(owner, patterns.Issued, TestContext.Current.CancellationToken);
        var copy = (await shop.Services.GetRequiredService<PublicShelf>().VersionAsync(patterns.Issued, 1, TestContext.Current.CancellationToken))!.Code;
        using var stranger = shop.Visit();
        await using var fresh = await TestShop.OpenAsync();
        using var first = fresh.Visit();
        var pages = 0;
        foreach (var route in KnownRoutes.All.Where(route => route.Takes("GET") && route.For != For.Circuit))
        {
            var path = patterns.In(route.Path).Replace("{report}", sent.Secret, StringComparison.Ordinal).Replace("{preview}", preview, StringComparison.Ordinal).Replace("{copy}", copy!.Value, StringComparison.Ordinal);
            var answer = route.Path == "{setup}" ? await first.FollowAsync(fresh.SetUpPath) : await (route.For == For.Everybody ? stranger : maker).GetAsync(path);
            var isPage = answer.Status == HttpStatusCode.OK && answer.Headers["Content-Type"].StartsWith("text/html", StringComparison.Ordinal);
            Assert.Equal((path, isPage), (path, route.Heading is not null));
            if (isPage)
            {
                pages++;
                // the editor's comes with its script
                Assert.Contains(answer.Heading, new[] { "", route.Heading!.Replace("{studio}", TestShop.Studio, StringComparison.Ordinal) });
            }
        }

        Assert.True(pages >= 25, $"only {pages} pages");
        maker.Dispose();
    }

    [Fact]
    public async Task No_form_is_taken_without_the_token_of_a_page_of_ours()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var patterns = await PatternsAsync(shop, maker);
        foreach (var path in Lines("POST", For.EverybodysForm, For.Maker, For.Owner))
        {
            Assert.Equal((path, HttpStatusCode.BadRequest), (path, (await maker.PostPlainAsync(patterns.In(path), Fields)).Status));
            Assert.Equal((path, HttpStatusCode.BadRequest), (path, (await maker.PostPlainAsync(patterns.In(path), [("__RequestVerificationToken", "CfDJ8AAAA"), .. Fields])).Status));
            using var notForm = new StringContent("{}", System.Text.Encoding.UTF8, "application/json");
            Assert.Equal((path, HttpStatusCode.BadRequest), (path, (await maker.SendAsync(HttpMethod.Post, patterns.In(path), notForm)).Status));
        }

        Assert.Equal(patterns.State, await StateAsync(shop));
        maker.Dispose();
    }

    [Fact]
    public async Task A_token_of_somebody_else_does_not_do()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        using var other = await shop.SecondMakerAsync();
        await using var _ = shop;
        var token = await other.TokenAsync("/studio/new");
        Assert.Equal(HttpStatusCode.BadRequest, (await maker.PostPlainAsync("/studio/new", [("__RequestVerificationToken", token), .. Fields])).Status);
        maker.Dispose();
    }

    [Fact]
    public async Task A_form_of_a_megabyte_is_refused()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var answer = await maker.PostAsync("/studio/new", "/studio/new", ("Title", new string('a', 1_000_000)));
        Assert.Equal((HttpStatusCode.RequestEntityTooLarge, "This is more than we take at once"), (answer.Status, answer.Heading));
        maker.Dispose();
    }

    [Fact]
    public async Task A_stranger_is_asked_to_sign_in_and_changes_nothing()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        using var stranger = shop.Visit();
        var patterns = await PatternsAsync(shop, maker);
        foreach (var path in Lines("GET", For.Maker, For.Owner, For.Circuit))
        {
            var answer = await stranger.GetAsync(patterns.In(path));
            Assert.Equal((path, HttpStatusCode.Redirect), (path, answer.Status));
            Assert.Equal("/sign-in?return=" + Uri.EscapeDataString(patterns.In(path)), answer.Location);
        }

        foreach (var path in Lines("POST", For.Maker, For.Owner))
        {
            var answer = await stranger.PostAsync("/sign-in", patterns.In(path), Fields);
            Assert.Equal((path, HttpStatusCode.Redirect, "/sign-in?return=%2Fstudio"), (path, answer.Status, answer.Location));
        }

        Assert.Equal(patterns.State, await StateAsync(shop));
        maker.Dispose();
    }

    [Fact]
    public async Task Another_maker_gets_what_they_would_get_for_a_pattern_that_there_is_not_and_changes_nothing()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        using var other = await shop.SecondMakerAsync();
        var patterns = await PatternsAsync(shop, maker);
        foreach (var path in Lines("GET", For.Owner))
        {
            var (answer, nothing) = (await other.GetAsync(patterns.In(path)), await other.GetAsync(Patterns.Nowhere(path)));
            Assert.Equal((path, HttpStatusCode.NotFound), (path, answer.Status));
            Assert.Equal(nothing.Text, answer.Text);
        }

        foreach (var path in Lines("POST", For.Owner))
        {
            var (answer, nothing) = (await other.PostAsync("/studio/new", patterns.In(path), Fields), await other.PostAsync("/studio/new", Patterns.Nowhere(path), Fields));
            Assert.Equal((path, HttpStatusCode.NotFound), (path, answer.Status));
            Assert.Equal(nothing.Text, answer.Text);
        }

        foreach (var path in Lines("GET", For.Maker))
        {
            Assert.DoesNotContain("Secret cloth", (await other.GetAsync(path)).Text, StringComparison.Ordinal);
        }

        await other.PostAsync("/studio/new", "/studio/new", Fields);
        Assert.Equal(patterns.State, await StateAsync(shop));
        maker.Dispose();
    }

    [Fact]
    public async Task The_owner_gets_all_of_them_so_the_refusals_above_are_not_for_another_reason()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var patterns = await PatternsAsync(shop, maker);
        foreach (var path in Lines("GET", For.Maker, For.Owner))
        {
            var answer = await maker.GetAsync(patterns.In(path));
            Assert.Equal((path, HttpStatusCode.OK), (path, answer.Status));
            Assert.Contains(Path.GetExtension(path) is ".svg" or ".jpg" ? "private" : "no-store", answer.Headers["Cache-Control"], StringComparison.Ordinal);
        }

        foreach (var path in Lines("POST", For.Maker, For.Owner))
        {
            // the editor takes no forms, a photo without a picture is none, and no pattern comes without a file
            var done = path switch
            {
                "/studio/patterns/{new}" => HttpStatusCode.BadRequest,
                "/studio/patterns/{new}/photos" or "/studio/bring-in" => HttpStatusCode.UnprocessableEntity,
                // its answer shows the secret, which must not be in an address
                "/studio/patterns/{id}/preview" or "/studio/patterns/{new}/preview" => HttpStatusCode.OK,
                _ => HttpStatusCode.SeeOther,
            };
            Assert.Equal((path, done), (path, (await maker.PostAsync("/studio/new", patterns.In(path), Fields)).Status));
        }

        Assert.NotEqual(patterns.State, await StateAsync(shop));
        maker.Dispose();
    }

    private static IEnumerable<RouteEndpoint> Endpoints(TestShop shop) =>
        shop.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Where(endpoint => endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is null);

    // fetching and asking for the headers alone is one thing
    private static string Name(RouteEndpoint endpoint)
    {
        var methods = endpoint.Metadata.GetMetadata<IHttpMethodMetadata>()?.HttpMethods.Where(method => method != "HEAD").ToList() ?? [];
        return $"{(methods.Count == 0 ? "GET" : string.Join('+', methods))} /{endpoint.RoutePattern.RawText!.TrimStart('/')}";
    }

    private static IEnumerable<string> Lines(string method, params For[] whom) =>
        KnownRoutes.All.Where(route => route.Takes(method) && whom.Contains(route.For)).Select(route => route.Path);

    private static async Task<Patterns> PatternsAsync(TestShop shop, Visitor maker)
    {
        var document = Charts.Document(Charts.TenEndDiamond) with { Title = "Secret cloth" };
        var (issued, fresh, other, hidden) = (await shop.PatternAsync(document), await shop.PatternAsync(document), await shop.PatternAsync(document), await shop.PatternAsync(document));
        await TestShop.IssueAsync(maker, issued);
        await TestShop.IssueAsync(maker, hidden);
        Assert.IsType<SendResult.Sent>(await shop.Services.GetRequiredService<ReportDesk>().SendAsync(issued, 1, new NewReport(1, "Wrong.", ""), TestContext.Current.CancellationToken));
        await shop.Services.GetRequiredService<PreviewDesk>().BeginAsync((await shop.MakerAsync()).Id, issued, TestContext.Current.CancellationToken);
        Assert.IsType<KeepResult.Kept>(await shop.Services.GetRequiredService<PhotoDesk>().KeepAsync(
            (await shop.MakerAsync()).Id, fresh, new PictureFile([1, 2, 3], 1, 1), new PictureFile([4], 1, 1), TestContext.Current.CancellationToken));
        Assert.True(await shop.Workroom.WithdrawAsync((await shop.MakerAsync()).Id, hidden, TestContext.Current.CancellationToken));
        var thrown = await shop.PatternAsync(document);
        Assert.True(await shop.Workroom.DeleteAsync((await shop.MakerAsync()).Id, thrown, TestContext.Current.CancellationToken));
        return new Patterns(issued, fresh, other, hidden, thrown, await StateAsync(shop));
    }

    /// <summary>Everything that the first maker has, in one text.</summary>
    private static async Task<string> StateAsync(TestShop shop)
    {
        var maker = (await shop.MakerAsync()).Id;
        var cards = await shop.Workroom.ListAsync(maker, TestContext.Current.CancellationToken);
        var lines = new List<string>((await shop.Workroom.DeletedAsync(maker, TestContext.Current.CancellationToken)).Select(card => card.ToString()));
        foreach (var card in cards.OrderBy(card => card.Id.Value, StringComparer.Ordinal))
        {
            lines.Add(card.ToString());
            lines.Add($"preview since {await shop.Services.GetRequiredService<PreviewDesk>().BeganAsync(maker, card.Id, TestContext.Current.CancellationToken)}");
            lines.AddRange((await shop.Services.GetRequiredService<ReportDesk>().ListAsync(maker, card.Id, TestContext.Current.CancellationToken))!.Select(report => report.ToString()));
        }

        return string.Join('\n', lines);
    }

    private sealed record Patterns(PatternId Issued, PatternId New, PatternId Other, PatternId Hidden, PatternId Thrown, string State)
    {
        public string In(string path) => Fill(path, Issued.Value, New.Value, Other.Value, Hidden.Value, Thrown.Value);

        public static string Nowhere(string path) => Fill(path, "0000000000", "0000000000", "0000000000", "0000000000", "0000000000");

        private static string Fill(string path, string issued, string fresh, string other, string hidden, string thrown) => path
            .Replace("{id}", issued, StringComparison.Ordinal)
            .Replace("{new}", fresh, StringComparison.Ordinal)
            .Replace("{other}", other, StringComparison.Ordinal)
            .Replace("{hidden}", hidden, StringComparison.Ordinal)
            .Replace("{thrown}", thrown, StringComparison.Ordinal);
    }
}
