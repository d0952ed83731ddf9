using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class LengthTests
{
    // Common practice, no published source: groups of 8 ends × 3, one balance end and two floating selvedges make 27 ends; at 4 per inch that is 6.75 in on the loom.
    [Fact]
    public void Twenty_seven_ends_at_four_per_inch_are_six_and_three_quarter_inches()
    {
        var piece = Piece.Of(Charts.Document(Charts.Diamond, repeats: 3, balance: 1, floating: Charts.AlikeUnder));
        Assert.Equal(27, piece.Ends);
        Assert.Equal(new Length(6.75m, LengthUnit.Inch), piece.WidthOnLoom());
        Assert.Equal(new Length(17.145m, LengthUnit.Centimetre), piece.WidthOnLoom().In(LengthUnit.Centimetre));
    }

    [Fact]
    public void Length_is_all_rows_by_row_density()
    {
        var document = Charts.Document(Charts.Diamond, steps: [new Repeat(2, [new ChartRows(1, 8, 1)]), new PlainRows(2, 1)]);
        Assert.Equal(new Length(3.6m, LengthUnit.Inch), Piece.Of(document).WovenLength());
    }

    [Theory]
    [InlineData(DensityUnit.PerInch, "9", LengthUnit.Inch)]
    [InlineData(DensityUnit.PerCentimetre, "9", LengthUnit.Centimetre)]
    [InlineData(DensityUnit.PerTenCentimetres, "90", LengthUnit.Centimetre)]
    public void Lengths_come_in_the_unit_of_the_density(DensityUnit unit, string amount, LengthUnit expected) =>
        Assert.Equal(
            new Length(decimal.Parse(amount, System.Globalization.CultureInfo.InvariantCulture), expected),
            Lengths.Of(27, new Density(3, unit)));

    [Fact]
    public void Centimetres_and_inches_convert_both_ways()
    {
        Assert.Equal(new Length(2.54m, LengthUnit.Centimetre), new Length(1, LengthUnit.Inch).In(LengthUnit.Centimetre));
        Assert.Equal(new Length(1, LengthUnit.Inch), new Length(2.54m, LengthUnit.Centimetre).In(LengthUnit.Inch));
        Assert.Equal(new Length(3, LengthUnit.Inch), new Length(3, LengthUnit.Inch).In(LengthUnit.Inch));
    }
}
