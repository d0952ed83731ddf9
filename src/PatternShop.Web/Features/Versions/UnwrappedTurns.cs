using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Says where a turn has nothing to hold it, in a sentence a side.</summary>
internal static class UnwrappedTurns
{
    private const int Named = 6;

    public static IEnumerable<string> Texts(Piece piece, Wording words) =>
        from side in Turns.Of(piece).Where(turn => !turn.Wrapped).GroupBy(turn => turn.Side)
        orderby side.Key
        let rows = side.Select(turn => words.Number(turn.Row)).ToList()
        select $"At the {words.Name(side.Key)} edge, {(rows.Count == 1 ? "the turn after row" : "the turns after rows")} {Listed(rows, words)} {(rows.Count == 1 ? "is" : "are")} not wrapped: nothing holds the weft there. Start at the other side, or use floating selvedges.";

    private static string Listed(List<string> rows, Wording words) => rows switch
    {
        [var one] => one,
        { Count: <= Named } => $"{string.Join(", ", rows[..^1])} and {rows[^1]}",
        _ => $"{string.Join(", ", rows[..Named])} and {words.Number(rows.Count - Named)} more",
    };
}
