using PatternShop.Weave;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>What comes after the rows, in order: making up, cautions, corrections so far, the maker's own words and videos, licence, where the version is found.</summary>
public sealed class ClosingTests
{
    private static readonly VersionLine Version = new(3, new DateOnly(2026, 11, 24), "https://weave.example.org/p/0123456789/x/v/3")
    {
        Corrections = [new Correction(2, new DateOnly(2026, 11, 5), "Row 4 reads otherwise."), new Correction(3, new DateOnly(2026, 11, 24), "Rows 1 and 2 read otherwise.")],
    };

    private static readonly PatternDocument Document = Samples.Diamond with { Notes = "Beat gently.", Licence = "Weave it.", Videos = [new Video("https://films.example/all", "All of it", null)] };

    [Fact]
    public void Sections_stand_in_the_order_in_which_they_are_needed()
    {
        var headings = TaggedText.Read(Make(Version)).SelfAndBelow.Where(node => node.Name == "H2").Select(node => node.AllText);
        Assert.Equal(
            ["Warp", "Chart", "Order of work", "Rows", "Making up", "Take care", "Corrections so far", "Notes of the maker", "Maker's videos", "Licence", "Is this the newest version?", "For a loom with shafts"],
            headings);
    }

    /// <summary>What the maker leaves out stands in no heading, bookmark or word, and takes no page; cautions and licence stay.</summary>
    [Fact]
    public void What_is_left_out_is_gone_from_pages_and_bookmarks()
    {
        var full = Document with { Notes = string.Join('\n', Enumerable.Repeat("Beat gently, and look at the edge after every row.", 40)) };
        foreach (var part in Enum.GetValues<SheetPart>())
        {
            var title = Wording.English.SheetPartName(part);
            Assert.Contains(title, Headings(full));
            var without = full with { AfterChart = AfterChart.All.With(part, false) };
            Assert.Equal(Headings(full).Where(heading => heading != title), Headings(without));
            Assert.Equal(Headings(without).Prepend(full.Title), Bookmarks(without));
        }

        var least = full with { AfterChart = new AfterChart(false, false, false) };
        Assert.True(Plan(least).Pages.Count < Plan(full).Pages.Count);
        Assert.DoesNotContain("Beat gently", TaggedText.Read(Make(Version, least)).AllText, StringComparison.Ordinal);
        Assert.Contains("Weave it.", TaggedText.Read(Make(Version, least)).AllText, StringComparison.Ordinal);
        Assert.Contains(Wording.English.CautionsTitle, Headings(least));
        Assert.Empty(Matterhorn.Faults(Make(Version, least)));
        Assert.NotEqual(Make(Version, least), Make(Version, full));

        static IEnumerable<string> Headings(PatternDocument document) => TaggedText.Read(Make(Version, document)).SelfAndBelow.Where(node => node.Name == "H2").Select(node => node.AllText);

        static PrintPlan Plan(PatternDocument document) => Printable.Plan(Piece.Of(document), Version, Paper.A4, Wording.English);

        static IEnumerable<string> Bookmarks(PatternDocument document) =>
            Plan(document).Pages.SelectMany(page => page.Items).SelectMany(item => item.Tag?.Path ?? []).Where(tag => tag.Bookmark is not null).Distinct().Select(tag => tag.Bookmark!);
    }

    [Fact]
    public void Words_with_a_tab_between_stay_apart()
    {
        var made = Make(Version, Document with { Notes = "Beat\tgently.\n\tMind\t the edge." });
        var text = TaggedText.Read(made).AllText;
        Assert.Contains("Beat gently.", text, StringComparison.Ordinal);
        Assert.Contains("Mind  the edge.", text, StringComparison.Ordinal);
        Assert.Empty(Matterhorn.Faults(made));
    }

    [Fact]
    public void Corrections_name_version_day_and_rows()
    {
        var rows = TaggedText.Read(Make(Version)).SelfAndBelow.Where(node => node.Name == "TR").Select(row => string.Join(" | ", row.Children.Select(cell => cell.AllText))).ToList();
        var first = rows.IndexOf("Version 2, 5 November 2026 | Row 4 reads otherwise.");
        Assert.True(first > 0);
        Assert.Equal("Version 3, 24 November 2026 | Rows 1 and 2 read otherwise.", rows[first + 1]);
        Assert.Empty(Matterhorn.Faults(Make(Version)));
    }

    [Fact]
    public void Without_corrections_there_is_no_word_of_them_and_the_bytes_follow_from_them()
    {
        var none = Version with { Corrections = [] };
        Assert.DoesNotContain(Wording.English.CorrectionsTitle, TaggedText.Read(Make(none)).AllText, StringComparison.Ordinal);
        Assert.NotEqual(Make(none), Make(Version));
        Assert.Equal(Make(Version with { Corrections = [.. Version.Corrections] }), Make(Version));
    }

    [Fact]
    public void Making_up_says_what_the_engine_says()
    {
        var text = TaggedText.Read(Make(Version)).AllText;
        Assert.All(Wording.English.MakingUp(Piece.Of(Document)), part => Assert.Contains(part.Name + part.Text, text, StringComparison.Ordinal));
    }

    [Fact]
    public void A_number_is_never_broken()
    {
        // 180 is wider than 181, the last one of its stretch
        var document = Samples.Diamond with { Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new Repeat(17, [new ChartRows(1, 10, 1)]), new PlainRows(11, 1)]) };
        var numbers = Printable.Plan(Piece.Of(document), Version, Paper.A4, Wording.English).Pages.SelectMany(page => page.Items)
            .Where(item => item.Tag is { Kind: TagKind.HeaderCell, Scope: HeaderScope.Row }).Select(item => item.Mark).OfType<TextMark>().Select(mark => mark.Piece.Text).ToList();
        Assert.Contains("180", numbers);
        Assert.DoesNotContain("18", numbers);
    }

    private static byte[] Make(VersionLine version, PatternDocument? document = null) => Printable.Make(Piece.Of(document ?? Document), version, Paper.A4, Wording.English);
}
