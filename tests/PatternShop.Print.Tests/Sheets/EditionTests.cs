using PatternShop.Weave;
using UglyToad.PdfPig;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>The editions: what is larger in large print, what is lighter where ink is spared, and what every sheet carries.</summary>
public sealed class EditionTests
{
    private const double PointsPerMillimetre = 72 / 25.4;
    private const double Exactness = 0.1;
    private static readonly VersionLine Version = new(2, new DateOnly(2026, 11, 24)) { Copy = new Copy("ABCD-1234", "https://weave.example.org/c/ABCD1234"), Maker = "Studio at the mill" };

    public static TheoryData<string> SettingNames { get; } = new(PrintSetting.All.Select(setting => setting.Name));

    public static TheoryData<string> SampleNames { get; } = new(Samples.Names);

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void No_letter_of_large_print_is_smaller_than_18_points_and_no_cell_than_6_35_mm(string name)
    {
        var plan = Printable.Plan(Piece.Of(Samples.All[name]), Version, Paper.A4, Wording.English, PrintSetting.LargePrint);
        Assert.All(Texts(plan), text => Assert.True(text.Style.Points >= 18 - 1e-6, $"{text.Piece.Text}: {text.Style.Points}"));
        Assert.All(Charts(plan), chart => Assert.True(chart.Cell >= 6.35 - 1e-9));
    }

    [Fact]
    public void Smaller_letters_would_be_seen() =>
        Assert.Contains(Texts(Printable.Plan(Piece.Of(Samples.Diamond), Version, Paper.A4, Wording.English)), text => text.Style.Points < 18);

    // 4 mm is the floor for cells, 6.35 mm (a quarter of an inch) the one of large print
    [Fact]
    public void No_cell_of_any_sample_is_under_4_mm() => Assert.All(Samples.All.Values.Append(Samples.Large), document =>
        Assert.All(Charts(Printable.Plan(Piece.Of(document), Version, Paper.Letter, Wording.English)), chart => Assert.True(chart.Cell >= 4)));

    [Fact]
    public void Little_ink_is_less_than_half_the_ink_and_the_same_chart()
    {
        var piece = Piece.Of(Samples.Diamond);
        var (usual, sparing) = (InkOf(PrintSetting.Standard), InkOf(PrintSetting.InkSaving));
        Assert.True(sparing < usual / 2, $"{sparing} of {usual}");
        double InkOf(PrintSetting setting)
        {
            var plan = Printable.Plan(piece, Version, Paper.A4, Wording.English, setting);
            return plan.Pages.SelectMany(page => page.Items).Where(item => item.Tag?.Kind == TagKind.Figure).Select(item => item.Mark).OfType<AreaMark>()
                .Sum(area => (1 - area.Grey) * area.Outlines.Sum(AreaOf));
        }
    }

    public static TheoryData<string> EditionNames { get; } = new(EveryEdition.All.Keys);

    [Theory]
    [MemberData(nameof(EditionNames))]
    public void Every_sheet_has_a_bar_of_100_mm_a_rule_of_4_in_and_boxes_of_its_paper(string name) =>
        AssertMeasures(EveryEdition.All[name](), EveryEdition.PaperOf(name));

    [Fact]
    public void Every_sheet_of_a_long_edition_has_them() => AssertMeasures(Printable.Make(Piece.Of(Samples.Large), Version, Paper.A4, Wording.English), Paper.A4);

    [Fact]
    public void Another_paper_would_be_seen() =>
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertMeasures(EveryEdition.All["slip"](), new Paper("nearly A4", 210.15, 297)));

    private static void AssertMeasures(byte[] file, Paper paper)
    {
        using var pdf = PdfDocument.Open(file);
        Assert.All(pdf.GetPages(), page =>
        {
            Assert.True(Math.Abs(paper.Width - (page.Width / PointsPerMillimetre)) <= Exactness);
            Assert.True(Math.Abs(paper.Height - (page.Height / PointsPerMillimetre)) <= Exactness);
            var widths = page.Paths.Where(path => path.IsStroked).SelectMany(path => path).Select(line => line.GetBoundingRectangle()?.Width / PointsPerMillimetre ?? 0).ToList();
            Assert.Contains(widths, width => Math.Abs(width - 100) <= Exactness);
            Assert.Contains(widths, width => Math.Abs(width - 101.6) <= Exactness);
        });
    }

    [Theory]
    [MemberData(nameof(SettingNames))]
    public void Every_sheet_names_its_version(string name)
    {
        var plan = Printable.Plan(Piece.Of(Samples.Large with { Title = "A long title that goes on and on until it would reach the other edge of any sheet" }), Version, Paper.A4, Wording.English, PrintSetting.All.Single(setting => setting.Name == name));
        Assert.All(plan.Pages, page => Assert.Contains(page.Items.Where(item => item.Tag is null).Select(item => item.Mark).OfType<TextMark>(), text =>
            text.Piece.Text.Contains("Version 2, 24 November 2026", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_test_print_says_so_on_every_sheet_and_no_other_does()
    {
        bool Says(PagePlan page) => page.Items.Any(item => item.Mark is TextMark text && text.Piece.Text.Contains("Test print", StringComparison.Ordinal));
        Assert.All(Printable.Plan(Piece.Of(Samples.Large), VersionLine.Test, Paper.A4, Wording.English).Pages, page => Assert.True(Says(page)));
        Assert.All(Printable.Plan(Piece.Of(Samples.Large), VersionLine.NotIssued, Paper.A4, Wording.English).Pages, page => Assert.False(Says(page)));
    }

    [Fact]
    public void A_licence_line_stands_on_every_sheet_and_free_patterns_have_none()
    {
        const string Line = "For the weavers of the autumn table only";
        bool Says(PagePlan page) => page.Items.Any(item => item.Mark is TextMark text && text.Piece.Text.Contains(Line, StringComparison.Ordinal));
        Assert.All(Printable.Plan(Piece.Of(Samples.Large), Version with { LicenceLine = Line }, Paper.A4, Wording.English).Pages, page => Assert.True(Says(page)));
        Assert.All(Printable.Plan(Piece.Of(Samples.Large), Version, Paper.A4, Wording.English).Pages, page => Assert.False(Says(page)));
    }

    [Theory]
    [InlineData("hazel-diamonds")]
    [InlineData("harbour-lights")]
    [InlineData("rain-on-slate")]
    [InlineData("first-steps")]
    [InlineData("kestrel")]
    [InlineData("kite-weather")]
    [InlineData("kestrel", "Letter")]
    [InlineData("kite-weather", "Letter")]
    public void A_small_piece_is_all_on_its_first_page(string name, string paper = "A4")
    {
        var plan = Printable.Plan(Piece.Of(Samples.All[name]), Version, paper == "A4" ? Paper.A4 : Paper.Letter, Wording.English);
        // every row in full, wherever its lines break
        var first = Letters(string.Concat(plan.Pages[0].Items.Select(item => item.Mark).OfType<TextMark>().Select(text => text.Piece.Text)));
        var piece = Piece.Of(Samples.All[name]);
        Assert.All(piece.PrintedRows(), number => Assert.Contains(Letters(Wording.English.WritingText(piece.Reading(number).Writing)), first, StringComparison.Ordinal));
        Assert.Contains(Wording.English.RowsTitle, first, StringComparison.Ordinal);
        static string Letters(string text) => string.Concat(text.Where(letter => !char.IsWhiteSpace(letter)));
        // written rows that go on repeat the heads of their columns
        Assert.DoesNotContain(plan.Pages.Skip(1).SelectMany(page => page.Items), item =>
            item.Tag?.Chart is not null || (item.Mark is TextMark text && text.Piece.Text.StartsWith(Wording.English.FromColumn, StringComparison.Ordinal)));
    }

    [Fact]
    public void The_window_of_the_cover_is_as_high_as_three_rows_of_the_chart_on_the_same_paper()
    {
        var piece = Piece.Of(Samples.Diamond);
        var cell = Charts(Printable.Plan(piece, Version, Paper.A4, Wording.English)).First().Cell;
        using var pdf = PdfDocument.Open(RowCover.Make(piece, Version, Paper.A4, Wording.English));
        var dashed = pdf.GetPage(1).Paths.Where(path => path.IsStroked && Math.Abs((path.LineWidth / PointsPerMillimetre) - 0.4) < 0.01)
            .SelectMany(path => path).Select(line => line.GetBoundingRectangle()!.Value).Where(box => box.Width > 1 && box.Height < 1e-6).ToList();
        var window = dashed.Select(box => Math.Round(box.Bottom / PointsPerMillimetre, 2)).Distinct().Order().TakeLast(2).ToList();
        Assert.Equal(3 * cell, window[1] - window[0], Exactness);
    }

    private static IEnumerable<TextMark> Texts(PrintPlan plan) => plan.Pages.SelectMany(page => page.Items).Select(item => item.Mark).OfType<TextMark>();

    private static IEnumerable<ChartLayout> Charts(PrintPlan plan) => plan.Pages.SelectMany(page => page.Items).Select(item => item.Tag?.Chart).OfType<ChartLayout>().Distinct();

    // the shoelace formula
    private static double AreaOf(Sequence<Spot> outline) =>
        Math.Abs(outline.Zip([.. outline.Skip(1), outline[0]], (a, b) => (a.X * b.Y) - (b.X * a.Y)).Sum()) / 2;
}
