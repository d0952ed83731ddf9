using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class LengthTests
{
    // "Loom, yarn, lengths" of the outside values: 23 ends at 5 per inch are 4.6 in; an inch is 2.54 cm.
    [Fact]
    public void Twenty_three_ends_at_five_per_inch_are_four_and_six_tenths_of_an_inch()
    {
        var piece = Piece.Of(Charts.DiamondPiece);
        Assert.Equal(23, piece.Ends);
        Assert.Equal(new Length(4.6m, LengthUnit.Inch), piece.WidthOnLoom());
        Assert.Equal(new Length(11.684m, LengthUnit.Centimetre), piece.WidthOnLoom().In(LengthUnit.Centimetre));
    }

    // Common practice, no published source: 3 × 8 + 1 + 2 = 27 ends; at 4 per inch that is 6.75 in on the loom.
    [Fact]
    public void Twenty_seven_ends_at_four_per_inch_are_six_and_three_quarter_inches()
    {
        var piece = Piece.Of(Charts.Document("x.......", repeats: 3, balance: 1, floating: Charts.AlikeUnder));
        Assert.Equal((27, new Length(6.75m, LengthUnit.Inch)), (piece.Ends, piece.WidthOnLoom()));
    }

    [Fact]
    public void Length_is_all_rows_by_row_density()
    {
        var document = Charts.Document(Charts.TenEndDiamond, steps: [new Repeat(2, [new ChartRows(1, 10, 1)]), new PlainRows(2, 1)]); // 22 rows at 5 an inch
        Assert.Equal(new Length(4.4m, LengthUnit.Inch), Piece.Of(document).WovenLength());
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
