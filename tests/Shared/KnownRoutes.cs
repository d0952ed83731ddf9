namespace PatternShop.Tests.Shared;

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

/// <summary>One address at which the server answers.</summary>
/// <param name="Endpoint">Methods and pattern, as the server maps them.</param>
/// <param name="For">Whom it lets in.</param>
/// <param name="Path">An example of it, with words in braces for what a shop fills in.</param>
/// <param name="Heading">The heading of the page there; null where there is no page.</param>
public sealed record Route(string Endpoint, For For, string Path, string? Heading = null)
{
    public bool Takes(string method) => Endpoint.Split(' ')[0].Split('+').Contains(method, StringComparer.Ordinal);
}

/// <summary>
/// Every address that the server answers at, with what it is for: a new one without a line fails, and one with a page is looked at in every
/// theme. The shop that fills them in has a maker with patterns called "Secret cloth".
/// </summary>
public static class KnownRoutes
{
    // SHA-256 of the bytes 01 02 03, agreed by coreutils sha256sum: a photo of the pattern that was not issued
    private const string PhotoHash = "039058c6f2c0cb492c533b0a4d14ef77cc0f78abccced5287d84a1a2011cfb81";

    // {id} is a pattern with two versions and a report on the first, {new} one without any, {other} another one without, {hidden} one that was withdrawn,
    // {thrown} one that was thrown away; {report}, {preview} and {copy} are the secrets and the code of {id}, {setup} is where a new shop is set up
    public static IReadOnlyList<Route> All { get; } =
    [
        // the program's own style sheets and fonts, as long as it is not published
        new("GET /{**path:file}", For.Everybody, "/css/none.css"),
        new("GET /healthz", For.Everybody, "/healthz"),
        new("GET /readyz", For.Everybody, "/readyz"),
        new("GET /", For.Everybody, "/", "{studio}"),
        new("GET /samples", For.Everybody, "/samples", "Samples"),
        new("GET /samples/{name}", For.Everybody, "/samples/first-steps", "First steps"),
        new("GET /samples/{name}/{file}", For.Everybody, "/samples/first-steps/chart.svg"),
        new("GET /p/{id}", For.Everybody, "/p/{id}"),
        new("GET /p/{id}/{slug}", For.Everybody, "/p/{id}/secret-cloth", "Secret cloth"),
        new("GET /p/{id}/{slug}/v/{number:int}", For.Everybody, "/p/{id}/secret-cloth/v/1", "Secret cloth"),
        new("GET /p/{id}/{slug}/v/{number:int}/changes", For.Everybody, "/p/{id}/secret-cloth/v/1/changes?to=2&woven=1", "Secret cloth: what changed"),
        new("GET /p/{id}/{slug}/v/{number:int}/report", For.Everybody, "/p/{id}/secret-cloth/v/1/report?row=3", "Report a mistake in “Secret cloth”"),
        new("POST /p/{id}/{slug}/v/{number:int}/report", For.EverybodysForm, "/p/{id}/secret-cloth/v/1/report"),
        new("GET /p/{id}/slip/{from:int}/{to:int}/{file}", For.Everybody, "/p/{id}/slip/1/2/a4.pdf"),
        new("GET /p/{id}/moves/{from:int}/{to:int}.json", For.Everybody, "/p/{id}/moves/1/2.json"),
        new("GET /reports/{secret}", For.Everybody, "/reports/{report}", "Your report"),
        new("GET /c", For.Everybody, "/c", "Which copy is this?"),
        new("GET /c/{code}", For.Everybody, "/c/{copy}", "There is a newer one"),
        new("GET /preview/{secret}", For.Everybody, "/preview/{preview}", "Secret cloth"),
        new("GET /preview/{secret}/weave", For.Everybody, "/preview/{preview}/weave", "Secret cloth"),
        new("GET /preview/{secret}/{file}", For.Everybody, "/preview/{preview}/chart.svg"),
        new("GET /preview/{secret}/photos/{hash}.jpg", For.Everybody, "/preview/0000/photos/0000.jpg"),
        new("GET /studio/patterns/{id}/photos", For.Owner, "/studio/patterns/{new}/photos", "Photos of “Secret cloth”"),
        new("POST /studio/patterns/{id}/photos", For.Owner, "/studio/patterns/{new}/photos"),
        new("POST /studio/patterns/{id}/photos/change", For.Owner, "/studio/patterns/{new}/photos/change"),
        new("GET /studio/patterns/{id}/photos/{hash}.jpg", For.Owner, "/studio/patterns/{new}/photos/" + PhotoHash + ".jpg"),
        new("GET /studio/patterns/{id}/preview", For.Owner, "/studio/patterns/{new}/preview", "Preview “Secret cloth” on a phone"),
        new("POST /studio/patterns/{id}/preview", For.Owner, "/studio/patterns/{new}/preview"),
        new("POST /studio/patterns/{id}/preview/end", For.Owner, "/studio/patterns/{id}/preview/end"),
        new("GET /studio/patterns/{id}/reports", For.Owner, "/studio/patterns/{id}/reports", "Reports on “Secret cloth”"),
        new("POST /studio/patterns/{id}/reports/{report:long}", For.Owner, "/studio/patterns/{id}/reports/1"),
        new("GET /p/{id}/v/{number:int}/picture.svg", For.Everybody, "/p/{id}/v/1/picture.svg"),
        new("GET /p/{id}/v/{number:int}/cloth.png", For.Everybody, "/p/{id}/v/1/cloth.png"),
        new("GET /samples/{name}/weave", For.Everybody, "/samples/first-steps/weave", "First steps"),
        new("GET /p/{id}/{slug}/weave", For.Everybody, "/p/{id}/secret-cloth/weave", "Secret cloth"),
        new("GET /p/{id}/{slug}/v/{number:int}/weave", For.Everybody, "/p/{id}/secret-cloth/v/1/weave", "Secret cloth"),
        new("GET /files/{hash}/photo.jpg", For.Everybody, "/files/0000/photo.jpg"),
        new("GET /files/{hash}/{name}", For.Everybody, "/files/0000/x.pdf"),
        new("GET /setup", For.Everybody, "{setup}", "Set up your shop"),
        new("POST /setup", For.EverybodysForm, "/setup"),
        new("GET /sign-in", For.Everybody, "/sign-in", "Sign in"),
        new("POST /sign-in", For.EverybodysForm, "/sign-in"),
        new("POST /sign-out", For.EverybodysForm, "/sign-out"),
        new("GET /studio/", For.Maker, "/studio", "My patterns"),
        new("GET /studio/new", For.Maker, "/studio/new", "New pattern"),
        new("POST /studio/new", For.Maker, "/studio/new"),
        new("GET /studio/patterns/{id}/picture.svg", For.Owner, "/studio/patterns/{id}/picture.svg"),
        new("GET /studio/patterns/{id}/cloth/{side}.svg", For.Owner, "/studio/patterns/{new}/cloth/back.svg"),
        new("GET /studio/patterns/{id}/issue", For.Owner, "/studio/patterns/{new}/issue", "Issue “Secret cloth”"),
        new("GET /studio/patterns/{id}/test-print/{file}", For.Owner, "/studio/patterns/{new}/test-print/a4.pdf"),
        new("POST /studio/patterns/{id}/issue", For.Owner, "/studio/patterns/{new}/issue"),
        new("GET /studio/patterns/{id}/delete", For.Owner, "/studio/patterns/{new}/delete", "Delete “Secret cloth”?"),
        new("POST /studio/patterns/{id}/delete", For.Owner, "/studio/patterns/{other}/delete"),
        new("POST /studio/patterns/{id}/withdraw", For.Owner, "/studio/patterns/{id}/withdraw"),
        new("GET+POST /studio/patterns/{Id}", For.Owner, "/studio/patterns/{new}", "Secret cloth"),
        new("GET /_blazor", For.Circuit, "/_blazor"),
        new("GET /_blazor/negotiate", For.Circuit, "/_blazor/negotiate"),
        new("GET /_blazor/disconnect/", For.Circuit, "/_blazor/disconnect"),
        new("GET /_blazor/initializers/", For.Circuit, "/_blazor/initializers"),
        new("GET /_framework/opaque-redirect", For.Circuit, "/_framework/opaque-redirect"),
        new("GET /studio/deleted", For.Maker, "/studio/deleted", "Deleted patterns"),
        new("GET /studio/deleted/{id}/picture.svg", For.Owner, "/studio/deleted/{thrown}/picture.svg"),
        new("POST /studio/deleted/{id}/bring-back", For.Owner, "/studio/deleted/{thrown}/bring-back"),
        new("GET /studio/bring-in", For.Maker, "/studio/bring-in", "Bring in a pattern file"),
        new("POST /studio/bring-in", For.Maker, "/studio/bring-in"),
        new("GET /studio/patterns/{id}/document.json", For.Owner, "/studio/patterns/{new}/document.json"),
        new("POST /studio/patterns/{id}/duplicate", For.Owner, "/studio/patterns/{new}/duplicate"),
        new("POST /studio/patterns/{id}/restore", For.Owner, "/studio/patterns/{hidden}/restore"),
    ];
}
