using Bunit;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The panels for the maker's words at rows and for videos.</summary>
public sealed class OwnPanelTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private static readonly PatternDocument Diamond = Charts.Document(Charts.TenEndDiamond);

    [Fact]
    public async Task Pages_after_the_chart_are_left_out_one_by_one_and_undo_names_each()
    {
        await using var panel = await PanelHost<AfterChartPanel>.OpenAsync(shared.Bench, Diamond);
        Assert.Contains("“Take care” is always printed", panel.Page.Markup, StringComparison.Ordinal);
        await panel.ChooseAsync("Notes of the maker", "left out");
        Assert.Equal((Diamond with { AfterChart = new AfterChart(true, true, false) }, "leave out “Notes of the maker”"), (panel.Document, panel.Editing.View.UndoName));
        await panel.ChooseAsync("Making up", "left out");
        await panel.ChooseAsync("Notes of the maker", "printed");
        Assert.Equal((Diamond with { AfterChart = new AfterChart(false, true, true) }, "print “Notes of the maker”"), (panel.Document, panel.Editing.View.UndoName));
        await panel.Editing.UndoAsync();
        await panel.Editing.UndoAsync();
        Assert.Equal(Diamond with { AfterChart = new AfterChart(true, true, false) }, panel.Document);
        await panel.Editing.UndoAsync();
        Assert.Equal(Diamond, panel.Document);
    }

    [Fact]
    public async Task Words_for_a_row_are_written_changed_and_taken_away()
    {
        await using var panel = await PanelHost<RowWordsPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Chart row", "3");
        await panel.TypeAsync("Your words for chart row 3", "Beat gently.\r\nTwice.");
        Assert.Equal([new RowWords(3, "Beat gently.\nTwice.")], panel.Document.RowWords);
        await panel.TypeAsync("Chart row", "5");
        await panel.TypeAsync("Your words for chart row 3", "Beat once.");
        Assert.Equal([new RowWords(3, "Beat once.")], panel.Document.RowWords);
        await panel.TypeAsync("Your words for chart row 3", "");
        Assert.Empty(panel.Document.RowWords);
        Assert.DoesNotContain("Your words for chart row 3", panel.Labels, StringComparer.Ordinal);
    }

    [Fact]
    public async Task Words_that_are_refused_stay_to_be_mended_and_a_row_that_is_not_there_is_said()
    {
        await using var panel = await PanelHost<RowWordsPanel>.OpenAsync(shared.Bench, Diamond);
        var long_ = new string('w', 501);
        await panel.TypeAsync("Your words for chart row 1", long_);
        Assert.Equal("The text has 501 characters, 500 are allowed. Make it shorter.", panel.WrongAt("Your words for chart row 1"));
        Assert.Equal(long_, panel.ValueOf("Your words for chart row 1"));
        Assert.Empty(panel.Document.RowWords);
        await panel.TypeAsync("Chart row", "11");
        Assert.Equal(("There is no row 11. Choose 1 to 10.", "11"), (panel.WrongAt("Chart row"), panel.ValueOf("Chart row")));
    }

    [Fact]
    public async Task A_video_is_added_bound_to_a_row_and_taken_away()
    {
        await using var panel = await PanelHost<VideosPanel>.OpenAsync(shared.Bench, Diamond);
        await panel.TypeAsync("Address of a video", " https://films.example/turn ");
        await panel.PressAsync("Add the video");
        Assert.Equal("The caption is empty. Write at least one letter.", panel.Page.Find("#new-video-caption-problem").TextContent.Trim());
        Assert.Equal(" https://films.example/turn ", panel.ValueOf("Address of a video"));
        await panel.TypeAsync("What it shows", "The turn");
        await panel.PressAsync("Add the video");
        Assert.Equal([new Video("https://films.example/turn", "The turn", null)], panel.Document.Videos);
        Assert.Equal("", panel.ValueOf("Address of a video"));
        await panel.TypeAsync("Chart row (empty: the whole pattern)", "four");
        Assert.Equal("\"four\" is no row. Write digits only, or leave it empty.", panel.WrongAt("Chart row (empty: the whole pattern)"));
        await panel.TypeAsync("Chart row (empty: the whole pattern)", "4");
        Assert.Equal(4, panel.Document.Videos[0].Row);
        await panel.TypeAsync("Video 1: address", "http://films.example/");
        Assert.StartsWith("\"http://films.example/\" is not an address that can be linked to.", panel.WrongAt("Video 1: address"), StringComparison.Ordinal);
        await panel.PressAsync("Remove video 1");
        Assert.Empty(panel.Document.Videos);
    }

    [Fact]
    public async Task Fields_of_a_video_do_not_undo_each_other_however_fast_they_are_typed()
    {
        await using var panel = await PanelHost<VideosPanel>.OpenAsync(shared.Bench, Diamond with { Videos = [new Video("https://films.example/turn", "The turn", null)] });
        await panel.TypeBothAsync(shared.Bench, ("Video 1: address", "https://films.example/edge"), ("Chart row (empty: the whole pattern)", "4"));
        Assert.Equal([new Video("https://films.example/edge", "The turn", 4)], panel.Document.Videos);
    }

    [Fact]
    public async Task What_is_refused_of_a_video_never_lands_in_the_fields_of_another()
    {
        Video turn = new("https://films.example/turn", "The turn", null), edge = new("https://films.example/edge", "The edge", null);
        await using var panel = await PanelHost<VideosPanel>.OpenAsync(shared.Bench, Diamond with { Videos = [turn, edge] });
        await panel.TypeAsync("What it shows", "");
        await panel.TypeAsync("Chart row (empty: the whole pattern)", "four");
        Assert.Equal(("", "four"), (panel.ValueOf("What it shows"), panel.ValueOf("Chart row (empty: the whole pattern)")));
        await panel.PressAsync("Move video 1 later");
        Assert.Equal([edge, turn], panel.Document.Videos);
        Assert.Equal(("The edge", ""), (panel.ValueOf("What it shows"), panel.ValueOf("Chart row (empty: the whole pattern)")));
        Assert.DoesNotContain("four", panel.Page.Markup, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_marks_what_the_maker_says_at_a_row_and_links_without_loading()
    {
        using var bunit = SheetTests.Context();
        var sheet = SheetTests.Render(bunit, Diamond with
        {
            Language = "de",
            Notes = "<b>Fein</b>",
            RowWords = [new RowWords(2, "Nicht fest\nanschlagen <i>")],
            Videos = [new Video("https://Films.example/turn?a=1&b=2", "Die Wende", 2), new Video("https://films.example/all", "Alles", null)],
            Photos = [new Photo(new string('a', 64), "Nicht da", null)],
        });
        var own = sheet.Find("#row-2 .own");
        Assert.Equal(["Maker's note: Nicht fest\nanschlagen <i>", "Maker's video: Die Wende (video at films.example)"], own.QuerySelectorAll("p").Select(line => line.TextContent.Trim()));
        Assert.Equal("de", own.QuerySelector("span.said")!.GetAttribute("lang"));
        Assert.Empty(sheet.FindAll("#row-3 .own"));
        var links = sheet.FindAll(".own a, ul.videos a");
        Assert.Equal(["https://Films.example/turn?a=1&b=2", "https://films.example/all"], links.Select(link => link.GetAttribute("href")));
        Assert.All(links, link => Assert.Equal("noopener noreferrer nofollow", link.GetAttribute("rel")));
        Assert.Empty(sheet.FindAll("img, iframe, video, figure:not(.cloth), i"));
        Assert.Equal("In the maker's own words and pictures", sheet.Find("section.maker h2").TextContent);
    }
}
