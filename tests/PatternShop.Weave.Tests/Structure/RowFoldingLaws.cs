using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class RowFoldingLaws
{
    private static readonly Gen<SimpleStep> Rows = Gen.Frequency(
        (8, Gen.Select(Gen.Int[1, 3], Gen.Frequency((6, Gen.Const(1)), (1, Gen.Const(2))), (row, weft) => (SimpleStep)new ChartRows(row, row, weft))),
        (2, Gen.Const((SimpleStep)new PlainRows(1, 1))),
        (1, Gen.Const((SimpleStep)new EdgeStitch("twine", StitchYarn.Own, 1, Side.Left, 1))));

    [Fact]
    public void Unrolled_again_it_is_the_same_list() => Gen.OneOf(Lists(20), Repeated).Sample(
        list =>
        {
            var folded = RowFolding.Fold(list);
            Assert.Equal(list, RowFolding.Unroll(folded));
            Assert.True(RowFolding.Items(folded) <= RowFolding.Items(Greedy(list)));
        },
        iter: Effort.Of(2_000, 50_000));

    [Fact]
    public void It_has_as_few_items_as_any_way_to_write_it()
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var cases = 0;
        Gen.OneOf(Lists(10), Repeated.Where(list => list.Count <= 14)).SampleFixed(
            list =>
            {
                Interlocked.Increment(ref cases);
                var folded = RowFolding.Fold(list);
                Assert.Equal(Fewest(list), RowFolding.Items(folded));
                met.AddOrUpdate(folded.Any(step => step is Repeat) ? "repeat" : "no repeat", 1, (_, count) => count + 1);
                met.AddOrUpdate(RowFolding.Items(folded) < RowFolding.Items(Greedy(list)) ? "better than greedy" : "as greedy", 1, (_, count) => count + 1);
            },
            Effort.Of(2_000, 20_000));
        Law.AssertShares(["repeat", "no repeat", "as greedy"], met, cases);
        Assert.NotEqual(0, met.GetValueOrDefault("better than greedy"));
    }

    [Fact]
    public void A_row_plan_weaves_the_same_once_it_is_folded() => Law.OfDocuments(
        document =>
        {
            var folded = document with { Rows = document.Rows with { Steps = RowFolding.Fold(document.Rows.Steps) } };
            Assert.True(RowFolding.Items(folded.Rows.Steps) <= RowFolding.Items(document.Rows.Steps));
            var (piece, again) = (Piece.Of(document), Piece.Of(folded));
            Assert.Equal(piece.Rows.Select(row => row with { Step = 0, Time = null }), again.Rows.Select(row => row with { Step = 0, Time = null }));
            Assert.Equal(piece.Stitches.Select(stitch => stitch with { Step = 0, Time = null }), again.Stitches.Select(stitch => stitch with { Step = 0, Time = null }));
        },
        300,
        10_000);

    /// <summary>R. Elizarov, "Folding", NEERC: 9(A)3(AB)CCD. Written as a row plan it has 8 items; letters stand for rows that do not follow one another.</summary>
    [Fact]
    public void A_published_folding_has_no_fewer_items()
    {
        static SimpleStep Letter(char letter) => new ChartRows(1 + (2 * (letter - 'A')), 1 + (2 * (letter - 'A')), 1);
        var list = "AAAAAAAAAABABABCCD".Select(Letter).ToSequence();
        Sequence<RowStep> published = [new Repeat(9, [Letter('A')]), new Repeat(3, [Letter('A'), Letter('B')]), Letter('C'), Letter('C'), Letter('D')];
        Assert.Equal(list, RowFolding.Unroll(published));
        Assert.Equal(8, RowFolding.Items(published));
        Assert.Equal(8, RowFolding.Items(RowFolding.Fold(list)));
    }

    [Fact]
    public void The_diamond_is_found_in_its_list_of_rows()
    {
        // "Whole pieces" 1: rows 1-10 twice, row 1, one plain row
        var list = Enumerable.Range(0, 21).Select(i => (SimpleStep)new ChartRows((i % 10) + 1, (i % 10) + 1, 1)).Append(new PlainRows(1, 1));
        Assert.Equal([new Repeat(2, [new ChartRows(1, 10, 1)]), new ChartRows(1, 1, 1), new PlainRows(1, 1)], RowFolding.Fold(list));
    }

    [Fact]
    public void Rows_down_and_plain_rows_and_wefts_make_steps_of_their_own()
    {
        Sequence<RowStep> steps = [new ChartRows(1, 4, 1), new ChartRows(3, 1, 1), new PlainRows(3, 1), new ChartRows(2, 3, 2)];
        Assert.Equal(steps, RowFolding.Fold(steps));
        Assert.Empty(RowFolding.Fold([]));
    }

    [Fact]
    public void The_longest_piece_is_folded()
    {
        Sequence<RowStep> once = [new ChartRows(1, 500, 1), new ChartRows(2, 400, 1), new PlainRows(100, 1)];
        var folded = RowFolding.Fold(RowFolding.Unroll([new Repeat(100, [.. once.Cast<SimpleStep>()])]));
        Assert.Equal([new Repeat(100, [.. once.Cast<SimpleStep>()])], folded);
    }

    private static Gen<Sequence<SimpleStep>> Lists(int most) => Rows.Array[0, most].Select(rows => rows.ToSequence());

    private static Gen<Sequence<SimpleStep>> Repeated { get; } =
        from before in Rows.Array[0, 3]
        from once in Rows.Array[1, 5]
        from times in Gen.Int[2, 4]
        from after in Rows.Array[0, 3]
        select (SimpleStep[])[.. before, .. Enumerable.Repeat(once, times).SelectMany(rows => rows), .. after] into list
        select list.ToSequence();

    // From the left always what saves most here and now.
    private static List<RowStep> Greedy(IReadOnlyList<SimpleStep> list)
    {
        var steps = new List<RowStep>();
        for (var at = 0; at < list.Count;)
        {
            var (length, times, saved) = (0, 1, 0);
            for (var tried = 1; at + (2 * tried) <= list.Count; tried++)
            {
                var often = 1;
                while (at + ((often + 1) * tried) <= list.Count && list.Skip(at).Take(tried).SequenceEqual(list.Skip(at + (often * tried)).Take(tried)))
                {
                    often++;
                }

                var saves = Plainly(list, at, at + (tried * often)).Count - Plainly(list, at, at + tried).Count - 1;
                if (often > 1 && saves > saved)
                {
                    (length, times, saved) = (tried, often, saves);
                }
            }

            if (length == 0)
            {
                var step = Plainly(list, at, list.Count)[0];
                steps.Add(step);
                at += step is ChartRows chart ? chart.Count : step is PlainRows plain ? plain.Count : 1;
                continue;
            }

            steps.Add(new Repeat(times, Plainly(list, at, at + length).ToSequence()));
            at += length * times;
        }

        return steps;
    }

    private static List<SimpleStep> Plainly(IReadOnlyList<SimpleStep> list, int first, int end)
    {
        var steps = new List<SimpleStep>();
        for (var at = first; at < end;)
        {
            var length = Enumerable.Range(1, end - at).Last(length => Joined(list, at, length) is not null);
            steps.Add(Joined(list, at, length)!);
            at += length;
        }

        return steps;
    }

    // One step for some rows; null where there is none.
    private static SimpleStep? Joined(IReadOnlyList<SimpleStep> list, int first, int length)
    {
        if (length == 1)
        {
            return list[first];
        }

        var rows = list.Skip(first).Take(length).ToList();
        if (rows.TrueForAll(row => row is PlainRows))
        {
            return new PlainRows(length, 1);
        }

        if (!rows.TrueForAll(row => row is ChartRows))
        {
            return null;
        }

        var charts = rows.Cast<ChartRows>().ToList();
        var stride = charts[1].First - charts[0].First;
        return Math.Abs(stride) == 1 && charts.Index().All(row => row.Item.Weft == charts[0].Weft && row.Item.First == charts[0].First + (row.Index * stride))
            ? new ChartRows(charts[0].First, charts[^1].First, charts[0].Weft)
            : null;
    }

    // Every way to write the list: a step of every length, and a bracket around every stretch that comes back, its inside in every way.
    private static int Fewest(Sequence<SimpleStep> list)
    {
        var inside = new Dictionary<(int, int), int>();
        int Steps(int first, int end)
        {
            if (first == end)
            {
                return 0;
            }

            if (!inside.TryGetValue((first, end), out var fewest))
            {
                fewest = Enumerable.Range(1, end - first).Where(length => Joined(list, first, length) is not null).Min(length => 1 + Steps(first + length, end));
                inside[(first, end)] = fewest;
            }

            return fewest;
        }

        int From(int at)
        {
            if (at == list.Count)
            {
                return 0;
            }

            var fewest = int.MaxValue;
            for (var length = 1; at + length <= list.Count; length++)
            {
                if (Joined(list, at, length) is not null)
                {
                    fewest = Math.Min(fewest, 1 + From(at + length));
                }

                for (var times = 2; at + (times * length) <= list.Count; times++)
                {
                    if (!list.Skip(at).Take(length).SequenceEqual(list.Skip(at + ((times - 1) * length)).Take(length)))
                    {
                        break;
                    }

                    fewest = Math.Min(fewest, 1 + Steps(at, at + length) + From(at + (times * length)));
                }
            }

            return fewest;
        }

        return From(0);
    }
}
