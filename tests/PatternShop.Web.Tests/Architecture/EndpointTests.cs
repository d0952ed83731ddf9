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
/// Every address that the server answers at is listed here with what it is for: a new one without a line fails. The
/// addresses of makers are then asked for by strangers and by another maker, and nothing may come of it.
/// </summary>
public sealed class EndpointTests
{
    /// <summary>Who an address is for.</summary>
    public enum For
    {
        /// <summary>Everybody; knows nothing about makers but what they issued.</summary>
        Everybody,

        /// <summary>A form for everybody.</summary>
        EverybodysForm,

        /// <summary>Whoever is signed in, about themselves.</summary>
        Maker,

        /// <summary>The maker of the one pattern that it names.</summary>
        Owner,

        /// <summary>The workbench's own machinery: for whoever is signed in; each message through it is judged by itself.</summary>
        Circuit,
    }

    // SHA-256 of the bytes 01 02 03, agreed by coreutils sha256sum: a photo of the pattern that was not issued
    private const string PhotoHash = "039058c6f2c0cb492c533b0a4d14ef77cc0f78abccced5287d84a1a2011cfb81";

    // {id} stands for a pattern that was issued, {new} for one that was not, {hidden} for one that was withdrawn, {thrown} for one that was thrown away
    private static readonly Dictionary<string, (For For, string Path)> Known = new(StringComparer.Ordinal)
    {
        // the program's own style sheets and fonts, as long as it is not published
        ["GET /{**path:file}"] = (For.Everybody, "/css/none.css"),
        ["GET /healthz"] = (For.Everybody, "/healthz"),
        ["GET /"] = (For.Everybody, "/"),
        ["GET /samples"] = (For.Everybody, "/samples"),
        ["GET /samples/{name}"] = (For.Everybody, "/samples/first-steps"),
        ["GET /samples/{name}/{file}"] = (For.Everybody, "/samples/first-steps/chart.svg"),
        ["GET /p/{id}"] = (For.Everybody, "/p/{id}"),
        ["GET /p/{id}/{slug}"] = (For.Everybody, "/p/{id}/secret-cloth"),
        ["GET /p/{id}/{slug}/v/{number:int}"] = (For.Everybody, "/p/{id}/secret-cloth/v/1"),
        ["GET /p/{id}/{slug}/v/{number:int}/changes"] = (For.Everybody, "/p/{id}/secret-cloth/v/1/changes"),
        ["GET /p/{id}/{slug}/v/{number:int}/report"] = (For.Everybody, "/p/{id}/secret-cloth/v/1/report"),
        ["POST /p/{id}/{slug}/v/{number:int}/report"] = (For.EverybodysForm, "/p/{id}/secret-cloth/v/1/report"),
        ["GET /p/{id}/slip/{from:int}/{to:int}/{file}"] = (For.Everybody, "/p/{id}/slip/1/2/a4.pdf"),
        ["GET /p/{id}/moves/{from:int}/{to:int}.json"] = (For.Everybody, "/p/{id}/moves/1/2.json"),
        ["GET /reports/{secret}"] = (For.Everybody, "/reports/0000"),
        ["GET /c"] = (For.Everybody, "/c"),
        ["GET /c/{code}"] = (For.Everybody, "/c/ABCD1234"),
        ["GET /preview/{secret}"] = (For.Everybody, "/preview/0000"),
        ["GET /preview/{secret}/weave"] = (For.Everybody, "/preview/0000/weave"),
        ["GET /preview/{secret}/{file}"] = (For.Everybody, "/preview/0000/chart.svg"),
        ["GET /preview/{secret}/photos/{hash}.jpg"] = (For.Everybody, "/preview/0000/photos/0000.jpg"),
        ["GET /studio/patterns/{id}/photos"] = (For.Owner, "/studio/patterns/{new}/photos"),
        ["POST /studio/patterns/{id}/photos"] = (For.Owner, "/studio/patterns/{new}/photos"),
        ["POST /studio/patterns/{id}/photos/change"] = (For.Owner, "/studio/patterns/{new}/photos/change"),
        ["GET /studio/patterns/{id}/photos/{hash}.jpg"] = (For.Owner, "/studio/patterns/{new}/photos/" + PhotoHash + ".jpg"),
        ["GET /studio/patterns/{id}/preview"] = (For.Owner, "/studio/patterns/{new}/preview"),
        ["POST /studio/patterns/{id}/preview"] = (For.Owner, "/studio/patterns/{new}/preview"),
        ["POST /studio/patterns/{id}/preview/end"] = (For.Owner, "/studio/patterns/{id}/preview/end"),
        ["GET /studio/patterns/{id}/reports"] = (For.Owner, "/studio/patterns/{id}/reports"),
        ["POST /studio/patterns/{id}/reports/{report:long}"] = (For.Owner, "/studio/patterns/{id}/reports/1"),
        ["GET /p/{id}/v/{number:int}/picture.svg"] = (For.Everybody, "/p/{id}/v/1/picture.svg"),
        ["GET /p/{id}/v/{number:int}/cloth.png"] = (For.Everybody, "/p/{id}/v/1/cloth.png"),
        ["GET /samples/{name}/weave"] = (For.Everybody, "/samples/first-steps/weave"),
        ["GET /p/{id}/{slug}/weave"] = (For.Everybody, "/p/{id}/secret-cloth/weave"),
        ["GET /p/{id}/{slug}/v/{number:int}/weave"] = (For.Everybody, "/p/{id}/secret-cloth/v/1/weave"),
        ["GET /files/{hash}/photo.jpg"] = (For.Everybody, "/files/0000/photo.jpg"),
        ["GET /files/{hash}/{name}"] = (For.Everybody, "/files/0000/x.pdf"),
        ["GET /setup"] = (For.Everybody, "/setup"),
        ["POST /setup"] = (For.EverybodysForm, "/setup"),
        ["GET /sign-in"] = (For.Everybody, "/sign-in"),
        ["POST /sign-in"] = (For.EverybodysForm, "/sign-in"),
        ["POST /sign-out"] = (For.EverybodysForm, "/sign-out"),
        ["GET /studio/"] = (For.Maker, "/studio"),
        ["GET /studio/new"] = (For.Maker, "/studio/new"),
        ["POST /studio/new"] = (For.Maker, "/studio/new"),
        ["GET /studio/patterns/{id}/picture.svg"] = (For.Owner, "/studio/patterns/{id}/picture.svg"),
        ["GET /studio/patterns/{id}/cloth/{side}.svg"] = (For.Owner, "/studio/patterns/{new}/cloth/back.svg"),
        ["GET /studio/patterns/{id}/issue"] = (For.Owner, "/studio/patterns/{new}/issue"),
        ["GET /studio/patterns/{id}/test-print/{file}"] = (For.Owner, "/studio/patterns/{new}/test-print/a4.pdf"),
        ["POST /studio/patterns/{id}/issue"] = (For.Owner, "/studio/patterns/{new}/issue"),
        ["GET /studio/patterns/{id}/delete"] = (For.Owner, "/studio/patterns/{new}/delete"),
        ["POST /studio/patterns/{id}/delete"] = (For.Owner, "/studio/patterns/{other}/delete"),
        ["POST /studio/patterns/{id}/withdraw"] = (For.Owner, "/studio/patterns/{id}/withdraw"),
        ["GET+POST /studio/patterns/{Id}"] = (For.Owner, "/studio/patterns/{new}"),
        ["GET /_blazor"] = (For.Circuit, "/_blazor"),
        ["GET /_blazor/negotiate"] = (For.Circuit, "/_blazor/negotiate"),
        ["GET /_blazor/disconnect/"] = (For.Circuit, "/_blazor/disconnect"),
        ["GET /_blazor/initializers/"] = (For.Circuit, "/_blazor/initializers"),
        ["GET /_framework/opaque-redirect"] = (For.Circuit, "/_framework/opaque-redirect"),
        ["GET /studio/deleted"] = (For.Maker, "/studio/deleted"),
        ["GET /studio/deleted/{id}/picture.svg"] = (For.Owner, "/studio/deleted/{thrown}/picture.svg"),
        ["POST /studio/deleted/{id}/bring-back"] = (For.Owner, "/studio/deleted/{thrown}/bring-back"),
        ["GET /studio/bring-in"] = (For.Maker, "/studio/bring-in"),
        ["POST /studio/bring-in"] = (For.Maker, "/studio/bring-in"),
        ["GET /studio/patterns/{id}/document.json"] = (For.Owner, "/studio/patterns/{new}/document.json"),
        ["POST /studio/patterns/{id}/duplicate"] = (For.Owner, "/studio/patterns/{new}/duplicate"),
        ["POST /studio/patterns/{id}/restore"] = (For.Owner, "/studio/patterns/{hidden}/restore"),
    };

    private static readonly (string, string)[] Fields = [("revision", "1"), ("Note", ""), ("sample", "first-steps"), ("Answer", "Thank you."), ("Text", "")];

    [Fact]
    public async Task Every_address_has_a_line_and_every_line_an_address()
    {
        await using var shop = await TestShop.OpenAsync();
        Assert.Equal(Known.Keys.Order(StringComparer.Ordinal), Endpoints(shop).Select(Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Every_address_says_whom_it_lets_in_and_it_is_whom_the_line_says()
    {
        await using var shop = await TestShop.OpenAsync();
        foreach (var endpoint in Endpoints(shop))
        {
            var open = Known[Name(endpoint)].For is For.Everybody or For.EverybodysForm;
            Assert.Equal(open, endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null);
            Assert.Equal(!open, endpoint.Metadata.GetMetadata<IAuthorizeData>() is not null);
        }
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
        Known.Where(line => line.Key.Split(' ')[0].Split('+').Contains(method, StringComparer.Ordinal) && whom.Contains(line.Value.For)).Select(line => line.Value.Path);

    private static async Task<Patterns> PatternsAsync(TestShop shop, Visitor maker)
    {
        var document = Charts.Document(Charts.Diamond) with { Title = "Secret cloth" };
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
