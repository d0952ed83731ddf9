using System.Globalization;
using AngleSharp.Dom;
using AngleSharp.Html.Dom;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The samples on the web: each page says what the definitions give, worked out a second time by the tests.</summary>
public sealed class SamplePageTests(WebServer server)
{
    public static TheoryData<string> Names => [.. SamplePages.Names];

    [Fact]
    public async Task The_first_page_shows_every_sample_with_its_counts()
    {
        var page = (await server.Get("/")).Page();
        var shown = page.QuerySelectorAll("ul.shelf li")
            .Select(item => (item.QuerySelector("a")?.GetAttribute("href"), item.QuerySelector(".title")?.TextContent, item.QuerySelector(".counts")?.TextContent));
        var expected = SamplePages.Names.Select(name => (name, document: Read(name)))
            .Select(sample => ($"/samples/{sample.name}", sample.document.Title, string.Create(CultureInfo.InvariantCulture, $"{Oracle.Rows(sample.document)[0].Over.Count} ends · {Oracle.Rows(sample.document).Count} rows")));
        Assert.True(SamplePages.Names.Count >= 8);
        Assert.Equal(expected, shown!);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_page_says_the_counts(string name)
    {
        var document = Read(name);
        var page = await Page(name);
        var (motif, width) = (document.Motif.Columns, document.Width);
        var ends = Oracle.Rows(document)[0].Over.Count;
        Assert.Equal(document.Title, page.QuerySelector("h1")?.TextContent);
        Assert.Contains("not issued", page.QuerySelector(".version")?.TextContent, StringComparison.Ordinal);
        Assert.Contains(Text($"{width.Repeats} × {motif} = {width.Repeats * motif}"), Fact(page, "Warp"), StringComparison.Ordinal);
        Assert.Contains(Text($"{ends} ends"), Fact(page, "Warp"), StringComparison.Ordinal);
        Assert.Contains(Text($"a multiple of {motif}"), Fact(page, "Warp"), StringComparison.Ordinal);
        Assert.Contains(Text($"{Oracle.Rows(document).Count} rows"), Fact(page, "Rows and length"), StringComparison.Ordinal);
        Assert.Contains(Width(document, ends), Fact(page, "Sett and width"), StringComparison.Ordinal);
        Assert.Equal(document.Notes, page.QuerySelector(".maker p")?.TextContent);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task A_page_writes_every_row_as_the_definitions_give_it(string name)
    {
        var document = Read(name);
        var written = DirectionsTable.Rows(await Page(name));
        Assert.Empty(DirectionsTable.Differences(written, Oracle.Rows(document)));
        Assert.Equal(Piece.Of(document).PrintedRows(), written.Select(row => row.Number));
    }

    // what separates a row's number from what is noted beside it is text, so that it is copied and read aloud
    [Theory]
    [MemberData(nameof(Names))]
    public async Task The_head_of_a_row_names_it_and_its_notes_stand_apart(string name)
    {
        var page = await Page(name);
        var (rows, numbers) = (page.QuerySelectorAll("table.rows tbody th"), Piece.Of(Read(name)).PrintedRows());
        foreach (var (head, number) in rows.Zip(numbers))
        {
            var note = head.QuerySelector(".note")?.TextContent;
            Assert.Equal(Text($"Row {number}") + (note is null ? "" : " " + note), head.TextContent);
        }
    }

    [Fact]
    public async Task The_comparison_of_rows_can_fail()
    {
        var document = Read("hazel-diamonds");
        var written = DirectionsTable.Rows(await Page("hazel-diamonds"));
        var other = BitGrid.Create(document.Motif.Rows, document.Motif.Columns, (row, end) => document.Motif[row, end] ^ (row == 2 && end == 4));
        Assert.Equal([3, 13], DirectionsTable.Differences(written, Oracle.Rows(document with { Motif = other })));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task The_chart_on_the_page_is_described_and_in_the_file_too(string name)
    {
        var page = await Page(name);
        var chart = page.QuerySelector("section[aria-labelledby=chart] .paper svg")!;
        Assert.Equal("img", chart.GetAttribute("role"));
        Assert.StartsWith($"Chart of {Read(name).Title}: ", chart.QuerySelector("desc")?.TextContent, StringComparison.Ordinal);
        Assert.Contains("over: the weft passes over this end", chart.TextContent, StringComparison.Ordinal);
        var file = await server.Get($"/samples/{name}/chart.svg");
        Assert.Equal("image/svg+xml", file.Header("Content-Type"));
        Assert.Equal(chart.QuerySelectorAll("text").Select(text => text.TextContent), Svg.Texts(file.Text));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Its_files_are_offered_with_their_sizes_and_are_what_they_say(string name)
    {
        var page = await Page(name);
        var links = page.QuerySelectorAll("ul.files li").Select(item => (Link: item.QuerySelector("a")!, Size: item.QuerySelector(".size")!.TextContent)).ToList();
        Assert.Equal(["a4.pdf", "letter.pdf", "chart.svg", "directions.txt"], links.Select(link => link.Link.GetAttribute("href")![$"/samples/{name}/".Length..]));
        foreach (var (link, size) in links)
        {
            var file = await server.Get(link.GetAttribute("href")!);
            Assert.Equal((200, link.GetAttribute("type")), (file.Status, file.Header("Content-Type")));
            Assert.Equal(Text($"{Math.Max(1, file.Bytes.Length / 1000)} kB"), size);
        }
    }

    [Fact]
    public async Task Printables_are_kept_under_a_name_and_pictures_and_texts_are_shown()
    {
        var (pdf, svg, text, facts) = (await server.Get("/samples/kestrel/letter.pdf"), await server.Get("/samples/kestrel/chart.svg"), await server.Get("/samples/kestrel/directions.txt"), await server.Get("/samples/kestrel/facts.json"));
        Assert.Equal(["application/pdf", "image/svg+xml", "text/plain; charset=utf-8", "application/json"], new[] { pdf, svg, text, facts }.Select(file => file.Header("Content-Type")));
        Assert.StartsWith("attachment; filename=kestrel.letter.pdf", pdf.Header("Content-Disposition"), StringComparison.Ordinal);
        Assert.Equal(["", "", ""], new[] { svg, text, facts }.Select(file => file.Header("Content-Disposition")));
        Assert.StartsWith("%PDF-", pdf.Text, StringComparison.Ordinal);
        Assert.Equal("Kestrel", System.Text.Json.JsonDocument.Parse(facts.Bytes).RootElement.GetProperty("title").GetString());
    }

    // names of samples change; an address that somebody kept leads to those that there are, but is not remembered as moved, since a later sample may have that name
    [Theory]
    [InlineData("/samples/none")]
    [InlineData("/samples/none/weave")]
    [InlineData("/samples/none/a4.pdf")]
    [InlineData("/samples/none/facts.json")]
    [InlineData("/samples/%3Cscript%3E")]
    [InlineData("/samples/none%0D%0ASet-Cookie:a=b/a4.pdf")]
    public async Task The_address_of_no_sample_leads_to_all_samples(string path)
    {
        var answer = await server.Get(path);
        Assert.Equal((302, "/samples"), (answer.Status, answer.Header("Location")));
        Assert.DoesNotContain("script", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_a_sample_does_not_have_is_missing()
    {
        var answer = await server.Get($"/samples/{SamplePages.Names[0]}/none.pdf");
        Assert.Equal(404, answer.Status);
        Assert.NotNull(answer.Page().QuerySelector("main a[href='/']"));
    }

    private static PatternDocument Read(string name) => ((ReadResult.Read)PatternReader.Read(File.ReadAllBytes(SamplePages.File(name)))).Document;

    private async Task<IHtmlDocument> Page(string name) => (await server.Get($"/samples/{name}")).Page();

    private static string Fact(IHtmlDocument page, string name) =>
        page.QuerySelectorAll("dl.facts dt").Single(term => term.TextContent == name).NextElementSibling!.TextContent;

    private static string Text(FormattableString text) => FormattableString.Invariant(text);

    // width on the loom: ends ÷ sett, in the unit of the sett
    private static string Width(PatternDocument document, int ends)
    {
        var sett = document.Gauge.Sett;
        var width = decimal.Round(ends / sett.Amount * (sett.Unit == DensityUnit.PerTenCentimetres ? 10 : 1), 2, MidpointRounding.AwayFromZero);
        return Text($"width on the loom {width.ToString("0.##", CultureInfo.InvariantCulture)} {(sett.Unit == DensityUnit.PerInch ? "in" : "cm")}");
    }
}
