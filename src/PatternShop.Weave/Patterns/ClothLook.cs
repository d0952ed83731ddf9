namespace PatternShop.Weave;

/// <summary>In what a thickness is given.</summary>
public enum ThicknessUnit
{
    /// <summary>The diameter in millimetres.</summary>
    Millimetres,

    /// <summary>How many turns of the yarn, side by side, cover an inch.</summary>
    WrapsPerInch,
}

/// <summary>How thick a yarn is, as typed but for zeros at the end.</summary>
/// <param name="Amount">Above 0, at most 1,000; at most four decimals.</param>
/// <param name="Unit">What the amount counts.</param>
public sealed record Thickness(decimal Amount, ThicknessUnit Unit)
{
    private const decimal MillimetresPerInch = 10 * Length.CentimetresPerInch;

    /// <summary>The amount; a decimal remembers zeros at its end, this one has none.</summary>
    public decimal Amount { get; init => field = Plain.WithoutZeros(value); } = Plain.WithoutZeros(Amount);

    /// <summary>The diameter in millimetres.</summary>
    public decimal InMillimetres => Unit == ThicknessUnit.Millimetres ? Amount : MillimetresPerInch / Amount;
}

/// <summary>How a yarn looks in the cloth.</summary>
/// <param name="Thickness">How thick it is; null where the maker has not said.</param>
/// <param name="Colour">The name of its colour; null where the maker has not said.</param>
public sealed record YarnLook(Thickness? Thickness, string? Colour)
{
    /// <summary>A yarn of which nothing is said.</summary>
    public static YarnLook Plain { get; } = new(null, null);
}

/// <summary>So many threads of one colour.</summary>
/// <param name="Count">At least 1.</param>
/// <param name="Colour">The name of the colour.</param>
public sealed record ColourRun(int Count, string Colour);

/// <summary>A colour that the maker has given a name.</summary>
/// <param name="Name">Small letters, digits, spaces and hyphens, beginning with a letter; at most 30 characters; none of <see cref="NamedColours"/>.</param>
/// <param name="Value">How it is shown.</param>
public sealed record OwnColour(string Name, Rgb Value);

/// <summary>
/// How the yarns of a piece look: for its picture, never for its rows. Orders repeat: that of the ends begins at pattern end 1, that of
/// the rows at row 1, whichever weft weaves them. An order goes before the one colour of the warp or of the weft.
/// </summary>
/// <param name="Warp">The warp.</param>
/// <param name="Wefts">The wefts, weft 1 first; wefts beyond the list are plain. Plain ones at the end of the list are left out.</param>
/// <param name="Ends">The colours of the pattern ends in order, repeated; empty for the warp's one colour.</param>
/// <param name="Rows">The colours of the woven rows in order, repeated; empty for those of the wefts.</param>
/// <param name="Own">The maker's own colours.</param>
public sealed record ClothLook(YarnLook Warp, Sequence<YarnLook> Wefts, Sequence<ColourRun> Ends, Sequence<ColourRun> Rows, Sequence<OwnColour> Own)
{
    /// <summary>A cloth of which nothing is said.</summary>
    public static ClothLook Plain { get; } = new(YarnLook.Plain, [], [], [], []);

    /// <summary>The wefts of which something is said, and those before them.</summary>
    public Sequence<YarnLook> Wefts { get; init => field = Trimmed(value); } = Trimmed(Wefts);

    /// <summary>The look of a weft.</summary>
    /// <param name="weft">The weft, from 1.</param>
    public YarnLook Weft(int weft) => weft <= Wefts.Count ? Wefts[weft - 1] : YarnLook.Plain;

    /// <summary>The same look with one weft changed.</summary>
    /// <param name="weft">The weft, from 1.</param>
    /// <param name="look">How it looks.</param>
    public ClothLook With(int weft, YarnLook look) => this with
    {
        Wefts = Enumerable.Range(1, Math.Max(weft, Wefts.Count)).Select(one => one == weft ? look : Weft(one)).ToSequence(),
    };

    /// <summary>How a colour is shown; null for a name that is not known.</summary>
    public Rgb? Find(string name) => NamedColours.Find(name) ?? Own.FirstOrDefault(own => own.Name == name)?.Value;

    private static Sequence<YarnLook> Trimmed(Sequence<YarnLook> wefts)
    {
        var said = wefts.Count;
        while (said > 0 && wefts[said - 1] == YarnLook.Plain)
        {
            said--;
        }

        return said == wefts.Count ? wefts : wefts.Take(said).ToSequence();
    }
}
