using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>What somebody without the script asks about the row that they lost: the side, the runs as they typed them, those of the row below.</summary>
public sealed record LostQuery(Side From, string Row, string Below)
{
    /// <summary>Characters of typed runs that are looked at: more than any row that can be told apart needs.</summary>
    public const int MostCharacters = 400;

    public static LostQuery None { get; } = new(Side.Left, "", "");

    public bool IsAsked => Row.Trim().Length > 0;

    public static LostQuery Of(IQueryCollection query)
    {
        ArgumentNullException.ThrowIfNull(query);
        return new LostQuery(query["side"] == "right" ? Side.Right : Side.Left, Typed(query["row"]), Typed(query["below"]));
    }

    private static string Typed(string? text) => text is null ? "" : text.Length > MostCharacters ? text[..MostCharacters] : text;
}
