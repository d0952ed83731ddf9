using System.Globalization;

namespace PatternShop.Weave;

/// <summary>
/// Every word that is made from a chart, in one language. It is passed in wherever words are made, so that no text
/// depends on the machine's culture and another language can be added beside <see cref="English"/>: a class that says the words its way.
/// </summary>
public partial class Wording
{
    protected Wording(string language) => Language = language;

    /// <summary>English.</summary>
    public static Wording English { get; } = new("en");

    /// <summary>BCP 47 tag of the language.</summary>
    public string Language { get; }

    /// <summary>A number with at most two decimals.</summary>
    public virtual string Number(decimal value) =>
        decimal.Round(value, 2, MidpointRounding.AwayFromZero).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>A whole number, thousands set apart.</summary>
    public virtual string Number(int value) => value.ToString("#,0", CultureInfo.InvariantCulture);

    /// <summary>A length as the maker measures: "4.6 in".</summary>
    public string LengthShort(Length length) => $"{Number(length.Amount)} {UnitName(length.Unit)}";

    /// <summary>A length in both units: "4.6 in (11.7 cm)".</summary>
    public string LengthBoth(Length length)
    {
        var other = length.In(length.Unit == LengthUnit.Inch ? LengthUnit.Centimetre : LengthUnit.Inch);
        return $"{LengthShort(length)} ({decimal.Round(other.Amount, 1, MidpointRounding.AwayFromZero).ToString("0.#", CultureInfo.InvariantCulture)} {UnitName(other.Unit)})";
    }

    public string UnitName(LengthUnit unit) => unit == LengthUnit.Inch ? "in" : "cm";

    /// <summary>A density as it was typed: "4 ends per inch".</summary>
    public string DensityOf(string threads, Density density)
    {
        ArgumentNullException.ThrowIfNull(density);
        var amount = density.Amount.ToString("0.############################", CultureInfo.InvariantCulture);
        return density.Unit switch
        {
            DensityUnit.PerInch => $"{amount} {threads} per inch",
            DensityUnit.PerCentimetre => $"{amount} {threads} per cm",
            _ => $"{amount} {threads} per 10 cm",
        };
    }

    /// <summary>"1 row", "8 rows".</summary>
    public virtual string Rows(int count) => Count(count, "row", "rows");

    public virtual string Times(int count) => count switch { 1 => "once", 2 => "twice", _ => $"{Number(count)} times" };

    internal string Count(int count, string one, string many) => $"{Number(count)} {(count == 1 ? one : many)}";

    internal string Range(string one, string many, int first, int last) =>
        first == last ? $"{one} {Number(first)}" : $"{many} {Number(first)}–{Number(last)}";

    internal static string Capital(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];
}
