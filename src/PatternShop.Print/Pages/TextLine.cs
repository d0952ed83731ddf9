namespace PatternShop.Print;

/// <summary>Sets one line of text.</summary>
internal static class TextLine
{
    /// <summary>The marks of a text whose baseline begins at (x, y).</summary>
    public static IEnumerable<Placed> Set(string text, double x, double y, TextStyle style, Tag? tag)
    {
        // nearly always one piece
        var house = Lettering.House(style.Bold);
        return text.Length > 0 && house.Has(text) ? [new Placed(new TextMark(x, y, new TextPiece(text, house), style), tag)] : SetPieces(text, x, y, style, tag);
    }

    private static IEnumerable<Placed> SetPieces(string text, double x, double y, TextStyle style, Tag? tag)
    {
        foreach (var piece in Lettering.Pieces(text, style.Bold))
        {
            yield return piece.Face is null
                ? new Placed(DrawnCharacter.Of(piece.Text, x, y, style), tag is null ? null : new Tag(TagKind.Span, tag) { ActualText = piece.Text })
                : new Placed(new TextMark(x, y, piece, style), tag);
            x += piece.Width(style);
        }
    }
}
