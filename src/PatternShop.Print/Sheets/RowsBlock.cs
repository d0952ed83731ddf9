using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>The written rows, in the order of work: a table for each stretch, each row with the side at which it starts.</summary>
internal static class RowsBlock
{
    private const double Gap = 4;
    /// <summary>Between two columns of rows, in millimetres.</summary>
    public const double ColumnGap = 7;

    /// <summary>Every stretch under each other; in two columns where the rhythm says so.</summary>
    public static Block Whole(Piece piece, Rhythm rhythm, Wording wording)
    {
        var all = new Stack(Of(piece, rhythm, wording).ToSequence());
        return rhythm.RowColumns == 2 ? new TwoColumns(all, ColumnGap) : all;
    }

    /// <summary>One row as it stands on the sheet.</summary>
    public static Table OneRow(Piece piece, int number, Rhythm rhythm, Wording wording)
    {
        var band = piece.Bands[piece.BandOf(number)];
        var table = new Tag(TagKind.Table);
        return new Table(Widths(band.FirstRow + band.PrintedRows - 1, rhythm, wording), null, null, [WrittenRow(piece, number, rhythm, wording, table)], rhythm.Padding);
    }

    private static IEnumerable<Stacked> Of(Piece piece, Rhythm rhythm, Wording wording)
    {
        var parts = Schedule.Of(piece).SelectMany(line => Parts(piece, line, rhythm, wording)).ToList();
        return parts.Select(part => new Stacked(rhythm.Part, part));
    }

    private static IEnumerable<Block> Parts(Piece piece, ScheduleLine line, Rhythm rhythm, Wording wording) => line switch
    {
        RowsOnce rows => [Rows(piece, (rows.First, rows.Last, wording.RowsHeading(line)), [], rhythm, wording)],
        RowsAgain again => Enumerable.Range(1, again.Band.PrintedTimes).Select(time => Rows(
            piece,
            (again.Band.FirstRowOf(time), again.Band.FirstRowOf(time + 1) - 1, wording.TimeHeading(again.Band, time)),
            again.Stitches.Where(stitch => stitch.Time == time).ToSequence(),
            rhythm,
            wording)),
        StitchOnce => [new Words(wording.ScheduleText(piece, line), rhythm.Styles.Body, new Tag(TagKind.Paragraph))],
        _ => throw new InvalidOperationException($"No way to print {line.GetType().Name}."),
    };

    private static Table Rows(Piece piece, (int First, int Last, string Heading) stretch, Sequence<WovenStitch> stitches, Rhythm rhythm, Wording wording)
    {
        var table = new Tag(TagKind.Table);
        var head = new Tag(TagKind.TableRow, table);
        var (first, last, heading) = stretch;
        var styles = rhythm.Styles;
        (string Text, TextStyle Style)[] names = [(wording.RowColumn, styles.Quiet), (wording.FromColumn, styles.Quiet), (heading, styles.Strong)];
        var rows = new List<TableRow>();
        AddStitches(rows, piece, stitches.Where(stitch => stitch.AfterRow < first), (rhythm, wording), table);
        for (var number = first; number <= last; number++)
        {
            rows.Add(WrittenRow(piece, number, rhythm, wording, table));
            AddStitches(rows, piece, stitches.Where(stitch => stitch.AfterRow == number), (rhythm, wording), table);
        }

        return new Table(
            Widths(last, rhythm, wording),
            new TableRow(head, names.Select(Block (name) => new Words(name.Text, name.Style, new Tag(TagKind.HeaderCell, head))).ToSequence()),
            new TableRow(head, names.Select(Block (name) => new Words(name.Text, name.Style, null)).ToSequence()),
            rows.ToSequence(),
            rhythm.Padding);
    }

    private static Sequence<double> Widths(int last, Rhythm rhythm, Wording wording) =>
    [
        Math.Max(Lettering.Width(wording.RowColumn, rhythm.Styles.Quiet), Lettering.Width(wording.Number(last), rhythm.Styles.RowNumber)) + Gap,
        Math.Max(Lettering.Width(wording.FromColumn, rhythm.Styles.Quiet), Lettering.Width(wording.ShortHeading(Side.Right), rhythm.Styles.Body)) + Gap,
    ];

    private static TableRow WrittenRow(Piece piece, int number, Rhythm rhythm, Wording wording, Tag table)
    {
        var row = new Tag(TagKind.TableRow, table);
        var reading = piece.Reading(number);
        var styles = rhythm.Styles;
        return new TableRow(row,
        [
            new Words(wording.Number(number), styles.RowNumber, new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row }),
            new Words(wording.ShortHeading(reading.Key.From), styles.Body with { Leading = styles.Directions.LineHeight / styles.Body.Em }, new Tag(TagKind.Cell, row)),
            Directions(piece, number, reading, row, (rhythm, wording)),
        ]);
    }

    // The maker's own words stand below what was computed, and say whose they are.
    private static Block Directions(Piece piece, int number, Reading reading, Tag row, (Rhythm Rhythm, Wording Wording) with)
    {
        var cell = new Tag(TagKind.Cell, row);
        var (styles, wording) = (with.Rhythm.Styles, with.Wording);
        var notes = wording.RowNotes(piece, number);
        var directions = new Followed(
            new Words(wording.WritingText(reading.Writing), styles.Directions, new Tag(TagKind.Paragraph, cell)),
            notes.Length == 0 ? null : new Words(notes, styles.Quiet, new Tag(TagKind.Span, cell)));
        var own = wording.OwnLines(piece.OwnAt(number)).SelectMany(line => line.Split('\n')).ToList();
        return own.Count == 0
            ? directions
            : new Stack(
            [
                new Stacked(0, directions),
                .. own.Select(line => new Stacked(0, new Words(line, styles.Quiet, Own(line)))),
            ]);

        Tag Own(string line)
        {
            var paragraph = new Tag(TagKind.Paragraph, cell) { Language = TitleBlock.LanguageOf(piece, wording) };
            var target = piece.OwnAt(number).Videos.Select(video => video.Address).FirstOrDefault(address => line.EndsWith(address, StringComparison.Ordinal));
            return target is null ? paragraph : new Tag(TagKind.Link, paragraph) { Target = target };
        }
    }

    private static void AddStitches(List<TableRow> rows, Piece piece, IEnumerable<WovenStitch> stitches, (Rhythm Rhythm, Wording Wording) with, Tag table)
    {
        foreach (var stitch in stitches)
        {
            var row = new Tag(TagKind.TableRow, table);
            rows.Add(new TableRow(row,
            [
                new Words(with.Wording.ThenLabel, with.Rhythm.Styles.Quiet, new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row }),
                new Words(with.Wording.ShortHeading(stitch.From), with.Rhythm.Styles.Body, new Tag(TagKind.Cell, row)),
                new Words(with.Wording.StitchText(piece, stitch), with.Rhythm.Styles.Body, new Tag(TagKind.Cell, row)),
            ]));
        }
    }
}
