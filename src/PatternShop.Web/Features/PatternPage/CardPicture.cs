using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>The small picture of a pattern in lists: its cloth where the maker has said something of the yarns, else its motif, which is then the better likeness.</summary>
internal static class CardPicture
{
    public static string Svg(Piece piece, string id) => piece.Document.Cloth == ClothLook.Plain
        ? MotifPicture.Svg(piece, id)
        : SvgText.Of(ClothDrawing.Of(piece, ClothRooms.Card), piece.Document.Title, "", id);
}
