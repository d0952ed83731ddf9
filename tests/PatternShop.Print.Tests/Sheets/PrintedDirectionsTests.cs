using System.Text.RegularExpressions;
using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>What is printed is what the definitions say, read back with another library and held against another program.</summary>
public sealed partial class PrintedDirectionsTests
{
    public static TheoryData<string> SampleNames { get; } = new(Samples.Names);

    [Theory]
    [MemberData(nameof(SampleNames))]
    public void A_sample_is_printed_as_the_definitions_say(string name)
    {
        Assert.Empty(PrintedRows.Differences(PrintedRows.Of(Samples.Print(Samples.All[name])), Samples.All[name]));
        Assert.Empty(PrintedRows.Differences(PrintedRows.Of(Samples.Print(Samples.All[name], Paper.Letter)), Samples.All[name]));
    }

    [Fact]
    public void A_chart_over_several_sheets_is_printed_as_the_definitions_say() =>
        Assert.Empty(PrintedRows.Differences(PrintedRows.Of(Samples.Print(Samples.Large)), Samples.Large));

    /// <summary>
    /// Read along the structure with one library, and as it stands on the page with another program: number, side and directions of each row,
    /// in order, white space collapsed, and no other directions between the headings.
    /// </summary>
    [Fact]
    public void Generated_pieces_are_printed_as_the_definitions_say() => DocumentGen.Documents.Sample(BothReadersAgree, iter: Effort.Of(40, 1_000));

    /// <summary>From 3 × 2 to 400 × 600 cells without order: 200 of them in full, of which the largest have fewer.</summary>
    [Fact]
    public void Pieces_of_every_size_are_printed_as_the_definitions_say()
    {
        (int Ends, int Rows, int Count)[] sizes = Effort.IsFull
            ? [(3, 2, 40), (12, 9, 40), (23, 22, 40), (40, 24, 40), (60, 80, 20), (100, 100, 10), (150, 300, 6), (400, 600, 4)]
            : [(3, 2, 2), (12, 9, 2), (23, 22, 2), (60, 80, 1)];
        foreach (var (ends, rows, count) in sizes)
        {
            Gen.Bool.Array[ends * rows].Sample(
                cells => BothReadersAgree(Samples.Large with { Motif = BitGrid.Create(rows, ends, (row, end) => cells[(row * ends) + end]), Rows = new RowPlan([new Weft(Side.Right)], Stroke.Under, [new ChartRows(1, rows, 1)]) }),
                iter: count,
                threads: 1);
        }
    }

    private static void BothReadersAgree(PatternDocument document)
    {
        var plan = Printable.Plan(Piece.Of(document), VersionLine.NotIssued, Paper.A4, Wording.English);
        var file = Painter.Paint(plan);
        var rows = PrintedRows.Of(file);
        Assert.Empty(PrintedRows.Differences(rows, document));
        var (said, code) = OutsideTool.Run("PATTERNSHOP_PDFTOTEXT", "pdftotext", file, "-raw", "FILE", "-");
        Assert.Equal(0, code);
        var pages = said.Split('\f').Select((page, i) => i < plan.Pages.Count ? WithoutDecoration(page, plan.Pages[i]) : page);
        Assert.Null(FirstMissing(string.Join('\f', pages), rows));
    }

    // A row may be broken at the end of a column, and the heads stand over the next one again: decoration, which the other program cannot tell from the rest.
    private static string WithoutDecoration(string said, PagePlan page)
    {
        var text = Collapsed(said);
        var run = new List<string>();
        foreach (var item in page.Items.Append(new Placed(new TextMark(0, 0, new TextPiece("", Typeface.Regular), new TextStyle(1)), new Tag(TagKind.Paragraph))).Where(item => item.Mark is TextMark))
        {
            if (item.Tag is null && ((TextMark)item.Mark).Piece.Text.Trim() is { Length: > 0 } words)
            {
                run.Add(words);
            }
            else if (item.Tag is not null && run.Count > 0)
            {
                text = Collapsed(text.Replace(string.Join(' ', run), "", StringComparison.Ordinal));
                run.Clear();
            }
        }

        return text;
    }

    private static string Collapsed(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    // What the other program misses, or reads beside what it should. A row may be broken at the end of a sheet; the next one begins with its foot and the heads of columns.
    private static string? FirstMissing(string said, IReadOnlyList<PrintedRow> rows)
    {
        var pages = said.Split('\f').Select(Collapsed).ToList();
        var title = $" {Wording.English.RowsTitle} ";
        var on = pages.FindIndex(page => page.Contains(title, StringComparison.Ordinal));
        var at = on < 0 ? 0 : pages[on].IndexOf(title, StringComparison.Ordinal);
        foreach (var line in rows.Select(row => $"{row.Number:#,0} {row.Starts.Trim()} {row.Directions}"))
        {
            for (var left = line; left.Length > 0;)
            {
                if (on < 0 || on >= pages.Count)
                {
                    return line;
                }

                var (found, length) = Find(pages[on], at, left);
                if (OtherDirections().IsMatch(pages[on][at..found]))
                {
                    return line;
                }

                left = left[length..].TrimStart();
                (on, at) = left.Length > 0 ? (on + 1, 0) : (on, found + length);
            }
        }

        return null;
    }

    // Where a line stands, or as many of its words as there are at the end of a sheet.
    private static (int Found, int Length) Find(string page, int at, string line)
    {
        if (page.IndexOf(line, at, StringComparison.Ordinal) is var found && found >= 0)
        {
            return (found, line.Length);
        }

        for (var end = line.LastIndexOf(' '); end > 0; end = line.LastIndexOf(' ', end - 1))
        {
            if (page.Length - end >= at && page.EndsWith(line[..end], StringComparison.Ordinal))
            {
                return (page.Length - end, end);
            }
        }

        return (page.Length, 0);
    }

    [Fact]
    public void A_row_that_the_other_program_misses_or_adds_would_be_seen()
    {
        PrintedRow[] rows = [new(1, "left ", "over 1, under 1", []), new(2, "right ", "under 2", [])];
        Assert.Null(FirstMissing("Lengths\nRows\nrow from\n1 left over 1,\nunder 1\n2 right under 2", rows));
        Assert.NotNull(FirstMissing("Lengths Rows 1 left over 1, under 1", rows));
        Assert.NotNull(FirstMissing("Lengths Rows 1 left over 1, under 1 1 left over 2 2 right under 2", rows));
        Assert.NotNull(FirstMissing("Lengths Rows 2 right under 2 1 left over 1, under 1", rows));
        Assert.Null(FirstMissing("Lengths Rows 1 left over 1,\fPage 2 row from under 1 2 right under 2", rows));
        Assert.NotNull(FirstMissing("Lengths Rows 1 left over 1,\fPage 2 row from over 2, under 1 2 right under 2", rows));
    }

    /// <summary>40 ends by 24 rows without order: one page, in the short form, and the words in full for those who hear it.</summary>
    [Fact]
    public void What_needs_the_short_form_is_printed_as_the_definitions_say()
    {
        var document = Samples.Large with
        {
            Motif = BitGrid.Create(24, 40, (row, end) => ((row * 29) + (end * end * 7) + (row * end * 3) + (end / 3)) % 11 < 5),
            Rows = new RowPlan([new Weft(Side.Right)], Stroke.Under, [new ChartRows(1, 24, 1)]),
        };
        BothReadersAgree(document);
        var file = Samples.Print(document);
        var rows = PrintedRows.Of(file);
        Assert.Equal(24, rows.Count);
        Assert.All(rows, row => Assert.True(PrintedRows.IsShort(row.Directions)));
        var nodes = TaggedText.Read(file).SelfAndBelow.ToList();
        Assert.Contains(nodes, node => node.AllText == "o = over, u = under");
        var heard = nodes.Where(node => node.Name == "P" && PrintedRows.IsShort(node.AllText)).Select(node => node.Value("ActualText")).ToList();
        Assert.Equal(rows.Select(row => PrintedRows.WriteOut(row.Directions)), heard.Select(words => PrintedRows.WriteOut(words!)));
        Assert.DoesNotContain(heard, words => PrintedRows.IsShort(words!));
        Assert.Empty(Matterhorn.Faults(file));
        Assert.Equal([false, true, true, false, true, true, false, true, true], PrintedRows.WriteOut("u1 [o2 u1] × 2 o2"));
    }

    [Fact]
    public void The_makers_words_stand_below_their_row_and_say_whose_they_are()
    {
        var document = Samples.Diamond with
        {
            RowWords = [new RowWords(2, "Beat gently.\nMind the left edge.")],
            Videos = [new Video("https://films.example/turn", "The turn", 4), new Video("https://films.example/all", "All of it", null)],
            Photos = [new Photo(new string('a', 64), "The sample", 2)],
        };
        var file = Samples.Print(document);
        var rows = PrintedRows.Of(file);
        Assert.Empty(PrintedRows.Differences(rows, document));
        Assert.Equal(["Maker's note: Beat gently.", "Mind the left edge."], rows[1].Own);
        Assert.Equal(["Maker's video: The turn: https://films.example/turn"], rows[3].Own);
        Assert.All(rows.Where(row => row.Number is not (2 or 4)), row => Assert.Empty(row.Own));
        var text = TaggedText.Read(file).AllText;
        Assert.Contains("All of it: https://films.example/all", text, StringComparison.Ordinal);
        Assert.DoesNotContain("The sample", text, StringComparison.Ordinal);
    }

    [Fact]
    public void One_other_cell_is_named_by_row_and_run()
    {
        // row 3 starts at the left: under 1, over 2, under 2, over 1; the other cell is the second of its third run
        var document = Charts.Document("x.x.x. / .x.x.x / .xx..x / x.x.x.");
        var other = document with { Motif = document.Motif.With(2, 4, true) };
        Assert.Empty(PrintedRows.Differences(PrintedRows.Of(Samples.Print(document)), document));
        Assert.Equal([new RowDifference(3, 3)], PrintedRows.Differences(PrintedRows.Of(Samples.Print(other)), document));
    }

    [Fact]
    public void One_other_cell_in_any_piece_is_named_wherever_it_is_woven()
    {
        var (woven, all) = (0, Effort.Of(20, 500));
        Gen.Select(DocumentGen.Documents, Gen.Int[0, 10_000], Gen.Int[0, 10_000]).SampleFixed(
            made =>
            {
                var (document, r, c) = made;
                var (row, end) = (r % document.Motif.Rows, c % document.Motif.Columns);
                var other = document with { Motif = document.Motif.With(row, end, !document.Motif[row, end]) };
                var printed = PrintedRows.Of(Samples.Print(other));
                var named = PrintedRows.Differences(printed, document);
                var expected = printed.Select(p => p.Number).SelectMany(number => RunsAt(document, number, row, end)).ToHashSet();
                Assert.Equal(expected, named.ToHashSet());
                Interlocked.Add(ref woven, Math.Sign(expected.Count));
            },
            all);
        Assert.True(woven * 4 >= all, $"{woven} of {all} cells were woven");
    }

    private static IEnumerable<RowDifference> RunsAt(PatternDocument document, int number, int motifRow, int motifEnd)
    {
        var woven = Oracle.Rows(document)[number - 1];
        if (woven.ChartRow != motifRow + 1)
        {
            yield break;
        }

        var floating = document.Width.Floating is null ? 0 : 1;
        for (var column = floating; column < woven.Over.Count - floating; column++)
        {
            if ((column - floating + document.Width.Offset) % document.Motif.Columns == motifEnd)
            {
                var met = woven.From == Side.Left ? column : woven.Over.Count - 1 - column;
                yield return new RowDifference(number, RunAt(woven, met));
            }
        }
    }

    private static int RunAt(OracleRow row, int met)
    {
        var run = 0;
        for (var ends = row.Runs[0].Count; ends <= met; ends += row.Runs[++run].Count)
        {
        }

        return run + 1;
    }

    [GeneratedRegex("\\b((over|under) |[ou])[0-9]", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex OtherDirections();
}
