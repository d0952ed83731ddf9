namespace PatternShop.Weave;

/// <summary>Which thread floats, and on which side of the cloth; as seen on the face.</summary>
public enum FloatKind
{
    /// <summary>The weft passes over several ends.</summary>
    WeftOver,

    /// <summary>The weft passes under several ends: it floats on the back.</summary>
    WeftUnder,

    /// <summary>An end lies over several rows.</summary>
    WarpOver,

    /// <summary>An end lies under several rows: it floats on the back.</summary>
    WarpUnder,
}

/// <summary>What belongs to a kind of float.</summary>
public static class FloatKinds
{
    /// <summary>Whether it is the weft that floats.</summary>
    public static bool IsWeft(this FloatKind kind) => kind is FloatKind.WeftOver or FloatKind.WeftUnder;

    /// <summary>The length of a float: its threads ÷ sett for the weft, ÷ row density for an end.</summary>
    public static Length LengthOf(this FloatKind kind, int threads, Gauge gauge)
    {
        ArgumentNullException.ThrowIfNull(gauge);
        return Lengths.Of(threads, kind.IsWeft() ? gauge.Sett : gauge.Rows);
    }

    /// <summary>The most threads that a stretch may pass within a maker's limits, at least 1, which is no float; <see cref="int.MaxValue"/> without any.</summary>
    public static int Most(this FloatKind kind, Limits? limits, Gauge gauge)
    {
        ArgumentNullException.ThrowIfNull(gauge);
        var byThreads = limits?.Threads ?? int.MaxValue;
        if (limits?.Length is not { } longest)
        {
            return byThreads;
        }

        var one = kind.LengthOf(1, gauge).Unit;
        var density = kind.IsWeft() ? gauge.Sett : gauge.Rows;
        var perUnit = density.Unit == DensityUnit.PerTenCentimetres ? density.Amount / 10 : density.Amount;
        return (int)Math.Clamp(Math.Floor(longest.In(one).Amount * perUnit), 1, byThreads);
    }
}
