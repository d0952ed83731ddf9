using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using UglyToad.PdfPig;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class IssueTests
{
    private static readonly PatternDocument Cloth = Charts.Document(Charts.TenEndDiamond, 2, balance: 1, floating: Charts.AlikeOver) with { Title = "Harbour lights", Gauge = Charts.DiamondPiece.Gauge };

    private static readonly PatternDocument Basket = Charts.Document("xx../xx../..xx/..xx", 2) with { Title = "Basket" };

    [Fact]
    public async Task The_page_shows_what_will_be_issued()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var page = await maker.GetAsync(Path(await shop.PatternAsync(Cloth)));
        Assert.Contains("Version 1, 24 November 2026", page.Words, StringComparison.Ordinal);
        Assert.Contains("23 ends", page.Words, StringComparison.Ordinal);
        Assert.Contains("4.6 in", page.Words, StringComparison.Ordinal);
        Assert.Contains("This shop has no public address yet", page.Words, StringComparison.Ordinal);
        Assert.Null(page.Html.QuerySelector("#findings"));
        Assert.Equal("Issue version 1", page.Html.QuerySelector("form.sheet button")!.TextContent);
        maker.Dispose();
    }

    // Common practice, no source: a basket weave has unwrapped turns from either side.
    [Fact]
    public async Task Turns_that_nothing_holds_are_named_first()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var page = await maker.GetAsync(Path(await shop.PatternAsync(Basket)));
        var findings = page.Html.QuerySelectorAll("section.care li .what").Select(item => string.Join(' ', item.TextContent.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
        Assert.Equal(["Fault At the right edge, the turns after rows 1 and 3 are not wrapped."], findings);
        maker.Dispose();
    }

    [Fact]
    public async Task Issuing_stores_document_date_note_and_all_editions_which_name_the_version()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Cloth);
        Assert.Equal("/studio", (await TestShop.IssueAsync(maker, id, "  First\r\none.  ")).Location);
        var version = (await Shelf(shop).VersionAsync(id, 1, TestContext.Current.CancellationToken))!;
        Assert.Equal((new DateOnly(2026, 11, 24), "First\none."), (version.Date, version.Note));
        Assert.Equal(PatternWriter.CanonicalBytes(Cloth), version.Canonical);
        Assert.Equal(
            [
                "a4.pdf", "letter.pdf", "a4-large.pdf", "letter-large.pdf", "a4-ink-saving.pdf", "letter-ink-saving.pdf", "a4-row-cover.pdf", "letter-row-cover.pdf",
                "chart.svg", "directions.txt", "facts.json",
            ],
            version.Files.Select(file => file.Edition));
        Assert.Equal("harbour-lights-v1.a4.pdf", version.Files[0].Name);
        foreach (var (file, width) in version.Files.Zip([595.3, 612.0]))
        {
            using var pdf = PdfDocument.Open((await Shelf(shop).FileAsync(file.Hash, TestContext.Current.CancellationToken))!.Bytes);
            Assert.Contains("Version 1, 24 November 2026", string.Join(' ', pdf.GetPage(1).GetWords().Select(word => word.Text)), StringComparison.Ordinal);
            Assert.Equal(width, pdf.GetPage(1).Width, 1.0);
        }

        maker.Dispose();
    }

    [Fact]
    public async Task The_sheets_of_a_correction_list_what_was_corrected_so_far_and_new_editions_are_not_among_it()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Cloth);
        await TestShop.IssueAsync(maker, id);
        Assert.DoesNotContain("Corrections so far", await SheetAsync(1), StringComparison.Ordinal);
        await SaveAsync(shop, id, 1, Cloth with { Motif = Cloth.Motif.With(2, 4, !Cloth.Motif[2, 4]) });
        await TestShop.IssueAsync(maker, id);
        Assert.Contains("Version 2, 24 November 2026Row 3 reads otherwise.", await SheetAsync(2), StringComparison.Ordinal);
        await SaveAsync(shop, id, 2, Cloth with { Title = "Harbour lights by day" });
        await TestShop.IssueAsync(maker, id, kind: "edition");
        var third = await SheetAsync(3);
        Assert.Contains("Version 2, 24 November 2026Row 3 reads otherwise.", third, StringComparison.Ordinal);
        Assert.DoesNotContain("otherwise now: title", third, StringComparison.OrdinalIgnoreCase);
        maker.Dispose();

        // letters without the white space between words, in the order in which they are painted
        async Task<string> SheetAsync(int number)
        {
            var version = (await Shelf(shop).VersionAsync(id, number, TestContext.Current.CancellationToken))!;
            using var pdf = PdfDocument.Open((await Shelf(shop).FileAsync(version.Files[0].Hash, TestContext.Current.CancellationToken))!.Bytes);
            return string.Concat(pdf.GetPages().SelectMany(page => page.Letters).Select(letter => letter.Value));
        }
    }

    [Fact]
    public async Task The_sheets_say_where_the_version_is_found_and_the_page_is_there()
    {
        var (shop, maker) = await TestShop.SetUpAsync("--PatternShop:PublicAddress=https://patterns.example.org");
        await using var _ = shop;
        var id = await shop.PatternAsync(Cloth);
        Assert.DoesNotContain("public address", (await maker.GetAsync(Path(id))).Words, StringComparison.Ordinal);
        await TestShop.IssueAsync(maker, id);
        var path = $"/p/{id}/harbour-lights/v/1";
        Assert.Equal(HttpStatusCode.OK, (await maker.GetAsync(path)).Status);
        foreach (var file in (await Shelf(shop).VersionAsync(id, 1, TestContext.Current.CancellationToken))!.Files.Take(2))
        {
            using var pdf = PdfDocument.Open((await Shelf(shop).FileAsync(file.Hash, TestContext.Current.CancellationToken))!.Bytes);
            Assert.Single(pdf.GetPages(), page => page.GetWords().Any(word => word.Text == "https://patterns.example.org" + path));
        }

        maker.Dispose();
    }

    [Theory]
    [InlineData("UTC", "24 November 2026")]
    [InlineData("Pacific/Auckland", "25 November 2026")]
    [InlineData("America/Los_Angeles", "24 November 2026")]
    public async Task The_date_is_that_of_the_makers_zone(string zone, string date)
    {
        await using var shop = await TestShop.OpenAsync();
        using var maker = shop.Visit();
        await maker.FillAsync(shop.SetUpPath, "/setup", TestShop.SetUpFields(zone: zone));
        var id = await shop.PatternAsync(Cloth);
        await TestShop.IssueAsync(maker, id);
        Assert.Contains("Version 1, " + date, (await maker.GetAsync($"/p/{id}/harbour-lights")).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_issues_what_changed_meanwhile_is_shown_how_it_stands_now()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Cloth);
        await SaveAsync(shop, id, 1, Cloth with { Title = "Harbour lights again" });
        var answer = await maker.PostAsync(Path(id), Path(id), ("revision", "1"), ("Note", "kept <words>"));
        Assert.Equal(HttpStatusCode.Conflict, answer.Status);
        Assert.Contains("Harbour lights again", answer.Heading, StringComparison.Ordinal);
        Assert.Equal("kept <words>", answer.Html.QuerySelector("textarea")!.TextContent);
        Assert.Equal("2", answer.Html.QuerySelector("input[name=revision]")!.GetAttribute("value"));
        Assert.Null(await Shelf(shop).FindAsync(id, TestContext.Current.CancellationToken));
        maker.Dispose();
    }

    [Fact]
    public async Task What_readers_have_already_is_not_issued_again()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Cloth);
        await TestShop.IssueAsync(maker, id);
        Assert.Null((await maker.GetAsync(Path(id))).Html.QuerySelector("form.sheet"));
        Assert.Equal(HttpStatusCode.Conflict, (await maker.PostAsync("/studio", Path(id), ("revision", "1"))).Status);
        Assert.Single((await Shelf(shop).FindAsync(id, TestContext.Current.CancellationToken))!.Versions);
        maker.Dispose();
    }

    [Fact]
    public async Task Of_many_who_issue_at_once_one_does_and_the_others_are_told()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Basket);
        var token = await maker.TokenAsync(Path(id));
        var answers = await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => maker.PostPlainAsync(Path(id), ("__RequestVerificationToken", token), ("revision", "1"), ("Note", ""))));
        Assert.Single(answers, answer => answer.Status == HttpStatusCode.SeeOther);
        Assert.Equal(5, answers.Count(answer => answer.Status == HttpStatusCode.Conflict));
        Assert.Single((await Shelf(shop).FindAsync(id, TestContext.Current.CancellationToken))!.Versions);
        maker.Dispose();
    }

    [Fact]
    public async Task Two_who_change_and_issue_in_turn_get_two_numbers()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Basket);
        await TestShop.IssueAsync(maker, id);
        await SaveAsync(shop, id, 1, Basket with { Title = "Basket two" });
        shop.Clock.Now += TimeSpan.FromDays(1);
        await TestShop.IssueAsync(maker, id, "A better name.");
        var versions = (await Shelf(shop).FindAsync(id, TestContext.Current.CancellationToken))!.Versions;
        Assert.Equal([(2, new DateOnly(2026, 11, 25), "A better name."), (1, new DateOnly(2026, 11, 24), "")], versions.Select(line => (line.Number, line.Date, line.Note)));
        maker.Dispose();
    }

    [Fact]
    public async Task A_note_that_is_too_long_is_named_and_kept()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Basket);
        var note = new string('n', IssueRequest.NoteMost + 1);
        var answer = await TestShop.IssueAsync(maker, id, note);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Equal(note, answer.Html.QuerySelector("textarea")!.TextContent);
        Assert.Null(await Shelf(shop).FindAsync(id, TestContext.Current.CancellationToken));
        maker.Dispose();
    }

    private static string Path(PatternId id) => $"/studio/patterns/{id}/issue";

    private static PublicShelf Shelf(TestShop shop) => shop.Services.GetRequiredService<PublicShelf>();

    private static async Task SaveAsync(TestShop shop, PatternId id, long revision, PatternDocument document) =>
        Assert.IsType<SaveResult.Saved>(await shop.Workroom.SaveAsync((await shop.MakerAsync()).Id, id, new StepRequest("test", revision, revision, "Change", document), TestContext.Current.CancellationToken));
}
