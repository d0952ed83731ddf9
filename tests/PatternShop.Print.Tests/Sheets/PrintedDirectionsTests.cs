using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>What is printed is what the definitions say, read back with another library and held against another program.</summary>
public sealed class PrintedDirectionsTests
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

    [Fact]
    public void Generated_pieces_are_printed_as_the_definitions_say() => DocumentGen.Documents.Sample(
        document => Assert.Empty(PrintedRows.Differences(PrintedRows.Of(Samples.Print(document)), document)),
        iter: Effort.Of(40, 1_000));

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

    /// <summary>By a second reader, without the structure: number, side and directions of each row, in order, white space collapsed.</summary>
    [Fact]
    public void Another_reader_finds_every_row_of_generated_pieces_in_order() => DocumentGen.Documents.Sample(
        document =>
        {
            var (said, code) = OutsideTool.Run("PATTERNSHOP_PDFTOTEXT", "pdftotext", Samples.Print(document), "-raw", "FILE", "-");
            Assert.Equal(0, code);
            var text = string.Join(' ', said.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
            var at = 0;
            foreach (var row in PrintedRows.Of(Samples.Print(document)))
            {
                var line = $"{row.Number:#,0} {row.Starts.Trim()} {row.Directions}";
                at = text.IndexOf(line, at, StringComparison.Ordinal);
                Assert.True(at >= 0, line);
            }
        },
        iter: Effort.Of(40, 200));

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
    public void One_other_cell_in_any_piece_is_named_wherever_it_is_woven() => Gen.Select(DocumentGen.Documents, Gen.Int[0, 10_000], Gen.Int[0, 10_000]).Sample(
        (document, r, c) =>
        {
            var (row, end) = (r % document.Motif.Rows, c % document.Motif.Columns);
            var other = document with { Motif = document.Motif.With(row, end, !document.Motif[row, end]) };
            var printed = PrintedRows.Of(Samples.Print(other));
            var named = PrintedRows.Differences(printed, document);
            var expected = printed.Select(p => p.Number).SelectMany(number => RunsAt(document, number, row, end)).ToHashSet();
            Assert.Equal(expected, named.ToHashSet());
        },
        iter: Effort.Of(20, 500));

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
}
