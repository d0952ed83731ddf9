namespace PatternShop.Weave;

/// <summary>A unit of length.</summary>
public enum LengthUnit
{
    Inch,
    Centimetre,
}

/// <summary>A length in the unit in which the maker thinks.</summary>
public readonly record struct Length(decimal Amount, LengthUnit Unit)
{
    /// <summary>Centimetres in an inch, exact by definition (international yard and pound agreement, 1959).</summary>
    public const decimal CentimetresPerInch = 2.54m;

    /// <summary>The same length in another unit.</summary>
    public Length In(LengthUnit unit) => (Unit, unit) switch
    {
        (LengthUnit.Inch, LengthUnit.Centimetre) => new(Amount * CentimetresPerInch, unit),
        (LengthUnit.Centimetre, LengthUnit.Inch) => new(Amount / CentimetresPerInch, unit),
        _ => this,
    };

    public static Length operator *(Length length, decimal factor) => length with { Amount = length.Amount * factor };

    public static Length Multiply(Length left, decimal right) => left * right;
}

/// <summary>Lengths that follow from counts and densities.</summary>
public static class Lengths
{
    /// <summary>The length that a number of threads takes at a density: threads ÷ density, in inches or centimetres as the density was typed.</summary>
    public static Length Of(int threads, Density density)
    {
        ArgumentNullException.ThrowIfNull(density);
        return density.Unit switch
        {
            DensityUnit.PerInch => new(threads / density.Amount, LengthUnit.Inch),
            DensityUnit.PerCentimetre => new(threads / density.Amount, LengthUnit.Centimetre),
            DensityUnit.PerTenCentimetres => new(threads * 10 / density.Amount, LengthUnit.Centimetre),
            _ => throw new ArgumentOutOfRangeException(nameof(density)),
        };
    }

    /// <summary>Width on the loom: all ends, floating ones included, ÷ sett.</summary>
    public static Length WidthOnLoom(this Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return Of(piece.Ends, piece.Document.Gauge.Sett);
    }

    /// <summary>Woven length: all rows ÷ row density; edge stitches not counted.</summary>
    public static Length WovenLength(this Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return Of(piece.Rows.Count, piece.Document.Gauge.Rows);
    }
}
