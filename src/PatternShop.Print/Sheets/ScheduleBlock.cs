using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>The order of work with a box to tick for every time through.</summary>
internal static class ScheduleBlock
{
    private const double WideText = 135;
    private const double TextWidth = 98;
    private const int FewTimes = 6;
    private const double LargeTextWidth = 112;
    private const double NarrowBoxes = 45;
    private const int FewBoxes = 3;
    private const double Narrow = 110;

    /// <param name="piece">The piece.</param>
    /// <param name="rhythm">How it is set.</param>
    /// <param name="wording">The words.</param>
    /// <param name="width">Of the column in which it stands, in millimetres.</param>
    public static Headed Of(Piece piece, Rhythm rhythm, Wording wording, double width)
    {
        var heading = Headings.Section(wording.ScheduleTitle, rhythm);
        var table = new Tag(TagKind.Table);
        var head = new Tag(TagKind.TableRow, table);
        // in a narrow column the heads would take more lines than what they head
        var isShared = rhythm.SharesLines || (width < Narrow && rhythm.Styles != Styles.Large);
        string[] names = [wording.WeaveColumn, wording.TickColumn];
        TableRow Head(bool tagged) => new(head, names.Select(Block (name) => new Words(name, rhythm.Styles.Strong, tagged ? new Tag(TagKind.HeaderCell, head) : null)).ToSequence());
        var body = new Table(
            [TextRoom(Schedule.Of(piece).Max(Times), rhythm, width)],
            isShared ? null : Head(true),
            isShared ? null : Head(false),
            Schedule.Of(piece).Select(line => Row(piece, line, rhythm, wording, table)).ToSequence(),
            rhythm.Padding);
        return isShared
            ? new Headed(new Followed(heading, new Words(wording.TickColumn, rhythm.Styles.Quiet, new Tag(TagKind.Paragraph))), 0.8, body)
            : new Headed(heading, 1, body);
    }

    // In a narrow column up to three boxes stand beside each other.
    private static double TextRoom(int times, Rhythm rhythm, double width)
    {
        var wide = rhythm.Styles == Styles.Large ? LargeTextWidth : times <= FewTimes ? WideText : TextWidth;
        return width > wide + NarrowBoxes ? wide : width - TickBoxes.WidthOf(Math.Min(times, FewBoxes), rhythm.Styles.Tick);
    }

    private static TableRow Row(Piece piece, ScheduleLine line, Rhythm rhythm, Wording wording, Tag table)
    {
        var row = new Tag(TagKind.TableRow, table);
        var cell = new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row };
        Sequence<string> sentences = line is RowsAgain { Band.ReadsDifferently: true } twice
            ? [wording.ScheduleText(piece, line), rhythm.InShort ? wording.ShortTwoReadingsText(twice.Band) : wording.TwoReadingsText(piece, twice.Band)]
            : [wording.ScheduleText(piece, line)];
        var text = new Stack(sentences.Select((s, i) => new Stacked(1, new Words(s, i == 0 ? rhythm.Styles.Body : rhythm.Styles.Quiet, new Tag(TagKind.Paragraph, cell)))).ToSequence());
        var times = Times(line);
        return new TableRow(row, [text, new TickBoxes(1, times, times > 1, rhythm.Styles.Tick, new Tag(TagKind.Cell, row), wording)]);
    }

    private static int Times(ScheduleLine line) => line switch { RowsAgain again => again.Band.Times, StitchOnce stitch => stitch.Times, _ => 1 };
}
