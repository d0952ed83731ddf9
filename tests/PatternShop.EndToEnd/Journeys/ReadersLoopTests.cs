using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>
/// The readers' loop: a maker sets the shop up and issues a cloth; a reader weaves twelve rows of it on a phone and reports a mistake; the
/// maker corrects it, two plain rows before it besides; the reader learns which rows that changes and goes on where they are. Then the same
/// without scripts. Chart, rows and the places to go on are this test's own.
/// </summary>
public sealed class ReadersLoopTests(Stage stage) : Journey(stage)
{
    // the page says itself when it is ready
    private static readonly PageWaitForURLOptions AsSoonAsThere = new() { WaitUntil = WaitUntilState.Commit };

    private const string Shop = "https://weave.example.org";
    private const string Title = "Slate steps";
    private const int Size = 4;
    private const int Times = 5;

    // how many rows are woven of version 1, how many rows version 2 has before them, and so the row to go on with
    private const int Woven = 12;
    private const int Before = 2;
    private const int GoOn = Woven + Before + 1;

    // row 1 first, x over; row 3 of version 1 lacks its last cell
    private static readonly string[] First = ["xx..", ".xx.", "..x.", "x..x"];
    private static readonly string[] Mended = ["xx..", ".xx.", "..xx", "x..x"];

    private readonly DataFolder _data = new();
    private ServerProcess? _server;

    protected override ServerProcess Server => _server ?? throw new InvalidOperationException("There is no server yet.");

    public override async ValueTask InitializeAsync() => _server = await ServerProcess.StartAsync(_data, settings: ["--PatternShop:PublicAddress", Shop]);

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await Server.DisposeAsync();
        _data.Dispose();
    }

    [Fact]
    public async Task A_correction_reaches_whoever_weaves_an_earlier_version()
    {
        var maker = await OpenAsync(Reader.Desk);
        await SetUp.DoAsync(maker, Server);
        var editor = new EditorPage(maker);
        await DrawAsync(editor);
        await PreviewAsync(maker);
        await OpenFirstAsync(maker, editor);
        await editor.IssueAsync();

        var reader = await OpenAsync(Reader.Phone);
        await reader.GoAsync("/");
        await reader.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = Title }).ClickAsync();
        var pattern = new Uri(reader.Page.Url).AbsolutePath;
        var (_, sheet) = await new PatternPage(reader).DownloadAsync("Printable, A4 (PDF)");
        await reader.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Weave along" }).ClickAsync();
        var page = new WeavePage(reader);
        await page.UntilReadyAsync();
        await WeaveAsync(page, Rows(First, 0), 1, Woven);
        var answer = await ReportAsync(reader, page);

        await CorrectAsync(maker, editor);

        await MoveOnAsync(reader, page, pattern);
        await reader.GoAsync(answer);
        await Assertions.Expect(reader.Page.GetByText("You are right: the last cell was missing.")).ToBeVisibleAsync();
        await reader.GoAsync(pattern);
        await Assertions.Expect(reader.Page.GetByText("It mends what readers reported: row 11 of version 1.")).ToBeVisibleAsync();
        Assert.Empty(WrittenRow.Differences(await new PatternPage(reader).RowsAsync(), Rows(Mended, Before)));

        await WithoutScriptAsync(pattern);
        await SheetAsync(reader, sheet);
    }

    private static async Task OpenFirstAsync(Visit maker, EditorPage editor)
    {
        await maker.GoAsync("/studio");
        await maker.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Open", Exact = true }).ClickAsync();
        await editor.SavedAsync();
    }

    private static async Task DrawAsync(EditorPage editor)
    {
        await editor.BeginAsync(Title, Size, Size);
        foreach (var cell in from row in Enumerable.Range(1, Size) from end in Enumerable.Range(1, Size) where First[row - 1][end - 1] == 'x' select (row, end))
        {
            await editor.DragAsync(Size, Size, cell);
        }

        await editor.SavedAsync();
        await editor.NumberAsync(editor.Panel("Width"), "Repeats across", 2);
        await editor.PlainEdgesAsync();
        await editor.NumberAsync(editor.Panel("Order of rows"), "Repeat, times", Times);
        Assert.Empty(WrittenRow.Differences(await editor.RowsAsync(), Rows(First, 0)));
    }

    // The maker looks at it on a phone first: the code on the screen leads there, and nobody else's eyes do once it has ended.
    private async Task PreviewAsync(Visit maker)
    {
        var secret = await BeginPreviewAsync(maker);

        var phone = await OpenAsync(Reader.Phone);
        await phone.GoAsync(secret);
        Assert.Empty(WrittenRow.Differences(await new PatternPage(phone).RowsAsync(), Rows(First, 0)));
        await Assertions.Expect(phone.Page.GetByText("A preview, not issued")).ToBeVisibleAsync();
        await phone.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Weave along" }).ClickAsync();
        var page = new WeavePage(phone);
        await page.UntilReadyAsync();
        await Assertions.Expect(phone.Page.Locator("#newer")).ToContainTextAsync("A preview, not issued");
        await WeaveAsync(page, Rows(First, 0), 1, 2);
        await phone.Page.ReloadAsync();
        await page.UntilReadyAsync();
        Assert.Equal((2, 0), await page.KeptAsync());
        Assert.DoesNotContain(secret.Split('/')[^1], await phone.Page.EvaluateAsync<string>("JSON.stringify(localStorage)"), StringComparison.Ordinal);

        await maker.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "End the preview" }).ClickAsync();
        await Assertions.Expect(maker.Page.GetByText("There is no preview.")).ToBeVisibleAsync();
        await phone.GoAsync(secret + "/weave", 404);
    }

    private async Task<string> BeginPreviewAsync(Visit maker)
    {
        await maker.GoAsync("/studio");
        await maker.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Preview", Exact = true }).ClickAsync();
        await maker.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Begin a preview" }).ClickAsync();
        var code = await CodeReader.ReadAsync(Stage.Browser, await maker.Page.Locator(".qr svg").ScreenshotAsync());
        Assert.StartsWith(Shop + "/preview/", code, StringComparison.Ordinal);
        Assert.Equal(code, await maker.Page.Locator(".address").InnerTextAsync());
        var address = new Uri(code!).AbsolutePath;
        // at least 128 bits in an alphabet of 32 signs
        Assert.True(address["/preview/".Length..].Length >= 26);
        return address;
    }

    // The reader reports the row with the mistake from where they are, and gets an address for the answer.
    private static async Task<string> ReportAsync(Visit reader, WeavePage page)
    {
        await page.More.ClickAsync();
        await reader.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Report a mistake in row 13" }).ClickAsync();
        await Assertions.Expect(reader.Page.GetByLabel("Which row?")).ToHaveValueAsync("13");
        await reader.Page.GetByLabel("Which row?").FillAsync("11");
        await reader.Page.GetByLabel("What is wrong?").FillAsync("It goes over 1 where the rows around it go over 2.");
        await reader.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Send it to the maker" }).ClickAsync();
        await Assertions.Expect(reader.Page.GetByText("Row 11 of version 1")).ToBeVisibleAsync();
        return new Uri(reader.Page.Url).AbsolutePath;
    }

    private static async Task CorrectAsync(Visit maker, EditorPage editor)
    {
        await maker.GoAsync("/studio");
        await maker.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Reports (1 to answer)" }).ClickAsync();
        await maker.Page.GetByLabel("Your answer").FillAsync("You are right: the last cell was missing.");
        await maker.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Answer" }).ClickAsync();
        await OpenFirstAsync(maker, editor);
        await editor.DragAsync(Size, Size, (3, 4));
        await editor.SavedAsync();
        var plan = editor.Panel("Order of rows");
        await editor.ClickAsync(plan.GetByRole(AriaRole.Group, new LocatorGetByRoleOptions { Name = "Add to the plan" }), "plain rows");
        await editor.ClickAsync(plan, "Move step 2 earlier");
        await maker.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Preview and issue" }).ClickAsync();
        await maker.Page.GetByLabel("Row 11 of version 1:").CheckAsync();
        await maker.Page.Locator("[name=Kind][value=correction]").CheckAsync();
        await maker.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Issue version 2" }).ClickAsync();
        await Assertions.Expect(maker.Page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Level = 1 })).ToHaveTextAsync("My patterns");
    }

    private static async Task MoveOnAsync(Visit reader, WeavePage page, string pattern)
    {
        var dialog = reader.Page.GetByRole(AriaRole.Dialog);
        await reader.GoAsync(pattern + "/weave");
        await IsToldAsync(dialog);
        Assert.Empty(await Axe.FindingsAsync(reader));
        // a page-turner that goes on stepping chooses nothing
        await reader.Page.Keyboard.PressAsync("PageDown");
        await reader.Page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(dialog).ToBeVisibleAsync();
        await dialog.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Stay with version 1" }).ClickAsync();
        await reader.Page.WaitForURLAsync("**/v/1/weave", AsSoonAsThere);
        await page.UntilReadyAsync();
        // whoever has said that they stay is not asked again, but can ask
        await Assertions.Expect(page.Place).ToHaveTextAsync(PlaceOf(Woven + 1, 0));
        await Assertions.Expect(dialog).ToBeHiddenAsync();
        await reader.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "There is a newer version. What changed, and where do I go on?" }).ClickAsync();
        await IsToldAsync(dialog);
        await dialog.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Go on in version 2" }).ClickAsync();
        await reader.Page.WaitForURLAsync("**/v/2/weave", AsSoonAsThere);
        await page.UntilReadyAsync();
        await WeaveAsync(page, Rows(Mended, Before), GoOn, GoOn + 3);
    }

    private static async Task IsToldAsync(ILocator dialog)
    {
        var (passed, toCome) = Changed();
        await Assertions.Expect(dialog).ToContainTextAsync(FormattableString.Invariant($"Rows woven of version 1: {Woven} of {Size * Times}."));
        await Assertions.Expect(dialog).ToContainTextAsync(FormattableString.Invariant($"Go on with row {GoOn} of version 2."));
        Assert.Equal(
            ["Changes among the rows that you have woven", "Row 1 · new", "Row 2 · new", $"Rows {string.Join(", ", passed)}", "Changes to come", $"Rows {string.Join(", ", toCome)}"],
            await dialog.Locator("h3, li b").AllInnerTextsAsync());
        var readings = await dialog.Locator("li").Last.Locator("p").AllInnerTextsAsync();
        Assert.Equal(
            [("before from the left →", Rows(First, 0)[toCome[0] - Before - 1].Runs), ("now from the left →", Rows(Mended, Before)[toCome[0] - 1].Runs)],
            readings.Select(reading => (reading.Split(": ")[0], new WrittenRow(0, "", reading.Split(": ")[1]).Runs)));
    }

    private async Task WithoutScriptAsync(string pattern)
    {
        var reader = await OpenAsync(Reader.Phone with { Script = false });
        await reader.GoAsync(pattern + "/v/1/weave");
        Assert.Empty(WrittenRow.Differences(await ListAsync(reader), Rows(First, 0)));
        await reader.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "What changed, and where do I go on?" }).ClickAsync();
        await reader.Page.GetByLabel("Rows of version 1 that you have woven").FillAsync(Woven.ToString(CultureInfo.InvariantCulture));
        await reader.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Where do I go on?" }).ClickAsync();
        var (passed, toCome) = Changed();
        Assert.Equal(
            [
                FormattableString.Invariant($"Go on with row {GoOn} of version 2, which starts from the left."),
                FormattableString.Invariant($"You have passed 5 changes: {Listed(passed)}, new rows 1 and 2. 2 changes are to come: {Listed(toCome)}."),
                "Weave along from there",
            ],
            await reader.Page.Locator(".moved p").AllInnerTextsAsync());
        await reader.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Weave along from there" }).ClickAsync();
        await reader.Page.WaitForURLAsync("**/v/2/weave*");
        Assert.Empty(WrittenRow.Differences(await ListAsync(reader), Rows(Mended, Before)));
    }

    // The sheet of version 1 leads by its code to what to change on it.
    private async Task SheetAsync(Visit reader, byte[] sheet)
    {
        var code = Assert.Single((await CodeReader.ReadSheetAsync(Stage.Browser, sheet)).Distinct());
        Assert.StartsWith(Shop + "/c/", code, StringComparison.Ordinal);
        await reader.GoAsync(new Uri(code!).AbsolutePath);
        await Assertions.Expect(new PatternPage(reader).Heading).ToHaveTextAsync("There is a newer one");
        Assert.Contains("Rows 3, 7, 11, 15 and 19, now rows 5, 9, 13, 17 and 21", await reader.Page.Locator("ul.changes h3").AllInnerTextsAsync());
    }

    private static async Task WeaveAsync(WeavePage page, IReadOnlyList<WovenRow> rows, int first, int last)
    {
        foreach (var row in rows.Skip(first - 1).Take(last - first + 1))
        {
            await Assertions.Expect(page.Place).ToHaveTextAsync(PlaceOf(row.Number, rows.Count - (Size * Times)));
            foreach (var run in row.Runs)
            {
                await Assertions.Expect(page.Now).ToHaveTextAsync(run.ToString());
                await page.Next.ClickAsync();
            }
        }
    }

    private static async Task<IReadOnlyList<WrittenRow>> ListAsync(Visit reader)
    {
        var rows = await reader.Page.Locator("ul.rows li").EvaluateAllAsync<string[][]>(
            "rows => rows.map(row => [[...row.querySelectorAll('b, b ~ span')].map(number => /\\d+/.exec(number.textContent)[0]).join(' '), row.querySelector('i').textContent.split(' (')[0], row.querySelector('p').textContent])");
        return [.. rows.SelectMany(row => row[0].Split(' ').Select(number => new WrittenRow(int.Parse(number, CultureInfo.InvariantCulture), row[1], row[2])))];
    }

    private static string PlaceOf(int number, int before) => number <= before
        ? FormattableString.Invariant($"Row {number} of {(Size * Times) + before}")
        : FormattableString.Invariant($"Row {((number - before - 1) % Size) + 1} of {Size} · time {((number - before - 1) / Size) + 1} of {Times} (row {number} of {(Size * Times) + before})");

    // Rows of version 2 that read otherwise than their row of version 1, before and after the place, worked out here.
    private static (IReadOnlyList<int> Passed, IReadOnlyList<int> ToCome) Changed()
    {
        var (old, mended) = (Rows(First, 0), Rows(Mended, Before));
        var changed = old.Where(row => mended[row.Number + Before - 1] is var now && (now.FromLeft != row.FromLeft || !now.Runs.SequenceEqual(row.Runs))).Select(row => row.Number + Before).ToList();
        return ([.. changed.Where(row => row < GoOn)], [.. changed.Where(row => row >= GoOn)]);
    }

    private static string Listed(IReadOnlyList<int> rows) => $"rows {string.Join(", ", rows.SkipLast(1))} and {rows[^1]}";

    private static IReadOnlyList<WovenRow> Rows(string[] chart, int before) => WeavingOrder.Of(JsonSerializer.SerializeToElement(new
    {
        chart,
        repeats = 2,
        offset = 0,
        balance = 0,
        floating = 0,
        starts = new[] { "left" },
        firstPlain = "under",
        rowPlan = (object[])
        [
            .. before > 0 ? new object[] { new { step = "plain", count = before, weft = 1 } } : [],
            new { step = "repeat", times = Times, steps = new object[] { new { step = "chart", first = 1, last = Size, weft = 1 } } },
        ],
    }));
}
