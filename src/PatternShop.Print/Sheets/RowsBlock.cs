using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>The written rows, in the order of work: a table for each stretch, each row with the side at which it starts.</summary>
internal static class RowsBlock
{
    private const double Gap = 4;
    private const double LeastGap = 3.2;

    // Where there is little room, so few rows that are woven once are not headed, and none after the first ones in the short form: the order of work says so.
    private const int FewRows = 2;

    /// <summary>Every stretch under each other.</summary>
    public static Stack Whole(Piece piece, Rhythm rhythm, Wording wording) => new(Of(piece, rhythm, wording).ToSequence());

    /// <summary>One row as it stands on the sheet, without the rules around it.</summary>
    public static Table OneRow(Piece piece, int number, Rhythm rhythm, Wording wording)
    {
        var table = new Tag(TagKind.Table);
        var widths = Widths(piece, LastBeside(piece, number), rhythm, wording);
        return new Table(widths, null, null, [WrittenRow(piece, number, (widths, rhythm, wording), table)], rhythm.Padding) { HasTopRule = false, HasRules = false };
    }

    // The last row of the stretch in which a row stands.
    private static int LastBeside(Piece piece, int number)
    {
        foreach (var line in Schedule.Of(piece))
        {
            if (line is RowsOnce rows && rows.First <= number && number <= rows.Last)
            {
                return rows.Last;
            }

            if (line is RowsAgain { Band: var band } && band.FirstRow <= number && number < band.FirstRow + band.PrintedRows)
            {
                return band.FirstRowOf(((number - band.FirstRow) / band.RowsEachTime) + 2) - 1;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(number), number, "No such row is printed.");
    }

    private static IEnumerable<Stacked> Of(Piece piece, Rhythm rhythm, Wording wording)
    {
        var parts = Schedule.Of(piece).SelectMany(line => Parts(piece, line, rhythm, wording)).ToList();
        return parts.Select(part => new Stacked(rhythm.Part, part));
    }

    private static IEnumerable<Block> Parts(Piece piece, ScheduleLine line, Rhythm rhythm, Wording wording) => line switch
    {
        RowsOnce rows => [Rows(piece, (rows.First, rows.Last, IsUnheaded(rows, rhythm) ? null : wording.RowsHeading(line)), [], rhythm, wording)],
        RowsAgain again => Enumerable.Range(1, again.Band.PrintedTimes).Select(time => Rows(
            piece,
            (again.Band.FirstRowOf(time), again.Band.FirstRowOf(time + 1) - 1, wording.TimeHeading(again.Band, time)),
            again.Stitches.Where(stitch => stitch.Time == time).ToSequence(),
            rhythm,
            wording)),
        StitchOnce stitch => [new Words(rhythm.SharesLines ? wording.ShortStitchText(stitch) : wording.ScheduleText(piece, line), rhythm.Styles.Body, new Tag(TagKind.Paragraph))],
        _ => throw new InvalidOperationException($"No way to print {line.GetType().Name}."),
    };

    private static bool IsUnheaded(RowsOnce rows, Rhythm rhythm) => (rhythm.SharesLines && rows.Last - rows.First < FewRows) || (rhythm.InShort && rows.First > 1);

    /// <summary>The width that is left for directions, in millimetres.</summary>
    public static double DirectionsRoom(Piece piece, Rhythm rhythm, Wording wording, double width) =>
        width - Widths(piece, piece.PrintedRows().Max(), rhythm, wording).Sum();

    private static Table Rows(Piece piece, (int First, int Last, string? Heading) stretch, Sequence<WovenStitch> stitches, Rhythm rhythm, Wording wording)
    {
        var table = new Tag(TagKind.Table);
        var head = new Tag(TagKind.TableRow, table);
        var (first, last, heading) = stretch;
        var styles = rhythm.Styles;
        var widths = Widths(piece, last, rhythm, wording);
        (string Text, TextStyle Style)[] names = [(wording.RowColumn, styles.Quiet), (wording.FromColumn, styles.Quiet), (heading ?? "", styles.Strong)];
        TableRow? Head(bool tagged) => heading is null ? null : Row(head, names.Select(name => new Words(name.Text, name.Style, tagged ? new Tag(TagKind.HeaderCell, head) : null)).ToSequence<Block>(), (widths, rhythm));
        var rows = new List<TableRow>();
        AddStitches(rows, piece, stitches.Where(stitch => stitch.AfterRow < first), (widths, rhythm, wording), table);
        for (var number = first; number <= last; number++)
        {
            rows.Add(WrittenRow(piece, number, (widths, rhythm, wording), table));
            AddStitches(rows, piece, stitches.Where(stitch => stitch.AfterRow == number), (widths, rhythm, wording), table);
        }

        return new Table(widths, Head(true), Head(false), rows.ToSequence(), rhythm.Padding)
        {
            HasTopRule = first == 1,
            FewestRows = rhythm.SharesLines ? 1 : rhythm.Styles == Styles.Large ? 2 : 3,
        };
    }

    private static Sequence<double> Widths(Piece piece, int last, Rhythm rhythm, Wording wording)
    {
        var gap = rhythm.SharesLines ? LeastGap : Gap;
        var (number, side) = (
            Math.Max(
                Math.Max(Lettering.Width(wording.RowColumn, rhythm.Styles.Quiet), Widest(wording.Number(last), rhythm.Styles.RowNumber)),
                piece.Stitches.Count == 0 ? 0 : Lettering.Width(wording.ThenLabel, rhythm.Styles.Quiet)) + gap,
            Math.Max(Lettering.Width(wording.FromColumn, rhythm.Styles.Quiet), Lettering.Width(wording.ShortHeading(Side.Right), rhythm.Styles.Body)) + gap);
        return rhythm.HasLongRows ? [Math.Max(number, side), 0] : [number, side];
    }

    // Of all numbers with as many figures: 180 is wider than 181.
    private static double Widest(string number, TextStyle style) =>
        "0123456789".Max(figure => Lettering.Width(string.Concat(number.Select(sign => char.IsAsciiDigit(sign) ? figure : sign)), style));

    // Where rows are long the side stands under the number.
    private static TableRow Row(Tag tag, Sequence<Block> cells, (Sequence<double> Widths, Rhythm Rhythm) with) => new(
        tag,
        with.Rhythm.HasLongRows ? [cells[0], new Loose(cells[1], with.Widths[0], -with.Widths[0], with.Rhythm.Styles.RowNumber.LineHeight), .. cells.Skip(2)] : cells);

    private static TableRow WrittenRow(Piece piece, int number, (Sequence<double> Widths, Rhythm Rhythm, Wording Wording) with, Tag table)
    {
        var row = new Tag(TagKind.TableRow, table);
        var reading = piece.Reading(number);
        var (styles, wording) = (with.Rhythm.Styles, with.Wording);
        return Row(
            row,
            [
                new Words(wording.Number(number), styles.RowNumber, new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row }),
                new Words(wording.ShortHeading(reading.Key.From), styles.Body with { Leading = styles.Directions.LineHeight / styles.Body.Em }, new Tag(TagKind.Cell, row)),
                Directions(piece, number, reading, row, (with.Rhythm, wording, with.Widths.Sum())),
            ],
            (with.Widths, with.Rhythm));
    }

    // The maker's own words stand below what was computed, and say whose they are.
    private static Block Directions(Piece piece, int number, Reading reading, Tag row, (Rhythm Rhythm, Wording Wording, double Left) with)
    {
        var cell = new Tag(TagKind.Cell, row);
        var (styles, wording) = (with.Rhythm.Styles, with.Wording);
        var notes = with.Rhythm.SharesLines ? wording.FewRowNotes(piece, number) : wording.RowNotes(piece, number);
        var directions = new Followed(
            with.Rhythm.InShort
                ? new Words(wording.ShortText(reading.Writing), styles.Directions, new Tag(TagKind.Paragraph, cell) { ActualText = wording.WritingText(reading.Writing) })
                : new Words(wording.WritingText(reading.Writing), styles.Directions, new Tag(TagKind.Paragraph, cell)),
            notes.Length == 0 ? null : new Words(notes, styles.Quiet, new Tag(TagKind.Span, cell)),
            with.Rhythm.InShort ? with.Left : 0);
        var own = wording.OwnLines(piece.OwnAt(number)).SelectMany(line => line.Split('\n')).ToList();
        return own.Count == 0
            ? directions
            : new Whole(new Stack(
            [
                new Stacked(0, directions),
                .. own.Select(line => new Stacked(0, new Words(line, styles.Quiet, Own(line)))),
            ]));

        Tag Own(string line)
        {
            var paragraph = new Tag(TagKind.Paragraph, cell) { Language = TitleBlock.LanguageOf(piece, wording) };
            var target = piece.OwnAt(number).Videos.Select(video => video.Address).FirstOrDefault(address => line.EndsWith(address, StringComparison.Ordinal));
            return target is null ? paragraph : new Tag(TagKind.Link, paragraph) { Target = target };
        }
    }

    private static void AddStitches(List<TableRow> rows, Piece piece, IEnumerable<WovenStitch> stitches, (Sequence<double> Widths, Rhythm Rhythm, Wording Wording) with, Tag table)
    {
        foreach (var stitch in stitches)
        {
            var row = new Tag(TagKind.TableRow, table);
            rows.Add(Row(
                row,
                [
                    new Words(with.Wording.ThenLabel, with.Rhythm.Styles.Quiet, new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row }),
                    new Words(with.Wording.ShortHeading(stitch.From), with.Rhythm.Styles.Body, new Tag(TagKind.Cell, row)),
                    new Words(with.Rhythm.SharesLines ? with.Wording.ShortStitchText(stitch.Stitch) : with.Wording.StitchText(piece, stitch), with.Rhythm.Styles.Body, new Tag(TagKind.Cell, row)),
                ],
                (with.Widths, with.Rhythm)) with { IsBound = rows.Count > 0 });
        }
    }
}
