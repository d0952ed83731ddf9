using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class ShortestWritingLaws
{
    private static readonly Gen<(Sequence<Run> Runs, int MotifEnds)> SmallRows = RowsOf(10);

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
        SmallRows.Sample(
            row =>
            {
                Interlocked.Increment(ref cases);
                var writing = ShortestWriting.Of(row.Runs, row.MotifEnds);
                var shortest = AssertBest(writing, row.Runs, row.MotifEnds);
                Count(met, "bracket", writing.Items.Any(item => item is BracketItem));
                Count(met, "tie", shortest.Count > 1);
                Count(met, "tie that the motif decides", shortest.Select(other => MotifBrackets(other, row.MotifEnds)).Distinct().Count() > 1);
            },
            iter: Effort.Of(3_000, 100_000));
        Law.AssertShares(["bracket", "tie", "tie that the motif decides"], met, cases);
    }

    [Fact]
    public void A_longer_writing_another_row_and_a_tie_decided_otherwise_would_be_seen()
    {
        var runs = Parse("o1u1o1u1o2u1o2");
        AssertBest(ShortestWriting.Of(runs, 3), runs, 3);
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertBest(new Writing(runs.Select(WritingItem (run) => new RunItem(run)).ToSequence()), runs, 3));
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertBest(ShortestWriting.Of(Parse("o1u1o1u1o2u1o1"), 3), runs, 3));
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => AssertBest(ShortestWriting.Of(runs, 2), runs, 3));
    }

    [Theory]
    [InlineData(4, "o1u1", "o1u1")]
    [InlineData(4, "o1u1o1", "o1u1o1")]
    [InlineData(4, "o1u1o1u1", "[o1u1]×2")]
    [InlineData(8, "u1o1u1o1u1o1u1o1u1", "[u1o1]×4u1")]
    [InlineData(8, "u1o1u2o3u2o1u2o3u2o1u2o3u2o1u1", "u1[o1u2o3u2]×3o1u1")]
    [InlineData(4, "o2u2o2u2o2u2", "[o2u2]×3")]
    [InlineData(4, "u1o3u1o3u1o3", "[u1o3]×3")]
    [InlineData(3, "o1u2o3u4", "o1u2o3u4")]
    public void Known_rows_are_written(int motifEnds, string runs, string writing) =>
        Assert.Equal(writing, Charts.Short(ShortestWriting.Of(Parse(runs), motifEnds)));

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
            Gen.Int[1, 3].Array[3].SelectMany(x => Gen.Int[4, 5].Array[0, 2], (x, tail) => (int[])[x[0], x[1], x[0], x[1], x[2], x[1], x[2], .. tail]))
        from first in Gen.Bool
        from motif in Gen.Int[2, 5]
        select (counts.Select((count, i) => new Run(first == (i % 2 == 0) ? Stroke.Over : Stroke.Under, count)).ToSequence(), motif);

    // Every way to write the runs from one of them on with one level of brackets.
    private static IEnumerable<IEnumerable<WritingItem>> AllWritings(Sequence<Run> runs, int start)
    {
        if (start == runs.Count)
        {
            return [[]];
        }

        var plain = AllWritings(runs, start + 1).Select(rest => rest.Prepend(new RunItem(runs[start])));
        var bracketed =
            from period in Enumerable.Range(1, runs.Count)
            from times in Enumerable.Range(2, runs.Count)
            where start + (period * times) <= runs.Count
                && Enumerable.Range(start, period * (times - 1)).All(i => runs[i] == runs[i + period])
            let bracket = new BracketItem(runs.Skip(start).Take(period).ToSequence(), times)
            from rest in AllWritings(runs, start + (period * times))
            select rest.Prepend(bracket);
        return plain.Concat(bracketed);
    }

    // The writing is one of all, of the fewest items, and of those one with the most brackets of one motif. Gives the shortest ones.
    private static List<Writing> AssertBest(Writing writing, Sequence<Run> runs, int motifEnds)
    {
        var all = AllWritings(runs, 0).Select(items => new Writing(items.ToSequence())).ToList();
        Assert.Contains(writing, all);
        var shortest = all.Where(other => Length(other) == all.Min(Length)).ToList();
        Assert.Equal(Length(shortest[0]), Length(writing));
        Assert.Equal(Length(writing), writing.Length);
        Assert.Equal(shortest.Max(other => MotifBrackets(other, motifEnds)), MotifBrackets(writing, motifEnds));
        return shortest;
    }

    private static int Length(Writing writing) => writing.Items.Sum(item => item is BracketItem bracket ? bracket.Runs.Count + 1 : 1);

    private static int MotifBrackets(Writing writing, int motifEnds) =>
        writing.Items.Count(item => item is BracketItem bracket && bracket.Runs.Sum(run => run.Count) == motifEnds);

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
