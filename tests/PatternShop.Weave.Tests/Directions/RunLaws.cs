using PatternShop.Tests.Shared;
using CsCheck;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class RunLaws
{
    // Wide rows of long runs, so that runs end at, before and after the seams between words.
    private static readonly Gen<BitGrid> Rows =
        from counts in Gen.OneOf(Gen.Int[1, 4], Gen.Int[1, 130]).Array[1, 12]
        from first in Gen.Bool
        let cells = counts.SelectMany((count, i) => Enumerable.Repeat(first == (i % 2 == 0), count)).ToList()
        select BitGrid.Create(1, cells.Count, (_, column) => cells[column]);

    [Fact]
    public void Runs_written_out_are_the_row_in_the_direction_of_travel() => Rows.Sample(
        row =>
        {
            var cells = Enumerable.Range(0, row.Columns).Select(column => row[0, column]).ToList();
            Assert.Equal(cells, Cells(Runs.Of(row, 0, Side.Left)));
            Assert.Equal(Enumerable.Reverse(cells), Cells(Runs.Of(row, 0, Side.Right)));
        },
        iter: Effort.Of(2_000, 100_000));

    [Fact]
    public void Neighbouring_runs_differ_and_none_is_empty() => Rows.Sample(
        row =>
        {
            var runs = Runs.Of(row, 0, Side.Left);
            Assert.All(runs, run => Assert.True(run.Count > 0));
            Assert.All(runs.Zip(runs.Skip(1)), pair => Assert.NotEqual(pair.First.Stroke, pair.Second.Stroke));
        },
        iter: Effort.Of(2_000, 100_000));

    private static IEnumerable<bool> Cells(Sequence<Run> runs) => runs.SelectMany(run => Enumerable.Repeat(run.Stroke == Stroke.Over, run.Count));
}
