using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>What the sheet of a pattern shows, and what it leaves out when there is nothing to say.</summary>
public sealed class SheetTests
{
    internal static BunitContext Context()
    {
        var context = new BunitContext();
        context.Services.AddSingleton(Wording.English);
        return context;
    }

    internal static IRenderedComponent<PatternSheet> Render(BunitContext context, PatternDocument document, params FileLink[] files) =>
        context.Render<PatternSheet>(parameters => parameters
            .Add(sheet => sheet.Piece, Piece.Of(document))
            .Add(sheet => sheet.VersionLine, "Version 3 · 1 May 2026")
            .Add(sheet => sheet.Files, files));

    [Fact]
    public void Parts_without_content_are_left_out()
    {
        using var context = Context();
        var bare = Render(context, Charts.Document(Charts.TenEndDiamond));
        Assert.Empty(bare.FindAll(".maker, #licence, td.note"));
        var full = Render(context, Charts.Document(Charts.TenEndDiamond) with { Notes = "one\n\ntwo", Licence = "Weave it." });
        Assert.Equal(["one", "two"], full.FindAll(".maker p").Select(paragraph => paragraph.TextContent));
        Assert.Equal("Weave it.", full.Find("section[aria-labelledby=licence] p").TextContent);
    }

    [Fact]
    public void It_names_its_version_and_its_files()
    {
        using var context = Context();
        var sheet = Render(context, Charts.Document(Charts.TenEndDiamond), new FileLink("Sheet on A4", "/p/x/a4.pdf", "application/pdf", 26_400), new FileLink("Whole book", "/p/x/all.pdf", "application/pdf", 1_440_000));
        Assert.Equal("Version 3 · 1 May 2026", sheet.Find(".version").TextContent);
        Assert.Equal(["Sheet on A4", "Whole book"], sheet.FindAll(".files a").Select(link => link.TextContent));
        Assert.Equal(["/p/x/a4.pdf", "/p/x/all.pdf"], sheet.FindAll(".files a").Select(link => link.GetAttribute("href")));
        Assert.Equal(["26 kB", "1.4 MB"], sheet.FindAll(".files .size").Select(size => size.TextContent));
    }

    // The values are those of whole piece 1: the diamond, computed by a separate program and by hand.
    [Fact]
    public void Rows_are_written_in_the_direction_of_travel_with_the_fewest_items()
    {
        using var context = Context();
        var sheet = Render(context, Charts.DiamondPiece);
        var rows = DirectionsTable.Rows((IParentNode)sheet.Find("article"));
        Assert.Equal([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 21, 22], rows.Select(row => row.Number));
        Assert.Equal(new WrittenTableRow(22, "← from the right", "[under 1, over 1] × 11, under 1"), rows[^1]);
        Assert.Equal("from the left →", rows[0].From);
        Assert.Equal("o2u1o2u3o2u1o1u1o2u3o2u1o2", Short(rows[0].Runs));
        Assert.Equal("u2o1u1o2u1o2u1o1u1o1u1o2u1o2u1o1u2", Short(rows[1].Runs));
        Assert.Equal("same as row 5", sheet.Find("#row-7 .note").TextContent[^"same as row 5".Length..]);
    }

    [Fact]
    public void Runs_stay_on_one_line_and_read_as_the_text_does()
    {
        using var context = Context();
        var piece = Piece.Of(Charts.Document(Charts.TenEndDiamond, 3, 0, 1, Charts.AlikeUnder));
        foreach (var reading in piece.Readings)
        {
            var spans = context.Render<WritingSpans>(parameters => parameters.Add(spans => spans.Writing, reading.Writing));
            Assert.Equal(Wording.English.WritingText(reading.Writing), spans.Find("[aria-hidden=true]").TextContent);
            Assert.Equal(Wording.English.SpokenText(reading.Writing), spans.Find(".unseen").TextContent);
            Assert.All(spans.FindAll(".run"), run => Assert.Matches("^(over|under) [0-9]+$", run.TextContent));
        }
    }

    [Fact]
    public void Runs_without_brackets_are_read_as_they_are_seen_and_no_word_comes_from_elsewhere()
    {
        using var context = new BunitContext();
        context.Services.AddSingleton<Wording>(new OtherWords());
        string Text(string chart, int repeats) => string.Concat(context
            .Render<WritingSpans>(parameters => parameters.Add(spans => spans.Writing, Piece.Of(Charts.Document(chart, repeats)).Reading(1).Writing))
            .Nodes.Select(node => node.TextContent));
        Assert.Equal("2 ziq, 2 kiz", Text("xx..", 1));
        Assert.Equal("[(1 ziq, 1 kiz) × 2, 2 ziq, 2 kiz] × 3qiki 3 ziz: qikik 2 ziz: ziq 1, kiz 1; ziziz ziq 2, kiz 2", Text("x.x.xx..", 3));
    }

    [Fact]
    public void Two_readings_are_explained_only_where_repeated_rows_read_differently()
    {
        using var context = Context();
        RowStep thrice = new Repeat(3, [new ChartRows(1, 3, 1)]);
        var odd = Render(context, Charts.Document("xx./.xx/x.x", 3, 0, 0, Charts.AlikeUnder, Side.Left, thrice));
        Assert.Contains("an odd number", odd.Find(".order .rule").TextContent, StringComparison.Ordinal);
        Assert.Equal(6, odd.FindAll("table.rows tbody tr").Count);
        var even = Render(context, Charts.Document("xx./.xx", 3, 0, 0, Charts.AlikeUnder, Side.Left, new Repeat(3, [new ChartRows(1, 2, 1)])));
        Assert.Empty(even.FindAll(".order .rule"));
        Assert.Equal(2, even.FindAll("table.rows tbody tr").Count);
    }

    private static string Short(string written)
    {
        var runs = new List<Run>();
        foreach (var stroke in WrittenRuns.Strokes(written).Select(over => over ? Stroke.Over : Stroke.Under))
        {
            if (runs.Count > 0 && runs[^1].Stroke == stroke)
            {
                runs[^1] = new Run(stroke, runs[^1].Count + 1);
            }
            else
            {
                runs.Add(new Run(stroke, 1));
            }
        }

        return Charts.Short(runs);
    }
}
