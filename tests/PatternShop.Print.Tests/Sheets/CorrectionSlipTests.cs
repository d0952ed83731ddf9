using System.Globalization;
using CsCheck;
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

    /// <summary>
    /// Pasted down to its marks, or whole where it has none, a strip hides the printed row and nothing of the next: the heights are read from what is
    /// drawn, the row on the old sheet between its rules and the strip by its frame.
    /// </summary>
    [Fact]
    public void A_strip_covers_the_row_on_the_sheet_and_no_more()
    {
        var (held, corrections) = (0, Effort.Of(60, 2_000));
        Gen.Select(DocumentGen.Of(16, 30), Gen.Int[0, 10_000], Gen.Int[1, 6], Gen.Int[1, 9]).SampleFixed(
            made =>
            {
                var (document, at, every, from) = made;
                var row = at % document.Motif.Rows;
                var before = document with { Language = "en", RowWords = [], Videos = [] };
                // runs broken up are longer to write, runs joined are shorter
                var after = before with
                {
                    Motif = BitGrid.Create(before.Motif.Rows, before.Motif.Columns, (r, end) => r == row && (end + from) % every != 0 ? end * from % 2 == 0 : before.Motif[r, end]),
                };
                var (old, @new) = (Piece.Of(before), Piece.Of(after));
                var sheet = HeightsOnSheet(Printable.Plan(old, First, Paper.A4, Wording.English));
                var strips = Strips(CorrectionSlip.Plan(old, @new, (First, Second), Paper.A4, Wording.English)).ToLookup(strip => strip.Number);
                foreach (var change in PieceDifference.Between(old, @new).Changes().Where(change => change.Old.Count > 0 && change.New.Count > 0))
                {
                    foreach (var (index, number) in change.New.Index())
                    {
                        var printed = old.PrintedFor(change.Old[index]);
                        // a row that is parted between two pages or columns has no one height
                        if (sheet.TryGetValue(printed, out var height))
                        {
                            Interlocked.Increment(ref held);
                            var strip = Assert.Single(strips[@new.PrintedFor(number)]);
                            Assert.True(strip.Pasted <= height.Row + 0.05, $"row {number}: {strip.Pasted} over {height.Row}");
                            // what stood at several places has a strip for the lowest of them
                            var places = change.New.Index().Where(other => @new.PrintedFor(other.Item) == @new.PrintedFor(number)).Select(other => old.PrintedFor(change.Old[other.Index])).Distinct();
                            Assert.True(strip.Pasted >= height.Words - 0.05 || places.Count() > 1, $"row {number}: {strip.Pasted} leaves some of {height.Words} in sight");
                        }
                    }
                }
            },
            corrections);
        Assert.True(held >= corrections, $"{held} strips were held against rows");
    }

    /// <summary>Where even the smallest letters and the short form are higher than the row was, marks say down to where the strip is pasted.</summary>
    [Fact]
    public void A_row_that_became_much_longer_is_pasted_only_down_to_its_marks()
    {
        var before = Charts.Document("x") with
        {
            Motif = BitGrid.Create(4, 150, (row, end) => row != 2 && (row + end) % 2 == 0),
            Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, 4, 1)]),
        };
        var after = before with { Motif = BitGrid.Create(4, 150, (row, end) => row == 2 ? end * end * end % 101 % 2 == 0 : before.Motif[row, end]) };
        var height = HeightsOnSheet(Printable.Plan(Piece.Of(before), First, Paper.A4, Wording.English))[3].Row;
        var strip = Assert.Single(Strips(CorrectionSlip.Plan(Piece.Of(before), Piece.Of(after), (First, Second), Paper.A4, Wording.English)));
        Assert.True(strip.IsShort);
        Assert.True(strip.Height > height + 1);
        Assert.Equal(height, strip.Pasted, 0.05);
        var text = TaggedText.Read(Make(before, after)).AllText;
        Assert.Contains(Wording.English.SlipLonger, text, StringComparison.Ordinal);
        Assert.Contains(Wording.English.SlipInShort, text, StringComparison.Ordinal);
        Assert.Empty(Matterhorn.Faults(Make(before, after)));
    }

    // From the rule above a row to the one below it, and from the top of its first line, by row number.
    private static Dictionary<int, (double Row, double Words)> HeightsOnSheet(PrintPlan plan)
    {
        var heights = new Dictionary<int, (double, double)>();
        // tables for shafts are numbered too, after the rows
        var seen = new HashSet<int>();
        foreach (var items in plan.Pages.Select(page => page.Items.ToList()))
        {
            for (var i = 0; i < items.Count; i++)
            {
                if (RowNumber(items[i]) is not { } number || !seen.Add(number))
                {
                    continue;
                }

                var row = RowOf(items[i]);
                var last = items.FindLastIndex(item => RowOf(item) == row);
                var (above, below) = (items.FindLastIndex(i, item => item is { Tag: null, Mark: StrokeMark }), items.FindIndex(last, item => item is { Tag: null, Mark: StrokeMark }));
                if (above >= 0 && below >= 0 && items[above].Mark.X == items[below].Mark.X && items[above].Mark.Y < items[below].Mark.Y)
                {
                    heights.TryAdd(number, (items[below].Mark.Y - items[above].Mark.Y, items[below].Mark.Y - items[i].Mark.Y + ((TextMark)items[i].Mark).Style.Baseline));
                }
            }
        }

        return heights;
    }

    private static IEnumerable<(int Number, double Height, double Pasted, bool IsShort)> Strips(PrintPlan plan)
    {
        foreach (var items in plan.Pages.Select(page => page.Items.ToList()))
        {
            for (var i = 0; i < items.Count; i++)
            {
                if (RowNumber(items[i]) is not { } number)
                {
                    continue;
                }

                var row = RowOf(items[i]);
                var frame = (StrokeMark)items.Skip(i).First(item => item is { Tag: null, Mark: StrokeMark { Lines.Count: > 4 } }).Mark;
                var next = items.SkipWhile(item => item.Mark != frame).Skip(1).FirstOrDefault();
                var marked = next is { Tag: null, Mark: StrokeMark { Lines.Count: 2 } marks } ? marks.Lines[0][0].Y : (double?)null;
                var text = string.Concat(items.Where(item => RowOf(item) == row).Select(item => item.Mark).OfType<TextMark>().Select(mark => mark.Piece.Text));
                var bottom = frame.Extent.Bottom - (frame.Width / 2);
                yield return (number, bottom, marked ?? bottom, PrintedRows.IsShort(text));
            }
        }
    }

    private static int? RowNumber(Placed item) =>
        item is { Tag: { Kind: TagKind.HeaderCell, Scope: HeaderScope.Row }, Mark: TextMark mark } && item.Tag.Parent?.Kind == TagKind.TableRow
            && int.TryParse(mark.Piece.Text, NumberStyles.AllowThousands, CultureInfo.InvariantCulture, out var number) ? number : null;

    private static Tag? RowOf(Placed item) => item.Tag?.Path.FirstOrDefault(tag => tag.Kind == TagKind.TableRow);

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
