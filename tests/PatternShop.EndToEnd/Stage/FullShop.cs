using System.Text.RegularExpressions;
using Microsoft.Playwright;
using UglyToad.PdfPig;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>The classes that share one full shop.</summary>
[CollectionDefinition(FullShop.Collection)]
public sealed class FullShopClasses : ICollectionFixture<FullShop>;

/// <summary>A shop in which every page has something to show, filled through its own forms.</summary>
public sealed partial class FullShop(Stage stage) : IAsyncLifetime
{
    public const string Collection = "full shop";
    public const string Title = "Secret cloth";

    // a chart of this fixture's own, with what a maker adds to one
    public const string Cloth =
        """
        {
          "format": 3, "title": "Secret cloth", "notes": "Beat gently.", "licence": "For your own use.",
          "rowWords": [{ "row": 2, "text": "Mind the edge." }],
          "videos": [{ "address": "https://video.example/weave", "caption": "How to begin" }],
          "motif": ["xx..", ".xx.", "..xx", "x..x"],
          "width": { "repeats": 5, "floating": { "edges": "alike", "first": "under" } },
          "rows": { "steps": [
            { "step": "stitch", "name": "Twining", "yarn": "own", "across": 2, "from": "left" },
            { "step": "plain", "count": 2 },
            { "step": "repeat", "times": 3, "steps": [{ "step": "chart", "first": 1, "last": 4 }] }] },
          "gauge": { "sett": { "amount": "4", "unit": "in" }, "rows": { "amount": "4", "unit": "in" } }
        }
        """;

    private readonly OwnServer _own = new();
    private Visit? _maker;
    private readonly Dictionary<string, string> _filled = new(StringComparer.Ordinal);

    public ServerProcess Server => _own.Server;

    /// <summary>The maker's window.</summary>
    public Visit Maker => _maker ?? throw new InvalidOperationException("There is no maker yet.");

    /// <summary>What was wrong with the page for setting up, which is there once only; looked at by <see cref="Looking"/>.</summary>
    public IReadOnlyList<string> SetUpFaults { get; private set; } = [];

    /// <summary>An address with its words in braces filled in.</summary>
    public string In(string path) => _filled.Aggregate(path, (filled, word) => filled.Replace($"{{{word.Key}}}", word.Value, StringComparison.Ordinal));

    public async ValueTask InitializeAsync()
    {
        ArgumentNullException.ThrowIfNull(stage);
        await _own.InitializeAsync();
        _maker = await Visit.OpenAsync(stage.Browser, Server.Address, Reader.Desk);
        await SetUp.DoAsync(Maker, Server, async () => SetUpFaults = await Looking.FaultsAsync(Maker, "Set up your shop"));
        _filled["studio"] = SetUp.Studio;
        foreach (var name in new[] { "id", "new", "hidden", "thrown" })
        {
            _filled[name] = await BringInAsync();
        }

        await IssueAsync("id");
        await IssueAsync("hidden");
        await PostAsync(In("/studio/patterns/{hidden}/withdraw"));
        await PostAsync(In("/studio/patterns/{thrown}/delete"));
        _filled["report"] = Last(await PostAsync(In("/p/{id}/secret-cloth/v/1/report"), ("Text", "Row 3 reads as row 4."), ("Row", "3")));
        await MendAsync();
        await IssueAsync("id");
        _filled["preview"] = await PreviewAsync();
        _filled["copy"] = await CopyAsync();
        Assert.DoesNotContain("", _filled.Values);
    }

    public async ValueTask DisposeAsync()
    {
        if (_maker is not null)
        {
            await _maker.DisposeAsync();
        }

        await _own.DisposeAsync();
    }

    private async Task<string> BringInAsync()
    {
        var form = await FormAsync();
        form.Append("Files", new FilePayload { Name = "cloth.json", MimeType = "application/json", Buffer = System.Text.Encoding.UTF8.GetBytes(Cloth) });
        var answer = await Maker.Page.APIRequest.PostAsync("/studio/bring-in", new APIRequestContextOptions { Multipart = form, MaxRedirects = 0 });
        return Last(Location(answer));
    }

    private async Task IssueAsync(string name)
    {
        var path = In($"/studio/patterns/{{{name}}}/issue");
        var page = await (await Maker.Page.APIRequest.GetAsync(path)).TextAsync();
        await PostAsync(path, ("revision", Revision().Match(page).Groups["revision"].Value), ("Kind", "correction"), ("Note", "As woven."));
    }

    // one cell, by the keyboard
    private async Task MendAsync()
    {
        await Maker.GoAsync(In("/studio/patterns/{id}"));
        var editor = new EditorPage(Maker);
        await editor.SavedAsync();
        await editor.FocusFirstCellAsync(4);
        await editor.PressAsync(" ");
        await Assertions.Expect(Maker.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Undo: draw 1 cell" })).ToBeEnabledAsync();
        await editor.SavedAsync();
    }

    // the sheet of the first version names it
    private async Task<string> CopyAsync()
    {
        var page = await (await Maker.Page.APIRequest.GetAsync(In("/p/{id}/secret-cloth/v/1"))).TextAsync();
        var file = await (await Maker.Page.APIRequest.GetAsync(SheetAddress().Match(page).Groups["address"].Value)).BodyAsync();
        using var sheet = PdfDocument.Open(file);
        var words = string.Join(' ', sheet.GetPages().SelectMany(one => one.GetWords()).Select(word => word.Text));
        return CopyCode().Match(words).Groups["code"].Value.Replace("-", "", StringComparison.Ordinal);
    }

    private async Task<string> PreviewAsync() =>
        PreviewAddress().Match(await (await SentAsync(In("/studio/patterns/{id}/preview"))).TextAsync()).Groups["secret"].Value;

    private async Task<string> PostAsync(string path, params (string Name, string Value)[] fields) => Location(await SentAsync(path, fields));

    private async Task<IAPIResponse> SentAsync(string path, params (string Name, string Value)[] fields)
    {
        var form = await FormAsync(path.StartsWith("/p/", StringComparison.Ordinal) ? path : "/studio/new");
        foreach (var (name, value) in fields)
        {
            form.Append(name, value);
        }

        return await Maker.Page.APIRequest.PostAsync(path, new APIRequestContextOptions { Form = form, MaxRedirects = 0 });
    }

    private async Task<IFormData> FormAsync(string page = "/studio/new")
    {
        var form = Maker.Page.APIRequest.CreateFormData();
        form.Append("__RequestVerificationToken", Token().Match(await (await Maker.Page.APIRequest.GetAsync(page)).TextAsync()).Groups["token"].Value);
        return form;
    }

    private static string Location(IAPIResponse answer) =>
        answer.Status == 303 ? answer.Headers["location"] : throw new InvalidOperationException($"{answer.Url} answered {answer.Status}.");

    private static string Last(string address) => address[(address.LastIndexOf('/') + 1)..];

    [GeneratedRegex("name=\"__RequestVerificationToken\" value=\"(?<token>[^\"]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Token();

    [GeneratedRegex("name=\"revision\" value=\"(?<revision>[0-9]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Revision();

    [GeneratedRegex("href=\"(?<address>/files/[0-9a-f]+/[^\"]+a4\\.pdf)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex SheetAddress();

    [GeneratedRegex("(?<code>[0-9A-Z]{4}-[0-9A-Z]{4})", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex CopyCode();

    [GeneratedRegex("/preview/(?<secret>[0-9a-z]+)\"", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PreviewAddress();
}
