namespace PatternShop.Weave;

/// <summary>What comes of parameters for a weave.</summary>
public abstract record WeaveResult
{
    private WeaveResult()
    {
    }

    /// <summary>A motif.</summary>
    public sealed record Made(BitGrid Motif) : WeaveResult;

    /// <summary>The parameters do not make a weave; each problem names the parameter in its pointer.</summary>
    public sealed record Refused(Sequence<Problem> Problems) : WeaveResult;

    internal static WeaveResult Refuse(string code, string parameter, string what, string remedy) =>
        new Refused([new Problem(code, $"/{parameter}", 0, 0, what, remedy)]);
}
