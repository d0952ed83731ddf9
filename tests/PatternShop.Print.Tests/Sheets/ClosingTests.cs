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
        var document = Samples.Diamond with { Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new Repeat(22, [new ChartRows(1, 8, 1)]), new PlainRows(5, 1)]) };
        var numbers = Printable.Plan(Piece.Of(document), Version, Paper.A4, Wording.English).Pages.SelectMany(page => page.Items)
            .Where(item => item.Tag is { Kind: TagKind.HeaderCell, Scope: HeaderScope.Row }).Select(item => item.Mark).OfType<TextMark>().Select(mark => mark.Piece.Text).ToList();
        Assert.Contains("180", numbers);
        Assert.DoesNotContain("18", numbers);
    }

    private static byte[] Make(VersionLine version) => Printable.Make(Piece.Of(Document), version, Paper.A4, Wording.English);
}
