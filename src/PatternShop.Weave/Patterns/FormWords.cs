namespace PatternShop.Weave;

/// <summary>The words that the file form uses for the values of an enumeration.</summary>
internal sealed class WordTable<T>(params (string Word, T Value)[] entries)
    where T : struct, Enum
{
    /// <summary>All words, quoted, for a sentence: "a", "b" or "c".</summary>
    public string Choice { get; } = entries.Length == 1
        ? Plain.Quote(entries[0].Word)
        : string.Join(", ", entries[..^1].Select(entry => Plain.Quote(entry.Word))) + " or " + Plain.Quote(entries[^1].Word);

    public string Of(T value)
    {
        foreach (var entry in entries)
        {
            if (EqualityComparer<T>.Default.Equals(entry.Value, value))
            {
                return entry.Word;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(value), value, "Has no word in the file form.");
    }

    public T? Read(string word)
    {
        foreach (var entry in entries)
        {
            if (entry.Word == word)
            {
                return entry.Value;
            }
        }

        return null;
    }
}

/// <summary>The kinds of steps as the file form names them.</summary>
internal enum StepKind
{
    Chart,
    Plain,
    Stitch,
    Repeat,
}

internal static class FormWords
{
    public static WordTable<Side> Sides { get; } = new(("left", Side.Left), ("right", Side.Right));

    public static WordTable<Stroke> Strokes { get; } = new(("under", Stroke.Under), ("over", Stroke.Over));

    public static WordTable<EdgeWay> Edges { get; } = new(("alike", EdgeWay.Alike), ("entering", EdgeWay.Entering));

    public static WordTable<StitchYarn> Yarns { get; } = new(("own", StitchYarn.Own), ("working", StitchYarn.Working));

    public static WordTable<DensityUnit> Units { get; } =
        new(("in", DensityUnit.PerInch), ("cm", DensityUnit.PerCentimetre), ("10 cm", DensityUnit.PerTenCentimetres));

    public static WordTable<LengthUnit> Lengths { get; } = new(("in", LengthUnit.Inch), ("cm", LengthUnit.Centimetre));

    public static WordTable<ThicknessUnit> Thicknesses { get; } = new(("mm", ThicknessUnit.Millimetres), ("wraps per in", ThicknessUnit.WrapsPerInch));

    public static WordTable<GlyphStyle> Glyphs { get; } = new(("cells", GlyphStyle.Cells), ("bars", GlyphStyle.Bars));

    public static WordTable<StepKind> Steps { get; } =
        new(("chart", StepKind.Chart), ("plain", StepKind.Plain), ("stitch", StepKind.Stitch), ("repeat", StepKind.Repeat));
}
