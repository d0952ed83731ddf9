using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class RuleOfThumbTests
{
    // Common practice, no published source: the arch for 6.75 in at 10 % is about 1.3 in high.
    [Fact]
    public void Arch_for_six_and_three_quarter_inches_at_ten_percent()
    {
        var arch = RuleOfThumb.Arch(new Length(6.75m, LengthUnit.Inch), 0.10m);
        Assert.Equal(LengthUnit.Inch, arch.Unit);
        Assert.Equal(1.3m, decimal.Round(arch.Amount, 1));
    }

    // "Loom, yarn, lengths" of the outside values: 0.891 in over 4.6 in at 10 %, 1.260 in at 20 %.
    [Theory]
    [InlineData("0.1", "0.891")]
    [InlineData("0.2", "1.260")]
    public void Arch_for_four_and_six_tenths_of_an_inch(string extra, string height)
    {
        static decimal Read(string number) => decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(Read(height), decimal.Round(RuleOfThumb.Arch(new Length(4.6m, LengthUnit.Inch), Read(extra)).Amount, 3));
    }

    // The formula itself, √(3/8 × width × extra), where the root is a whole number: width 8, extra 3 (37.5 %), so √9.
    [Fact]
    public void Arch_is_the_root_of_three_eighths_of_width_times_extra() =>
        Assert.Equal(3m, RuleOfThumb.Arch(new Length(8, LengthUnit.Centimetre), 0.375m).Amount, 9);

    // Common practice, no published source: each row takes one width of weft plus 10-20 %.
    [Fact]
    public void Weft_is_one_width_a_row_and_ten_to_twenty_percent()
    {
        Assert.Equal((0.10m, 0.20m), RuleOfThumb.TakeUp);
        Assert.Equal(new Length(111.32m, LengthUnit.Inch), RuleOfThumb.Weft(22, new Length(4.6m, LengthUnit.Inch), 0.10m)); // 22 × 4.6 × 1.1
        Assert.Equal(new Length(121.44m, LengthUnit.Inch), RuleOfThumb.Weft(22, new Length(4.6m, LengthUnit.Inch), 0.20m));
    }

    // Common practice, no published source: warp and weft alike, plain weave takes about half the wraps per inch, 2/2 twill about two thirds.
    [Theory]
    [InlineData(12, 6, 8)]
    [InlineData(30, 15, 20)]
    public void Setts_of_equal_threads_are_half_and_two_thirds_of_the_wraps(int wraps, int plain, int twill)
    {
        var diameter = 1m / wraps;
        Assert.Equal(plain, RuleOfThumb.PlainSett(diameter, diameter), 9);
        Assert.Equal(twill, RuleOfThumb.TwillSett(diameter, diameter), 9);
    }

    // Common practice, no published source: 1/(d1 + d2) and 4/(4 d1 + 2 d2), with the weft twice as thick as the warp.
    [Fact]
    public void Setts_of_unlike_threads()
    {
        Assert.Equal(5m, RuleOfThumb.PlainSett(1m / 15, 2m / 15), 9);
        Assert.Equal(7.5m, RuleOfThumb.TwillSett(1m / 15, 2m / 15), 9);
    }
}
