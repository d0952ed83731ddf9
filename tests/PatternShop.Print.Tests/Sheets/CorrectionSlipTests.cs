using PatternShop.Tests.Shared;
using PatternShop.Weave;
using UglyToad.PdfPig;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>The correction slip names what changed and nothing else.</summary>
public sealed class CorrectionSlipTests
{
    private static readonly VersionLine First = new(1, new DateOnly(2026, 11, 5));
    private static readonly VersionLine Second = new(2, new DateOnly(2026, 11, 24));
    private static readonly PatternDocument Before = Charts.Document("x.x.x. / .x.x.x / .xx..x / x.x.x.");
    private static readonly PatternDocument After = Before with { Motif = Before.Motif.With(2, 4, true) };

    // row 3 from the left: before under 1, over 2, under 2, over 1; now under 1, over 2, under 1, over 2; so its longest float under is another
    [Fact]
    public void It_gives_the_old_and_the_new_reading_of_the_row_that_changed_on_one_page()
    {
        var file = Make(Before, After);
        using var pdf = PdfDocument.Open(file);
        Assert.Equal(1, pdf.NumberOfPages);
        var nodes = TaggedText.Read(file).SelfAndBelow.ToList();
        Assert.Equal(["Row 3", "Floats"], nodes.Where(node => node.Name == "H2").Select(node => node.AllText));
        Assert.Contains(nodes, node => node.Name == "P" && node.AllText.StartsWith("before: from the left ", StringComparison.Ordinal) && node.AllText.EndsWith(": under 1, over 2, under 2, over 1", StringComparison.Ordinal));
        var strip = Assert.Single(nodes, node => node.Name == "TR");
        Assert.Equal(["3", "left ", "[under 1, over 2] × 2"], strip.Children.Select(cell => cell.AllText));
        Assert.Empty(Matterhorn.Faults(file));
    }

    [Fact]
    public void Without_a_change_there_is_no_strip() => Assert.DoesNotContain(TaggedText.Read(Make(Before, Before)).SelfAndBelow, node => node.Name is "TR" or "H2");

    [Fact]
    public void The_same_versions_give_the_same_bytes_and_others_do_not()
    {
        Assert.Equal(Make(Before, After), Make(Before, After));
        Assert.NotEqual(Make(Before, After), Make(After, Before));
    }

    /// <summary>Pasted over, the strip hides the printed row: it is as wide, and as high or higher.</summary>
    [Fact]
    public void A_strip_is_as_large_as_the_row_on_the_sheet()
    {
        var sheet = Rows(Printable.Plan(Piece.Of(After), First, Paper.A4, Wording.English)).Single(row => row.Text.StartsWith("3left ", StringComparison.Ordinal));
        var strip = Rows(CorrectionSlip.Plan(Piece.Of(Before), Piece.Of(After), (First, Second), Paper.A4, Wording.English)).Single(row => row.Text.StartsWith("3left ", StringComparison.Ordinal));
        Assert.Equal(sheet.Width, strip.Width, 0.1);
        Assert.Equal(sheet.Text, strip.Text);
    }

    private static IEnumerable<(string Text, double Width)> Rows(PrintPlan plan) =>
        from item in plan.Pages.SelectMany(page => page.Items)
        let row = item.Tag?.Path.FirstOrDefault(tag => tag.Kind == TagKind.TableRow)
        where row is not null && item.Mark is TextMark
        group item by row into marks
        let texts = marks.Select(item => (TextMark)item.Mark).ToList()
        select (string.Concat(texts.Select(text => text.Piece.Text)), texts.Max(text => text.X + text.Piece.Width(text.Style)) - texts.Min(text => text.X));

    private static byte[] Make(PatternDocument before, PatternDocument after) =>
        CorrectionSlip.Make(Piece.Of(before), Piece.Of(after), (First, Second), Paper.A4, Wording.English);
}
