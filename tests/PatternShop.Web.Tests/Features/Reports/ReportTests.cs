using System.Net;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class ReportTests(SharedShop shared) : IClassFixture<SharedShop>
{
    private static readonly PatternDocument Cloth = Charts.Document(Charts.TenEndDiamond) with { Title = "Harbour lights" };

    [Fact]
    public async Task A_reader_reports_a_row_the_maker_answers_and_names_it_in_a_correction()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var form = shop.Page + "/v/1/report";
        Assert.Equal("4", (await shop.Reader.GetAsync(form + "?row=4")).Html.QuerySelector("#field-row")!.GetAttribute("value"));
        var sent = await shop.Reader.FillAsync(form, form, ("Row", "4"), ("Text", "One over too many <b>here</b>"), ("ReplyTo", "reader@example.org"));
        Assert.Equal(HttpStatusCode.SeeOther, sent.Status);
        Assert.Contains("Nothing yet.", (await shop.Reader.GetAsync(sent.Location!)).Words, StringComparison.Ordinal);

        Assert.Contains("Reports (1 to answer)", (await shop.Maker.GetAsync("/studio")).Words, StringComparison.Ordinal);
        var desk = $"/studio/patterns/{shop.Id}/reports";
        var seen = await shop.Maker.GetAsync(desk);
        Assert.Equal(
            ["Row 4 of version 1", "One over too many <b>here</b>", "Can be reached at: reader@example.org"],
            seen.Html.QuerySelectorAll("article h2, article .said, article .hint").Select(line => line.TextContent));
        Assert.Equal(desk, (await shop.Maker.FillAsync(desk, desk + "/1", ("Answer", "You are right."))).Location);
        var answered = await shop.Reader.GetAsync(sent.Location!);
        Assert.Contains("You are right.", answered.Words, StringComparison.Ordinal);
        Assert.Equal(("no-store", "no-referrer"), (answered.Headers["Cache-Control"], answered.Headers["Referrer-Policy"]));
        Assert.DoesNotContain("reader@example.org", answered.Text, StringComparison.Ordinal);

        await shop.Shop.Workroom.SaveAsync((await shop.Shop.MakerAsync()).Id, shop.Id, new Store.StepRequest("test", 1, 1, "Change", Cloth with { Motif = Cloth.Motif.With(3, 0, !Cloth.Motif[3, 0]) }), TestContext.Current.CancellationToken);
        var issue = $"/studio/patterns/{shop.Id}/issue";
        Assert.Contains("Row 4 of version 1: “One over too many <b>here</b>”", (await shop.Maker.GetAsync(issue)).Words, StringComparison.Ordinal);
        await shop.Maker.FillAsync(issue, issue, ("Kind", "correction"), ("Note", ""), ("Mends", "1"));
        var page = await shop.Reader.GetAsync(shop.Page);
        Assert.Contains("It mends what readers reported: row 4 of version 1.", page.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("One over too many", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_private_page_names_the_correction_that_answers_the_report_and_its_rows_as_long_as_readers_can_see_it()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var form = shop.Page + "/v/1/report";
        var answered = (await shop.Reader.FillAsync(form, form, ("Row", "4"), ("Text", "One over too many"))).Location!;
        var waiting = (await shop.Reader.FillAsync(form, form, ("Row", "2"), ("Text", "And this?"))).Location!;
        await ChangeAsync(shop, Cloth with { Motif = Cloth.Motif.With(3, 0, !Cloth.Motif[3, 0]) }, mends: "1");
        await ChangeAsync(shop, Cloth with { Title = "Harbour lamps", Motif = Cloth.Motif.With(3, 0, !Cloth.Motif[3, 0]) });
        var page = PublicPages.Address(shop.Id, "Harbour lamps");

        var seen = await shop.Reader.GetAsync(answered);
        var answer = seen.Html.QuerySelector("section[aria-labelledby=answer]")!;
        Assert.DoesNotContain("Nothing yet", seen.Words, StringComparison.Ordinal);
        var said = answer.QuerySelectorAll("p").Select(line => line.TextContent).ToList();
        Assert.Matches("^Version 2, [0-9]+ [A-Z][a-z]+ [0-9]{4}, a correction, answers your report\\.$", said[0]);
        Assert.Equal(["Row 4 reads otherwise. What changed since version 1"], said.Skip(1));
        Assert.Equal([page + "/v/2", page + "/v/1/changes?to=2"], answer.QuerySelectorAll("a").Select(link => link.GetAttribute("href")));
        foreach (var link in seen.Html.QuerySelectorAll("main a"))
        {
            var path = link.GetAttribute("href")!;
            Assert.Equal((path, HttpStatusCode.OK), (path, (await shop.Reader.GetAsync(path)).Status));
        }

        Assert.Contains("Nothing yet.", (await shop.Reader.GetAsync(waiting)).Words, StringComparison.Ordinal);

        // neither version nor rows of what the maker hides are told, and nothing leads there
        await shop.Maker.PostAsync("/studio", $"/studio/patterns/{shop.Id}/withdraw");
        foreach (var path in new[] { answered, waiting })
        {
            var hidden = await shop.Reader.GetAsync(path);
            Assert.Contains("withdrawn", hidden.Words, StringComparison.Ordinal);
            Assert.DoesNotContain("ersion 2", hidden.Words, StringComparison.Ordinal);
            Assert.DoesNotContain("otherwise", hidden.Words, StringComparison.Ordinal);
            Assert.Empty(hidden.Html.QuerySelectorAll("main a"));
        }

        Assert.DoesNotContain("Nothing yet", (await shop.Reader.GetAsync(answered)).Words, StringComparison.Ordinal);
        await shop.Maker.PostAsync("/studio", $"/studio/patterns/{shop.Id}/restore");
        Assert.Contains("Row 4 reads otherwise.", (await shop.Reader.GetAsync(answered)).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_several_corrections_the_newest_is_named_and_what_the_maker_wrote_stands_beside_it()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var form = shop.Page + "/v/1/report";
        var sent = (await shop.Reader.FillAsync(form, form, ("Row", "4"), ("Text", "One over too many"))).Location!;
        await ChangeAsync(shop, Cloth with { Motif = Cloth.Motif.With(2, 0, !Cloth.Motif[2, 0]) }, mends: "1");
        await ChangeAsync(shop, Cloth with { Motif = Cloth.Motif.With(3, 0, !Cloth.Motif[3, 0]) }, mends: "1");
        var desk = $"/studio/patterns/{shop.Id}/reports";
        await shop.Maker.FillAsync(desk, desk + "/1", ("Answer", "You are right."));
        var words = (await shop.Reader.GetAsync(sent)).Words;
        Assert.Contains("Version 3, ", words, StringComparison.Ordinal);
        Assert.DoesNotContain("Version 2, ", words, StringComparison.Ordinal);
        Assert.Contains("Row 4 reads otherwise.", words, StringComparison.Ordinal);
        Assert.Contains("You are right.", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_row_leads_to_the_form_with_version_and_row_filled_in()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        await shop.ReissueAsync(Cloth with { Notes = "More." }, "");
        foreach (var (path, version) in new[] { ("", 2), ("/v/1", 1), ("/weave", 2), ("/v/1/weave", 1) })
        {
            var links = (await shop.Reader.GetAsync(shop.Page + path)).Html.QuerySelectorAll("table.rows td.report a, ul.rows a");
            Assert.Equal(Enumerable.Range(1, 10).Select(row => $"{shop.Page}/v/{version}/report?row={row}"), links.Select(link => link.GetAttribute("href")));
            Assert.Equal(Enumerable.Range(1, 10).Select(row => $"Report a mistake in row {row}"), links.Select(link => link.TextContent.Replace("Mistake? ", "", StringComparison.Ordinal)));
        }

        var form = await shop.Reader.GetAsync(shop.Page + "/v/1/report?row=3");
        Assert.Equal("3", form.Html.QuerySelector("#field-row")!.GetAttribute("value"));
        Assert.Contains("Version 1,", form.Words, StringComparison.Ordinal);
        Assert.Empty((await shop.Reader.GetAsync("/samples/kestrel")).Html.QuerySelectorAll("td.report, a[href*=report]"));
    }

    [Fact]
    public async Task Only_so_many_reports_come_from_one_network_in_an_hour_and_what_was_typed_is_kept()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        var form = shop.Page + "/v/1/report";
        for (var sent = 0; sent < ReportThrottle.Most; sent++)
        {
            Assert.Equal(HttpStatusCode.SeeOther, (await shop.Reader.FillAsync(form, form, ("Text", "Wrong."))).Status);
        }

        var refused = await shop.Reader.FillAsync(form, form, ("Row", "2"), ("Text", "Typed <words>"));
        Assert.Equal((HttpStatusCode.TooManyRequests, "Typed <words>"), (refused.Status, refused.Html.QuerySelector("textarea")!.TextContent));
        Assert.True(refused.Headers.ContainsKey("Retry-After"));
        shop.Shop.Clock.Now += ReportThrottle.Window;
        Assert.Equal(HttpStatusCode.SeeOther, (await shop.Reader.FillAsync(form, form, ("Text", "Wrong."))).Status);
    }

    [Theory]
    [InlineData("11", "fine", "", "field-row")]
    [InlineData("0", "fine", "", "field-row")]
    [InlineData("x", "fine", "", "field-row")]
    [InlineData("1", "  ", "", "field-text")]
    [InlineData("1", "fine", "a\u0007", "field-replyto")]
    public async Task What_is_wrong_with_a_report_is_said_at_its_field(string row, string text, string reply, string field)
    {
        var shop = await shared.OfAsync(static () => IssuedShop.OpenAsync(Cloth));
        var form = shop.Page + "/v/1/report";
        var answer = await shop.Reader.FillAsync(form, form, ("Row", row), ("Text", text), ("ReplyTo", reply));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.NotNull(answer.Html.QuerySelector($"#{field}[aria-invalid=true]"));
    }

    [Fact]
    public async Task The_form_alone_sets_a_cookie_and_nobody_else_finds_a_report()
    {
        await using var shop = await IssuedShop.OpenAsync(Cloth);
        Assert.Contains("Set-Cookie", (await shop.Reader.GetAsync(shop.Page + "/v/1/report")).Headers.Keys, StringComparer.OrdinalIgnoreCase);
        Assert.DoesNotContain("Set-Cookie", (await shop.Reader.GetAsync(shop.Page)).Headers.Keys, StringComparer.OrdinalIgnoreCase);
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync("/reports/" + new string('0', 26))).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await shop.Reader.GetAsync(shop.Page + "/v/2/report")).Status);
    }

    // Saves a document and publishes it as a correction by the maker's form, with the reports that it answers.
    private static async Task ChangeAsync(IssuedShop shop, PatternDocument document, string mends = "")
    {
        var (maker, issue) = ((await shop.Shop.MakerAsync()).Id, $"/studio/patterns/{shop.Id}/issue");
        var revision = (await shop.Shop.Workroom.OpenAsync(maker, shop.Id, TestContext.Current.CancellationToken))!.Revision;
        await shop.Shop.Workroom.SaveAsync(maker, shop.Id, new Store.StepRequest("test", revision, revision, "Change", document), TestContext.Current.CancellationToken);
        await shop.Maker.FillAsync(issue, issue, [("Note", ""), ("Kind", "correction"), .. mends.Length > 0 ? [("Mends", mends)] : Array.Empty<(string, string)>()]);
    }
}
