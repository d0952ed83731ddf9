using System.Net;
using AngleSharp.Dom;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class CorrectionTests(SharedShop shared) : IClassFixture<SharedShop>
{
    // repeats 2, rows 1-4 three times; the correction turns the last cell of row 2
    private static readonly PatternDocument First = Cloth("xx../.xx./..xx/x..x");
    private static readonly PatternDocument Mended = Cloth("xx../.xxx/..xx/x..x");

    [Fact]
    public async Task The_page_of_a_correction_says_what_changed_with_both_readings()
    {
        var shop = await shared.OfAsync(MendedAsync);
        var page = await shop.Reader.GetAsync(shop.Page);
        Assert.Contains("What changed since version 1", page.Words, StringComparison.Ordinal);
        Assert.Contains("This version is a correction.", page.Words, StringComparison.Ordinal);
        Assert.Contains("3 rows read otherwise; 9 rows read as before.", page.Words, StringComparison.Ordinal);
        var change = page.Html.QuerySelector("ul.changes li")!;
        Assert.Equal("Rows 2, 6 and 10", change.QuerySelector("h3")!.TextContent);
        // row 2 comes from the right: ends 8 to 1 of .xx..xx. and of .xxx.xxx
        Assert.Equal(
            ["← from the right: under 1, over 2, under 2, over 2, under 1", "← from the right: [over 3, under 1] × 2"],
            change.QuerySelectorAll("dd").Select(Seen));
    }

    [Fact]
    public async Task An_old_version_says_that_a_newer_one_exists_and_whether_its_rows_differ()
    {
        await using var shop = await IssuedShop.OpenAsync(First);
        await shop.ReissueAsync(First with { Notes = "Only words." }, "", "edition");
        var first = await shop.Reader.GetAsync(shop.Page + "/v/1");
        Assert.StartsWith("There is a newer version: Version 2, 24 November 2026, a new edition Its rows are the same.", Paragraphs(first.Html.QuerySelector(".newer")!), StringComparison.Ordinal);
        await shop.ReissueAsync(Mended, "");
        first = await shop.Reader.GetAsync(shop.Page + "/v/1");
        Assert.Equal(HttpStatusCode.OK, first.Status);
        Assert.Contains("Version 3, 24 November 2026, a correction Its rows differ from these.", Paragraphs(first.Html.QuerySelector(".newer")!), StringComparison.Ordinal);
        Assert.Equal($"{shop.Page}/v/1/changes?to=3", first.Html.QuerySelector(".newer a[href*=changes]")!.GetAttribute("href"));
        Assert.Null((await shop.Reader.GetAsync(shop.Page)).Html.QuerySelector(".newer"));
    }

    [Fact]
    public async Task Counts_and_plan_that_differ_stand_beside_each_other()
    {
        await using var shop = await IssuedShop.OpenAsync(First);
        await shop.ReissueAsync(First with { Width = First.Width with { Repeats = 3 }, Rows = First.Rows with { Steps = [new Repeat(2, [new ChartRows(1, 4, 1)])] } }, "");
        var facts = (await shop.Reader.GetAsync(shop.Page)).Html.QuerySelectorAll("ul.changes li").ToDictionary(item => item.QuerySelector("h3")!.TextContent, item => Words(item.QuerySelector("dl")!));
        Assert.Contains("8 ends", facts["Warp"], StringComparison.Ordinal);
        Assert.Contains("12 ends", facts["Warp"], StringComparison.Ordinal);
        Assert.Contains("3 times", facts["Order of work"], StringComparison.Ordinal);
        Assert.Contains("twice", facts["Order of work"], StringComparison.Ordinal);
        Assert.Contains("4 rows are gone", (await shop.Reader.GetAsync(shop.Page)).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_maker_sees_the_same_before_issuing_and_must_say_what_the_version_is()
    {
        await using var shop = await IssuedShop.OpenAsync(First);
        await shop.Shop.Workroom.SaveAsync((await shop.Shop.MakerAsync()).Id, shop.Id, new Store.StepRequest("test", 1, 1, "Change", Mended), TestContext.Current.CancellationToken);
        var path = $"/studio/patterns/{shop.Id}/issue";
        var before = (await shop.Maker.GetAsync(path)).Html.QuerySelector("ul.changes")!;
        Assert.Empty((await shop.Maker.GetAsync(path)).Html.QuerySelectorAll("input[name=Kind][checked]"));
        var refused = await TestShop.IssueAsync(shop.Maker, shop.Id, "note", "");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.Status);
        Assert.Contains("Choose a correction or a new edition.", refused.Words, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.SeeOther, (await TestShop.IssueAsync(shop.Maker, shop.Id, "note")).Status);
        Assert.Equal(Words(before), Words((await shop.Reader.GetAsync(shop.Page)).Html.QuerySelector("ul.changes")!));
    }

    [Fact]
    public async Task In_the_middle_of_a_piece_one_learns_what_is_passed_what_is_to_come_and_where_to_go_on()
    {
        var shop = await shared.OfAsync(MendedAsync);
        var page = await shop.Reader.GetAsync(shop.Page + "/v/1/changes?to=2&woven=7");
        Assert.Equal(
            "Go on with row 8 of version 2, which starts from the right. You have passed 2 changes: rows 2 and 6. 1 change is to come: row 10. Weave along from there",
            Paragraphs(page.Html.QuerySelector(".moved")!));
        Assert.Equal($"{shop.Page}/v/2/weave#row=8", page.Html.QuerySelector(".moved a")!.GetAttribute("href"));
        Assert.Equal(HttpStatusCode.OK, (await shop.Reader.GetAsync(shop.Page + "/v/2/weave")).Status);
        Assert.Equal($"{shop.Page}/v/1/changes?to=2", (await shop.Reader.GetAsync(shop.Page + "/v/1/weave")).Html.QuerySelector("#changes")!.GetAttribute("href"));
        Assert.Equal("7", page.Html.QuerySelector("input[name=woven]")!.GetAttribute("value"));
    }

    [Fact]
    public async Task An_inserted_row_turns_the_side_and_the_page_says_what_to_do()
    {
        await using var shop = await IssuedShop.OpenAsync(First);
        await shop.ReissueAsync(Cloth("xx../x.x./.xx./..xx/x..x"), "");
        var moved = Paragraphs((await shop.Reader.GetAsync(shop.Page + "/v/1/changes?to=2&woven=3")).Html.QuerySelector(".moved")!);
        Assert.StartsWith("Go on with row 5 of version 2, which starts from the left. Your weft is at the right, and that row starts from the left:", moved, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_of_what_changed_offers_a_slip_to_paste_over_the_sheets()
    {
        var shop = await shared.OfAsync(MendedAsync);
        var links = (await shop.Reader.GetAsync(shop.Page + "/v/1/changes?to=2")).Html.QuerySelectorAll("a[type='application/pdf']").Select(link => link.GetAttribute("href")!).ToList();
        Assert.Equal([$"/p/{shop.Id}/slip/1/2/a4.pdf", $"/p/{shop.Id}/slip/1/2/letter.pdf"], links);
        foreach (var (link, width) in links.Zip([595.3, 612.0]))
        {
            using var pdf = UglyToad.PdfPig.PdfDocument.Open((await shop.Reader.GetAsync(link)).Body);
            Assert.Equal(width, pdf.GetPage(1).Width, 1.0);
            Assert.Contains("Correction slip", string.Join(' ', pdf.GetPage(1).GetWords().Select(word => word.Text)), StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync($"/p/{shop.Id}/slip/2/1/a4.pdf")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync($"/p/{shop.Id}/slip/1/2/a5.pdf")).Status);
    }

    [Theory]
    [InlineData("/v/1/changes?to=2&woven=13", HttpStatusCode.OK, true)]
    [InlineData("/v/1/changes?to=2&woven=-1", HttpStatusCode.OK, true)]
    [InlineData("/v/1/changes?to=2&woven=<b>", HttpStatusCode.OK, true)]
    [InlineData("/v/1/changes?to=2&woven=", HttpStatusCode.OK, false)]
    [InlineData("/v/1/changes", HttpStatusCode.OK, false)]
    [InlineData("/v/2/changes", HttpStatusCode.NotFound, false)]
    [InlineData("/v/2/changes?to=1", HttpStatusCode.NotFound, false)]
    [InlineData("/v/1/changes?to=3", HttpStatusCode.NotFound, false)]
    [InlineData("/v/1/changes?to=x", HttpStatusCode.BadRequest, false)]
    public async Task What_is_asked_wrongly_is_said(string path, HttpStatusCode status, bool wrong)
    {
        var shop = await shared.OfAsync(MendedAsync);
        var answer = await shop.Reader.GetAsync(shop.Page + path);
        Assert.Equal((status, wrong), (answer.Status, answer.Html.QuerySelector("#field-woven-wrong") is not null));
        Assert.Null(answer.Html.QuerySelector(".moved"));
    }

    [Fact]
    public async Task What_a_maker_wrote_stays_words_in_the_list_of_changes()
    {
        await using var shop = await IssuedShop.OpenAsync(First);
        await shop.ReissueAsync(First with { Title = Hostile.Title, Notes = Hostile.Notes, Licence = Hostile.Licence }, "", "edition");
        var path = (await shop.Reader.GetAsync($"/p/{shop.Id}")).Location!;
        foreach (var page in new[] { await shop.Reader.GetAsync(path), await shop.Reader.GetAsync(path + "/v/1/changes") })
        {
            Assert.Equal(HttpStatusCode.OK, page.Status);
            Assert.Empty(page.Html.QuerySelectorAll("main script, main img[onerror], main iframe, main style, main a[href^='javascript:']"));
            Assert.Contains("alert('n')", page.Html.QuerySelector("ul.changes")!.TextContent, StringComparison.Ordinal);
        }
    }

    private static async Task<IssuedShop> MendedAsync()
    {
        var shop = await IssuedShop.OpenAsync(First);
        await shop.ReissueAsync(Mended, "");
        return shop;
    }

    private static PatternDocument Cloth(string rows) => Charts.Document(rows, 2, start: Side.Left, steps: [new Repeat(3, [new ChartRows(1, rows.Split('/').Length, 1)])]) with { Title = "Harbour lights" };

    private static string Paragraphs(IElement element) => string.Join(' ', element.QuerySelectorAll("p").Select(Words));

    // without what is there for ears only
    private static string Seen(IElement element)
    {
        var seen = (IElement)element.Clone();
        Array.ForEach([.. seen.QuerySelectorAll(".unseen")], unseen => unseen.Remove());
        return Words(seen);
    }

    private static string Words(IElement element) => string.Join(' ', element.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
