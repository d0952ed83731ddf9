using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>How the sheets of a chart lie: a sentence and a map in which each has its number, as large as the page leaves room for.</summary>
internal static class SheetsMap
{
    private const double Most = 120;
    private const double Least = 30;
    private const double Gap = 3;
    private const double Rounding = 0.01;

    // Of a sheet's size on paper.
    private const double LargestScale = 0.3;

    /// <summary>Words and map in a room; null where there is too little of it.</summary>
    public static Fit? In(Sequence<ChartPart> parts, Rhythm rhythm, Wording wording, double cell, Room room)
    {
        var words = new Words(wording.SheetsText(parts[0].Columns, parts[0].Rows), rhythm.Styles.Body, new Tag(TagKind.Paragraph)).Fit(room.Width, double.PositiveInfinity, true);
        var left = Math.Min(Most, room.Height - words.Height - Gap - Rounding);
        if (left < Least)
        {
            return null;
        }

        var (ends, rows) = (parts.Where(part => part.Row == 0).Sum(part => part.OwnColumns), parts.Where(part => part.Column == 0).Sum(part => part.OwnRows));
        var scale = Math.Min(Math.Min(left / rows, Math.Min(room.Width, Most) / ends), LargestScale * cell);
        var tag = new Tag(TagKind.Figure) { Alternative = wording.SheetsMapDescription(parts[0].Columns, parts[0].Rows) };
        var boxes = parts.Select(part => Box(part, parts, scale, rows)).ToList();
        var style = rhythm.Styles.Body;
        var numbered = boxes.Select((box, i) => Lettering.Width(wording.Number(i + 1), style) < box[1].X - box[0].X && style.Em < box[2].Y - box[1].Y).All(fits => fits);
        Placed[] map =
        [
            new Placed(new StrokeMark(0, 0, boxes.ToSequence(), true, 0.3, 0.2), tag),
            .. numbered ? boxes.SelectMany((box, i) => Number(wording.Number(i + 1), box, style, tag)) : [],
        ];
        return new Fit([.. words.Items, .. map.Select(item => item.Moved(0, words.Height + Gap))], words.Height + Gap + (rows * scale), null);
    }

    private static Sequence<Spot> Box(ChartPart part, Sequence<ChartPart> parts, double scale, int rows)
    {
        var (left, right) = (part.Window.FirstColumn * scale, (part.Window.FirstColumn + part.OwnColumns) * scale);
        var lowest = parts[0].Window.FirstRow;
        var (bottom, top) = ((rows - (part.Window.FirstRow - lowest)) * scale, (rows - (part.Window.FirstRow - lowest) - part.OwnRows) * scale);
        return [new(left, top), new(right, top), new(right, bottom), new(left, bottom)];
    }

    private static IEnumerable<Placed> Number(string text, Sequence<Spot> box, TextStyle style, Tag tag) =>
        TextLine.Set(text, ((box[0].X + box[1].X) / 2) - (Lettering.Width(text, style) / 2), ((box[1].Y + box[2].Y) / 2) + (0.35 * style.Em), style, tag);
}
