using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class FloatsCheckTests
{
    // Whole piece 1 of the values computed outside this project: in the diamond, seams and edges counted, every float is at most 3.
    private static readonly PatternDocument Diamond = Charts.DiamondPiece;

    [Fact]
    public void The_diamond_keeps_a_limit_of_3_and_breaks_one_of_2()
    {
        Assert.Empty(Found.In<FloatsTooLong>(Diamond with { Limits = new Limits(3, null) }));
        var found = Found.In<FloatsTooLong>(Diamond with { Limits = new Limits(2, null) });
        Assert.All(found, floats => Assert.Equal((3, 2, Weight.Caution), (floats.Longest, floats.Most, floats.Weight)));
        Assert.Equal([FloatKind.WeftOver, FloatKind.WeftUnder, FloatKind.WarpOver, FloatKind.WarpUnder], found.Select(floats => floats.Kind));
    }

    [Fact]
    public void Without_limits_the_longest_is_named_in_threads_and_length()
    {
        var longest = Assert.Single(Found.In<LongestFloat>(Diamond));
        Assert.Equal((3, 3, Weight.Note), (longest.WeftThreads, longest.WarpThreads, longest.Weight));
        Assert.Equal(new Length(0.6m, LengthUnit.Inch), longest.WeftLength); // 3 ends at 5 an inch
        Assert.Equal(new Length(0.75m, LengthUnit.Inch), longest.WarpLength); // 3 rows at 4 an inch
        Assert.Empty(Found.In<LongestFloat>(Diamond with { Limits = new Limits(3, null) }));
        Assert.Empty(Found.In<LongestFloat>(Charts.Document("x./.x", repeats: 4)));
    }

    // Floats by the definition of the glossary: threads ÷ sett for the weft, ÷ row density for ends.
    [Theory]
    [InlineData("0.75", LengthUnit.Inch, 0, 0)]
    [InlineData("0.74", LengthUnit.Inch, 0, 2)]
    [InlineData("0.59", LengthUnit.Inch, 2, 2)]
    [InlineData("1.905", LengthUnit.Centimetre, 0, 0)]
    [InlineData("1.9049", LengthUnit.Centimetre, 0, 2)]
    public void A_limit_in_length_goes_by_the_density_of_the_threads_that_are_passed(string most, LengthUnit unit, int wefts, int ends)
    {
        var amount = decimal.Parse(most, System.Globalization.CultureInfo.InvariantCulture);
        var found = Found.In<FloatsTooLong>(Diamond with { Limits = new Limits(null, new Length(amount, unit)) });
        Assert.Equal((wefts, ends), (found.Count(floats => floats.Kind.IsWeft()), found.Count(floats => !floats.Kind.IsWeft())));
    }

    [Fact]
    public void Floats_are_those_of_the_definitions() => Law.OfDocuments(Found.LongDocuments, document => AssertFloats(document, document), 600, 30_000);

    [Fact]
    public void A_changed_cell_would_be_seen() => Law.CanFail(document =>
        AssertFloats(document, document with { Motif = document.Motif.With(0, 0, !document.Motif[0, 0]) }));

    [Fact]
    public void Tying_down_mends_the_float_that_is_named_first()
    {
        var long5 = Charts.Document("xxxxx.x./.x.x.x.x", repeats: 3, floating: Charts.AlikeUnder) with { Limits = new Limits(3, null) };
        var remedy = Found.FirstRemedy<FloatsTooLong>(long5); // in the middle, at end 3, no row would catch that end
        Assert.Equal((MendKind.TieDown, 0), (remedy.Edit.Kind, remedy.Aftermath.Left));
        Assert.Equal("x.xxx.x. / .x.x.x.x", Found.After(long5, remedy.Edit).Motif.ToString());
    }

    [Fact]
    public void Ten_thousand_long_floats_are_one_finding_with_the_first_places()
    {
        var many = BitGrid.Create(600, 400, (row, end) => (end / 4 + row) % 2 == 0);
        var piece = Piece.Of(Charts.Document("x./.x") with
        {
            Motif = many,
            Rows = new RowPlan([new Weft(Side.Left)], Stroke.Under, [new ChartRows(1, 600, 1)]),
            Limits = new Limits(3, null),
        });
        var found = Weave.Checks.Of(piece).OfType<FloatsTooLong>().ToList();
        Assert.Equal([30_000, 30_000], found.Select(floats => floats.Count));
        Assert.All(found, floats => Assert.Equal(Finding.MostAreas, floats.Areas.Count));
        Assert.All(found, floats => Assert.InRange(Wording.English.FindingWhat(piece, floats).Length + Wording.English.FindingWhy(piece, floats).Length, 20, 400));
    }

    private static void AssertFloats(PatternDocument document, PatternDocument seen)
    {
        if (document.Limits is not { } limits || Weave.Checks.Of(Piece.Of(document)) is [NothingDrawn])
        {
            return;
        }

        var rows = Oracle.Rows(seen);
        var gauge = document.Gauge;
        var expected = new Dictionary<FloatKind, (int Count, int Longest)>();
        void Add(FloatKind kind, int threads, Density density)
        {
            var centimetres = density.Unit switch
            {
                DensityUnit.PerInch => threads * 2.54m / density.Amount,
                DensityUnit.PerCentimetre => threads / density.Amount,
                _ => threads * 10 / density.Amount,
            };
            var allowed = limits.Length is { } most ? most.Amount * (most.Unit == LengthUnit.Inch ? 2.54m : 1) : decimal.MaxValue;
            if (threads > 1 && (threads > (limits.Threads ?? int.MaxValue) || centimetres > allowed + 0.000000000001m))
            {
                var before = expected.GetValueOrDefault(kind);
                expected[kind] = (before.Count + 1, Math.Max(before.Longest, threads));
            }
        }

        foreach (var (over, count) in rows.SelectMany(row => row.Runs))
        {
            Add(over ? FloatKind.WeftOver : FloatKind.WeftUnder, count, gauge.Sett);
        }

        for (var end = 0; end < rows[0].Over.Count; end++)
        {
            var stretch = 0;
            for (var row = 0; row < rows.Count; row++)
            {
                stretch++;
                if (row + 1 == rows.Count || rows[row + 1].Over[end] != rows[row].Over[end])
                {
                    Add(rows[row].Over[end] ? FloatKind.WarpUnder : FloatKind.WarpOver, stretch, gauge.Rows);
                    stretch = 0;
                }
            }
        }

        var found = Found.In<FloatsTooLong>(document);
        Assert.Equal(
            expected.Select(one => (one.Key, one.Value.Count, one.Value.Longest)).Order(),
            found.Select(floats => (floats.Kind, floats.Count, floats.Longest)).Order());
        Assert.All(found, floats => Assert.All(floats.Areas, area => AssertFloat(rows, floats, area)));
    }

    // every place that is named is a float of its kind, whole and too long
    private static void AssertFloat(IReadOnlyList<OracleRow> rows, FloatsTooLong floats, Area area)
    {
        var over = floats.Kind is FloatKind.WeftOver or FloatKind.WarpUnder;
        var (long1, wide) = (area.LastRow - area.FirstRow + 1, area.LastEnd - area.FirstEnd + 1);
        Assert.True(floats.Kind.IsWeft() ? long1 == 1 && wide > floats.Most : wide == 1 && long1 > floats.Most);
        for (var row = area.FirstRow; row <= area.LastRow; row++)
        {
            for (var end = area.FirstEnd; end <= area.LastEnd; end++)
            {
                Assert.Equal(over, rows[row - 1].Over[end]);
            }
        }
    }
}
