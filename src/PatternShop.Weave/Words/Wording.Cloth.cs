namespace PatternShop.Weave;

public partial class Wording
{
    public string ClothTitle => "Cloth";

    public string YarnsLabel => "Thickness and colours";

    /// <summary>What a picture of the cloth shows, for those who cannot see it.</summary>
    public string ClothDescription(Piece piece, bool whole, ClothSide side = ClothSide.Face)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var part = whole ? "the whole piece" : $"its {Corner(side)}";
        var over = piece.CrossingsOver();
        var crossings = piece.Ends * piece.Rows.Count;
        var share = side == ClothSide.Face ? over : crossings - over;
        return $"Picture of the cloth, {Name(side)}, {part}: {YarnsSeen(piece)}, as sett and row density put them. "
            + $"Of the {Count(crossings, "crossing", "crossings")} of the piece the weft is seen at {Number(share)}.";
    }

    /// <summary>What stands below a picture of the cloth.</summary>
    public string ClothCaption(bool whole, ClothSide side = ClothSide.Face) =>
        $"The cloth, {Name(side)}" + (whole ? "" : $": {Corner(side)}");

    /// <summary>The same where both sides stand beside each other, and how the back came there.</summary>
    public string ClothSideCaption(bool whole, ClothSide side) => ClothCaption(whole, side) + (side == ClothSide.Back ? ", turned over like a page" : "");

    /// <summary>Which side of the cloth.</summary>
    public string Name(ClothSide side) => side == ClothSide.Face ? "face" : "back";

    /// <summary>What the back is.</summary>
    public string BackText => "The back is the cloth turned over like a page.";

    /// <summary>What floating ends look like, for those who set an order.</summary>
    public string FloatingColourText => "A floating end has the colour of the end beside it.";

    /// <summary>Thicknesses and colours as the maker gave them, a line each; empty where nothing is said.</summary>
    public string YarnsText(PatternDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var cloth = document.Cloth;
        var wefts = document.Rows.UsedWefts();
        string[] lines =
        [
            LookLine("Warp", cloth.Warp),
            .. wefts.Select(weft => LookLine(WeftLabel(wefts, weft), cloth.Weft(weft))),
            OrderLine("Ends", cloth.Ends),
            OrderLine("Rows", cloth.Rows),
            cloth.Own.Count == 0 ? "" : "Own colours: " + string.Join(", ", cloth.Own.Select(own => $"{own.Name} {own.Value.Text}")),
        ];
        return string.Join('\n', lines.Where(line => line.Length > 0));
    }

    /// <summary>What a weaver takes for warp and wefts, a line each, as far as it is said: an order in place of the one colour.</summary>
    public Sequence<string> YarnsToTake(PatternDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var cloth = document.Cloth;
        var wefts = document.Rows.UsedWefts();
        return
        [
            .. new[]
            {
                TakeLine("Warp", cloth.Warp, cloth.Ends),
                cloth.Rows.Count > 0 && wefts.Count > 1 ? OrderLine("Rows", cloth.Rows) : "",
            }.Concat(wefts.Select(weft => TakeLine(WeftLabel(wefts, weft), cloth.Weft(weft), cloth.Rows, isOneOfMany: wefts.Count > 1)))
            .Where(line => line.Length > 0),
        ];
    }

    /// <summary>A thickness: "2 mm", "12 wraps per inch".</summary>
    public string ThicknessText(Thickness thickness)
    {
        ArgumentNullException.ThrowIfNull(thickness);
        return thickness.Unit == ThicknessUnit.Millimetres
            ? $"{Plain.Number(thickness.Amount)} mm"
            : $"{Plain.Number(thickness.Amount)} {(thickness.Amount == 1 ? "wrap" : "wraps")} per inch";
    }

    private static string Corner(ClothSide side) => side == ClothSide.Face ? "lower left corner" : "lower right corner";

    private string WeftLabel(Sequence<int> wefts, int weft) => wefts.Count == 1 ? "Weft" : $"Weft {Number(weft)}";

    private static string YarnsSeen(Piece piece)
    {
        var cloth = piece.Document.Cloth;
        var warp = cloth.Ends.Count > 0 ? $"a warp of {ColourOrder.Text(cloth.Ends)}, repeated" : cloth.Warp.Colour is { } one ? $"a {one} warp" : "a light warp";
        var wefts = piece.UsedWefts.Select(weft => cloth.Weft(weft).Colour).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        var weft = cloth.Rows.Count > 0 ? $"a weft of {ColourOrder.Text(cloth.Rows)}, repeated," : wefts.Count switch
        {
            0 => "a dark weft",
            1 => $"a {wefts[0]} weft",
            _ => $"wefts of {string.Join(" and ", wefts)}",
        };
        return $"{weft} over and under {warp}";
    }

    private string LookLine(string label, YarnLook look)
    {
        var parts = new[] { look.Colour ?? "", look.Thickness is { } thickness ? ThicknessText(thickness) : "" }.Where(part => part.Length > 0).ToList();
        return parts.Count == 0 ? "" : $"{label}: {string.Join(", ", parts)}";
    }

    // the order of the rows of several wefts has a line of its own
    private string TakeLine(string label, YarnLook look, Sequence<ColourRun> order, bool isOneOfMany = false)
    {
        if (order.Count == 0)
        {
            return LookLine(label, look);
        }

        var line = isOneOfMany ? "" : OrderLine(label, order);
        return look.Thickness is null ? line : line.Length == 0 ? LookLine(label, look with { Colour = null }) : $"{line}; {ThicknessText(look.Thickness)}";
    }

    private static string OrderLine(string label, Sequence<ColourRun> order) =>
        order.Count == 0 ? "" : $"{label}: {ColourOrder.Text(order)}, repeated";
}
