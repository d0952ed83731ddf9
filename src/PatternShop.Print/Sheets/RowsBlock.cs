using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>The written rows, in the order of work: a table for each stretch, each row with the side at which it starts.</summary>
internal static class RowsBlock
{
    private const double NumberWidth = 14;
    private const double NumberGap = 4;
    private const double StartWidth = 49;

    public static IEnumerable<Stacked> Of(Piece piece, Rhythm rhythm, Wording wording)
    {
        var parts = Schedule.Of(piece).SelectMany(line => Parts(piece, line, rhythm, wording)).ToList();
        return parts.Select(part => new Stacked(
            rhythm.Part,
            parts.Count > 1 && part.Heading.Length > 0 ? new Headed(Headings.Part(part.Heading), 1, part.Body) : part.Body));
    }

    private static IEnumerable<(string Heading, Block Body)> Parts(Piece piece, ScheduleLine line, Rhythm rhythm, Wording wording) => line switch
    {
        RowsOnce rows => [(wording.RowsHeading(line), Rows(piece, rows.First, rows.Last, [], rhythm, wording))],
        RowsAgain again => Enumerable.Range(1, again.Band.PrintedTimes).Select(time => (wording.TimeHeading(again.Band, time), (Block)Rows(
            piece,
            again.Band.FirstRowOf(time),
            again.Band.FirstRowOf(time + 1) - 1,
            again.Stitches.Where(stitch => stitch.Time == time).ToSequence(),
            rhythm,
            wording))),
        StitchOnce => [(string.Empty, new Words(wording.ScheduleText(piece, line), Styles.Body, new Tag(TagKind.Paragraph)))],
        _ => throw new InvalidOperationException($"No way to print {line.GetType().Name}."),
    };

    private static Table Rows(Piece piece, int first, int last, Sequence<WovenStitch> stitches, Rhythm rhythm, Wording wording)
    {
        var table = new Tag(TagKind.Table);
        var head = new Tag(TagKind.TableRow, table);
        string[] names = [wording.RowColumn, wording.StartsColumn, wording.DirectionsColumn];
        var rows = new List<TableRow>();
        AddStitches(rows, piece, stitches.Where(stitch => stitch.AfterRow < first), wording, table);
        for (var number = first; number <= last; number++)
        {
            rows.Add(WrittenRow(piece, number, wording, table));
            AddStitches(rows, piece, stitches.Where(stitch => stitch.AfterRow == number), wording, table);
        }

        return new Table(
            [Math.Max(NumberWidth, Lettering.Width(wording.Number(last), Styles.RowNumber) + NumberGap), StartWidth],
            new TableRow(head, names.Select(Block (name) => new Words(name, Styles.Quiet, new Tag(TagKind.HeaderCell, head))).ToSequence()),
            new TableRow(head, names.Select(Block (name) => new Words(name, Styles.Quiet, null)).ToSequence()),
            rows.ToSequence(),
            rhythm.Padding);
    }

    private static TableRow WrittenRow(Piece piece, int number, Wording wording, Tag table)
    {
        var row = new Tag(TagKind.TableRow, table);
        var reading = piece.Reading(number);
        var notes = wording.RowNotes(piece, number);
        var starts = new Tag(TagKind.Cell, row);
        var side = new Words(wording.Heading(reading.Key.From), Styles.Body with { Leading = 1.6 }, new Tag(TagKind.Paragraph, starts));
        return new TableRow(row,
        [
            new Words(wording.Number(number), Styles.RowNumber, new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row }),
            new Stack(notes.Length == 0 ? [new Stacked(0, side)] : [new Stacked(0, side), new Stacked(0, new Words(notes, Styles.Quiet, new Tag(TagKind.Paragraph, starts)))]),
            Directions(piece, number, reading, row, wording),
        ]);
    }

    // the maker's own words stand below what was computed, and say whose they are
    private static Block Directions(Piece piece, int number, Reading reading, Tag row, Wording wording)
    {
        var cell = new Tag(TagKind.Cell, row);
        var text = wording.WritingText(reading.Writing);
        var own = wording.OwnLines(piece.OwnAt(number)).SelectMany(line => line.Split('\n')).ToList();
        return own.Count == 0
            ? new Words(text, Styles.Directions, cell)
            : new Stack(
            [
                new Stacked(0, new Words(text, Styles.Directions, new Tag(TagKind.Paragraph, cell))),
                .. own.Select(line => new Stacked(0, new Words(line, Styles.Quiet, new Tag(TagKind.Paragraph, cell) { Language = TitleBlock.LanguageOf(piece, wording) }))),
            ]);
    }

    private static void AddStitches(List<TableRow> rows, Piece piece, IEnumerable<WovenStitch> stitches, Wording wording, Tag table)
    {
        foreach (var stitch in stitches)
        {
            var row = new Tag(TagKind.TableRow, table);
            rows.Add(new TableRow(row,
            [
                new Words(wording.ThenLabel, Styles.Quiet, new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row }),
                new Words(wording.Heading(stitch.From), Styles.Body, new Tag(TagKind.Cell, row)),
                new Words(wording.StitchText(piece, stitch), Styles.Body, new Tag(TagKind.Cell, row)),
            ]));
        }
    }
}
