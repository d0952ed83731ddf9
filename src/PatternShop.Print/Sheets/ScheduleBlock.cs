using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>The order of work with a box to tick for every time through.</summary>
internal static class ScheduleBlock
{
    private const double WideText = 135;
    private const double TextWidth = 98;
    private const int FewTimes = 6;
    private const double LargeTextWidth = 112;

    public static Block Of(Piece piece, Rhythm rhythm, Wording wording)
    {
        var table = new Tag(TagKind.Table);
        var head = new Tag(TagKind.TableRow, table);
        string[] names = [wording.WeaveColumn, wording.TickColumn];
        return new Table(
            [rhythm.Styles == Styles.Large ? LargeTextWidth : Schedule.Of(piece).Max(Times) <= FewTimes ? WideText : TextWidth],
            new TableRow(head, names.Select(Block (name) => new Words(name, rhythm.Styles.Strong, new Tag(TagKind.HeaderCell, head))).ToSequence()),
            new TableRow(head, names.Select(Block (name) => new Words(name, rhythm.Styles.Strong, null)).ToSequence()),
            Schedule.Of(piece).Select(line => Row(piece, line, rhythm, wording, table)).ToSequence(),
            rhythm.Padding);
    }

    private static TableRow Row(Piece piece, ScheduleLine line, Rhythm rhythm, Wording wording, Tag table)
    {
        var row = new Tag(TagKind.TableRow, table);
        var cell = new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row };
        Sequence<string> sentences = line is RowsAgain { Band.ReadsDifferently: true } twice
            ? [wording.ScheduleText(piece, line), wording.TwoReadingsText(piece, twice.Band)]
            : [wording.ScheduleText(piece, line)];
        var text = new Stack(sentences.Select((s, i) => new Stacked(1, new Words(s, i == 0 ? rhythm.Styles.Body : rhythm.Styles.Quiet, new Tag(TagKind.Paragraph, cell)))).ToSequence());
        var times = Times(line);
        return new TableRow(row, [text, new TickBoxes(1, times, times > 1, rhythm.Styles.Tick, new Tag(TagKind.Cell, row), wording)]);
    }

    private static int Times(ScheduleLine line) => line switch { RowsAgain again => again.Band.Times, StitchOnce stitch => stitch.Times, _ => 1 };
}
