using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;

namespace PatternShop.Web.Tests;

/// <summary>A browser of one person: keeps cookies, follows nothing by itself, fills in forms as they stand on pages.</summary>
internal sealed class Visitor : IDisposable
{
    private readonly HttpClient _client;

    public Visitor(Uri address)
    {
        Handler = new SocketsHttpHandler { AllowAutoRedirect = false, UseProxy = false };
        _client = new HttpClient(Handler) { BaseAddress = address };
    }

    public SocketsHttpHandler Handler { get; }

    public CookieCollection Cookies => Handler.CookieContainer.GetCookies(_client.BaseAddress!);

    public Task<Reply> GetAsync(string path) => SendAsync(HttpMethod.Get, path);

    public async Task<Reply> SendAsync(HttpMethod method, string path, HttpContent? content = null, params (string Name, string Value)[] headers)
    {
        using var request = new HttpRequestMessage(method, path) { Content = content };
        foreach (var (name, value) in headers)
        {
            request.Headers.TryAddWithoutValidation(name, value);
        }

        using var response = await _client.SendAsync(request);
        return new Reply(
            response.StatusCode,
            response.Headers.Concat(response.Content.Headers).ToDictionary(header => header.Key, header => string.Join(", ", header.Value), StringComparer.OrdinalIgnoreCase),
            await response.Content.ReadAsByteArrayAsync());
    }

    /// <summary>Sends fields with the token of a page's form.</summary>
    public async Task<Reply> PostAsync(string page, string path, params (string Name, string Value)[] fields) =>
        await PostPlainAsync(path, [("__RequestVerificationToken", await TokenAsync(page)), .. fields]);

    /// <summary>Sends fields as they are.</summary>
    public async Task<Reply> PostPlainAsync(string path, params (string Name, string Value)[] fields)
    {
        using var content = new FormUrlEncodedContent(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        return await SendAsync(HttpMethod.Post, path, content);
    }

    /// <summary>Fills in the form on a page that goes to this address, and sends all of it, hidden fields included.</summary>
    public async Task<Reply> FillAsync(string page, string action, params (string Name, string Value)[] typed)
    {
        var form = (await FollowAsync(page)).Html.Forms.OfType<IHtmlFormElement>().Single(form => form.GetAttribute("action") == action);
        var standing = form.QuerySelectorAll("input[type=hidden], input[type=checkbox][checked]").OfType<IHtmlInputElement>().Select(input => (input.Name!, input.Value));
        return await PostPlainAsync(action, [.. standing.Where(field => typed.All(one => one.Name != field.Item1)), .. typed]);
    }

    /// <summary>Fetches a page, and the one that it sends on to.</summary>
    public async Task<Reply> FollowAsync(string path) =>
        await GetAsync(path) is var answer && answer is { Status: HttpStatusCode.SeeOther, Location: { } next } ? await GetAsync(next) : answer;

    public async Task<string> TokenAsync(string page) =>
        (await FollowAsync(page)).Html.QuerySelector("input[name=__RequestVerificationToken]")?.GetAttribute("value")
        ?? throw new InvalidOperationException($"There is no form on {page}.");

    public void Dispose()
    {
        _client.Dispose();
        Handler.Dispose();
    }
}

/// <summary>What a server answered.</summary>
internal sealed record Reply(HttpStatusCode Status, IReadOnlyDictionary<string, string> Headers, byte[] Body)
{
    public string Text { get; } = System.Text.Encoding.UTF8.GetString(Body);

    public string? Location => Headers.GetValueOrDefault("Location");

    public IHtmlDocument Html => new HtmlParser().ParseDocument(Text);

    /// <summary>The words of the page, spaces made one.</summary>
    public string Words => string.Join(' ', (Html.QuerySelector("main")?.TextContent ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    public string Heading => Html.QuerySelector("h1")?.TextContent ?? "";
}
