using AngleSharp.Dom;
using Bunit;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>Whatever a maker types stays words, on the page and in every file.</summary>
public sealed class MakerWordsTests(WebServer server)
{
    [Fact]
    public async Task A_page_shows_them_letter_for_letter()
    {
        var page = (await server.Get(WebServer.HostileAddress)).Page();
        Assert.Equal(Hostile.Title, page.QuerySelector("h1")?.TextContent);
        Assert.Equal($"{Hostile.Title} · PatternShop", page.Title);
        Assert.Equal(Hostile.Notes.Split('\n'), page.QuerySelectorAll(".maker p").Select(paragraph => paragraph.TextContent));
        Assert.Equal(Hostile.Licence, page.QuerySelector("section[aria-labelledby=licence] p")?.TextContent);
        Assert.Equal(Hostile.Title, page.QuerySelector("section[aria-labelledby=chart] .paper svg title")?.TextContent);
        Assert.Contains("alert('s')", page.QuerySelector(".order")?.TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task They_make_no_element()
    {
        var page = (await server.Get(WebServer.HostileAddress)).Page();
        var known = (await server.Get("/samples/kite-weather")).Page().All.Select(element => element.LocalName).ToHashSet(StringComparer.Ordinal);
        Assert.Empty(PageRules.Faults(page));
        Assert.DoesNotContain(page.All, element => !known.Contains(element.LocalName));
    }

    [Fact]
    public void They_are_marked_with_their_language()
    {
        using var bunit = SheetTests.Context();
        var sheet = SheetTests.Render(bunit, Hostile.Document with { Language = "de" });
        Assert.Equal(["h1", "p", "p", "p", "p"], sheet.FindAll("[lang=de]").Select(element => element.LocalName));
    }

    [Fact]
    public void Files_hold_them_as_words()
    {
        var made = new PieceFiles(Wording.English).Of(Hostile.Sample.Piece).ToDictionary(file => file.Kind, file => System.Text.Encoding.UTF8.GetString(file.Bytes), StringComparer.Ordinal);
        Assert.Empty(Svg.Strange(made["chart.svg"]));
        Assert.Equal(Hostile.Title, System.Xml.Linq.XDocument.Parse(made["chart.svg"]).Root!.Elements().First().Value);
        Assert.StartsWith(Hostile.Title + "\n", made["directions.txt"], StringComparison.Ordinal);
        using var facts = System.Text.Json.JsonDocument.Parse(made["facts.json"]);
        Assert.Equal(Hostile.Title, facts.RootElement.GetProperty("title").GetString());
    }

    [Theory]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><script/></svg>", "script")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><g onload='x'/></svg>", "onload")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><a href='x'/></svg>", "a href")]
    [InlineData("<svg xmlns='http://www.w3.org/2000/svg'><p xmlns='http://www.w3.org/1999/xhtml'/></svg>", "p")]
    public void A_strange_part_of_a_picture_is_seen(string svg, string strange) => Assert.Equal(strange, string.Join(' ', Svg.Strange(svg)));
}
