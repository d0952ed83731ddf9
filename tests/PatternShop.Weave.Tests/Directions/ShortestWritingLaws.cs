using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class ShortestWritingLaws
{
    // A few runs, twice or more, and others, all of it twice or more, with ends cut off.
    private static readonly Gen<int[]> Nested =
        from inner in Gen.Int[1, 2].Array[2]
        from times in Gen.Int[2, 3]
        from other in Gen.Int[1, 3].Array[0, 3]
        from again in Gen.Int[2, 4]
        from cut in Gen.Int[0, 3]
        select Enumerable.Repeat(Enumerable.Repeat(inner, times).SelectMany(all => all).Concat(other), again).SelectMany(all => all).Skip(cut).ToArray();

    private static readonly Gen<(Sequence<Run> Runs, int MotifEnds)> SmallRows = RowsOf(14);

    // Long rows whose parts repeat at two levels, with a run changed here and there.
    private static readonly Gen<(Sequence<Run> Runs, int MotifEnds)> LongRows =
        from parts in Gen.OneOf(Nested, Gen.Int[1, 2].Array[1, 8], Gen.Int[1, 3].Array[1, 20]).Array[1, 4]
        from times in Gen.Int[1, 4].Array[4]
        from again in Gen.Int[1, 3]
        from changed in Gen.Int[-40, 100]
        from most in Gen.Int[10, 110]
        from motif in Gen.Int[2, 30]
        let counts = Enumerable.Repeat(parts.Zip(times).SelectMany(part => Enumerable.Repeat(part.First, part.Second).SelectMany(all => all)), again)
            .SelectMany(all => all).Take(most).Select((count, i) => i == changed ? 4 : count)
        select (counts.Select((count, i) => new Run(i % 2 == 0 ? Stroke.Over : Stroke.Under, count)).ToSequence(), motif);

    [Fact]
    public void Writing_out_gives_exactly_the_row_and_is_never_longer_than_plain() => RowsOf(60).Sample(
        row =>
        {
            var writing = ShortestWriting.Of(row.Runs, row.MotifEnds);
            Assert.Equal(row.Runs, writing.WriteOut());
            Assert.True(writing.Length <= row.Runs.Count);
        },
        iter: Effort.Of(2_000, 100_000));

    [Fact]
    public void Writings_of_whole_pieces_write_out_to_their_rows() => Law.OfDocuments(document => Assert.All(
        Piece.Of(document).Readings,
        reading =>
        {
            Assert.Equal(reading.Runs, reading.Writing.WriteOut());
            Assert.Equal(ShortestWriting.Of(reading.Runs, document.Motif.Columns), reading.Writing);
        }));

    [Fact]
    public void No_writing_is_shorter_and_of_the_shortest_it_has_the_most_brackets_of_one_motif()
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var cases = 0;
        SmallRows.SampleFixed(
            row =>
            {
                Interlocked.Increment(ref cases);
                var writing = ShortestWriting.Of(row.Runs, row.MotifEnds);
                var shortest = AllWritings.AssertBest(writing, row.Runs, row.MotifEnds);
                Count(met, "bracket", writing.Depth == 1);
                Count(met, "bracket in a bracket", writing.Depth == 2);
                Count(met, "tie", shortest.Count > 1);
                Count(met, "tie that the motif decides", shortest.Select(other => AllWritings.MotifBrackets(other, row.MotifEnds)).Distinct().Count() > 1);
            },
            Effort.Of(1_000, 50_000));
        Law.AssertShares(["bracket", "bracket in a bracket", "tie", "tie that the motif decides"], met, cases);
    }

    // Every row of runs of one or two ends that begins over. The shortest row with a bracket in a bracket that saves has twelve runs.
    [Fact]
    public void No_short_row_has_a_shorter_writing() => Assert.All(
        Enumerable.Range(1, Effort.Of(10, 13)).SelectMany(runs => Enumerable.Range(0, 1 << runs).Select(bits => (runs, bits))),
        row =>
        {
            var runs = Enumerable.Range(0, row.runs).Select(i => new Run(i % 2 == 0 ? Stroke.Over : Stroke.Under, 1 + ((row.bits >> i) & 1))).ToSequence();
            AllWritings.AssertBest(ShortestWriting.Of(runs, 3), runs, 3);
        });

    // Long rows are held against all periods and times at both levels, without anything left out for speed.
    [Fact]
    public void Long_rows_are_written_as_the_slow_way_writes_them()
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var cases = 0;
        LongRows.SampleFixed(
            row =>
            {
                Interlocked.Increment(ref cases);
                var writing = ShortestWriting.Of(row.Runs, row.MotifEnds);
                Assert.Equal(row.Runs, writing.WriteOut());
                Assert.Equal(SlowWriting.Cost(row.Runs, row.MotifEnds, 2), AllWritings.CostOf(writing, row.MotifEnds));
                var flat = ShortestWriting.Of(row.Runs, row.MotifEnds, levels: 1);
                Assert.Equal(row.Runs, flat.WriteOut());
                Assert.Equal(SlowWriting.Cost(row.Runs, row.MotifEnds, 1), AllWritings.CostOf(flat, row.MotifEnds));
                Assert.InRange(flat.Depth, 0, 1);
                Count(met, "bracket in a bracket", writing.Depth == 2);
                Count(met, "more than 64 runs", row.Runs.Count > 64);
            },
            Effort.Of(400, 30_000));
        Law.AssertShares(["bracket in a bracket", "more than 64 runs"], met, cases);
    }

    [Fact]
    public void A_longer_writing_another_row_and_a_tie_decided_otherwise_would_be_seen()
    {
        var runs = Parse("o1u1o1u1o2u1o2");
        AllWritings.AssertBest(ShortestWriting.Of(runs, 3), runs, 3);
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AllWritings.AssertBest(new Writing(runs.Select(WritingItem (run) => new RunItem(run)).ToSequence()), runs, 3));
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AllWritings.AssertBest(ShortestWriting.Of(Parse("o1u1o1u1o2u1o1"), 3), runs, 3));
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AllWritings.AssertBest(ShortestWriting.Of(runs, 2), runs, 3));
        var nested = Parse("o1u1o1u1o2u2o1u1o1u1o2u2");
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AllWritings.AssertBest(ShortestWriting.Of(nested, 4, levels: 1), nested, 4));
    }

    [Theory]
    [InlineData(4, "o1u1", "o1u1")]
    [InlineData(4, "o1u1o1", "o1u1o1")]
    [InlineData(4, "o1u1o1u1", "[o1u1]×2")]
    [InlineData(8, "u1o1u1o1u1o1u1o1u1", "[u1o1]×4u1")]
    [InlineData(10, "o1u1o2u2o1u2o2u1o2u2o1u2o2u1o2u2o1u2o2u1o1", "o1[u1o2u2o1u2o2]×3u1o1")]
    [InlineData(4, "o2u2o2u2o2u2", "[o2u2]×3")]
    [InlineData(4, "u1o3u1o3u1o3", "[u1o3]×3")]
    [InlineData(3, "o1u2o3u4", "o1u2o3u4")]
    [InlineData(8, "o1u1o1u1o2u2o1u1o1u1o2u2", "[[o1u1]×2o2u2]×2")]
    [InlineData(8, "o1u1o1u1o1u1o2u2o1u1o1u1o1u1o2u2o1u1", "[[o1u1]×3o2u2]×2o1u1")]
    public void Known_rows_are_written(int motifEnds, string runs, string writing) =>
        Assert.Equal(writing, Charts.Short(ShortestWriting.Of(Parse(runs), motifEnds)));

    [Fact]
    public void Rows_that_are_no_rows_are_refused()
    {
        Assert.Throws<ArgumentException>(() => ShortestWriting.Of(Parse("o1o1"), 1));
        Assert.Throws<ArgumentException>(() => ShortestWriting.Of(Enumerable.Range(0, ShortestWriting.MostRuns + 1).Select(i => new Run((Stroke)(i % 2), 1)).ToSequence(), 1));
    }

    // Both writings take six items: the brackets share the second under 1.
    [Theory]
    [InlineData(2, "[o1u1]×2o2u1o2")]
    [InlineData(3, "o1u1o1[u1o2]×2")]
    [InlineData(9, "[o1u1]×2o2u1o2")]
    public void A_tie_goes_to_the_bracket_that_is_one_motif_then_to_the_earliest(int motifEnds, string writing) =>
        Assert.Equal(writing, Charts.Short(ShortestWriting.Of(Parse("o1u1o1u1o2u1o2"), motifEnds)));

    // Any runs, a few runs again and again, and two brackets that share a run, so that only one of them can be written.
    private static Gen<(Sequence<Run> Runs, int MotifEnds)> RowsOf(int most) =>
        from counts in Gen.OneOf(
            Gen.Int[1, 2].Array[1, most],
            Gen.Int[1, 3].Array[1, 4].Select(few => Enumerable.Repeat(few, most).SelectMany(all => all).Take(most).ToArray()),
            Nested.Select(row => row.Take(most).ToArray()),
            Gen.Int[1, 3].Array[4].SelectMany(x => Gen.Int[4, 5].Array[0, 2], (x, tail) => (int[])[x[0], x[1], x[0], x[1], x[2], x[3], x[0], x[1], x[0], x[1], x[2], x[3], .. tail]).Select(row => row.Take(most).ToArray()),
            Gen.Int[1, 3].Array[3].SelectMany(x => Gen.Int[4, 5].Array[0, 2], (x, tail) => (int[])[x[0], x[1], x[0], x[1], x[2], x[1], x[2], .. tail]))
        from first in Gen.Bool
        from motif in Gen.Int[2, 5]
        select (counts.Select((count, i) => new Run(first == (i % 2 == 0) ? Stroke.Over : Stroke.Under, count)).ToSequence(), motif);

    private static void Count(ConcurrentDictionary<string, int> met, string kind, bool belongs)
    {
        if (belongs)
        {
            met.AddOrUpdate(kind, 1, (_, count) => count + 1);
        }
    }

    private static Sequence<Run> Parse(string text) => Enumerable.Range(0, text.Length / 2)
        .Select(i => new Run(text[2 * i] == 'o' ? Stroke.Over : Stroke.Under, text[(2 * i) + 1] - '0'))
        .ToSequence();
}
