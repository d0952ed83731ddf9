using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>
/// The shaft plan as tables of words, at the very end and not split where it fits a page, but in large print; nothing where it would be of no use.
/// </summary>
internal static class ShaftsBlock
{
    private const double HeadWidth = 34;
    private const double HeadGap = 6;
    private const double Endless = 10_000;
    private const double Saving = 0.75;

    public static IEnumerable<Stacked> Of(Piece piece, Rhythm rhythm, Wording wording, double width)
    {
        var plan = ShaftPlan.Of(piece);
        if (!plan.IsShown)
        {
            yield break;
        }

        var tables = ShaftTables.Of(piece, plan, wording).All(wording)
            .Select(table => new Stacked(rhythm.Part, new Whole(new Headed(Headings.Part(table.Title, rhythm), 1, Lines(table.Heads, table.Lines, rhythm)))))
            .ToSequence();
        var text = $"{wording.ShaftsText(piece, plan)} {wording.ShaftsForWhom}";
        var section = new Headed(
            Headings.Section(wording.ShaftsTitle, rhythm),
            1.5,
            new Stack(
            [
                new Stacked(0, new Words(text, rhythm.Styles.Body, new Tag(TagKind.Paragraph))),
                .. IsNarrow(tables, rhythm, width) ? [new Stacked(rhythm.Part, new TwoColumns(new Stack(tables), Rhythm.ColumnGap))] : tables,
            ]));
        yield return new Stacked(rhythm.Section, rhythm.Styles == Styles.Large ? section : new Whole(section));
    }

    // Where two columns save room, they are taken.
    private static bool IsNarrow(Sequence<Stacked> tables, Rhythm rhythm, double width) =>
        rhythm.Styles != Styles.Large
        && new TwoColumns(new Stack(tables), Rhythm.ColumnGap).Fit(width, Endless, true).Height < Saving * new Stack(tables).Fit(width, Endless, true).Height;

    private static Table Lines(HeadedLine heads, Sequence<HeadedLine> lines, Rhythm rhythm)
    {
        var table = new Tag(TagKind.Table);
        var head = new Tag(TagKind.TableRow, table);
        Sequence<string> names = [heads.Head, heads.Text];
        return new Table(
            [Math.Max(HeadWidth, lines.Prepend(heads).Max(line => Lettering.Width(line.Head, rhythm.Styles.Strong)) + HeadGap)],
            new TableRow(head, names.Select(Block (name) => new Words(name, rhythm.Styles.Quiet, new Tag(TagKind.HeaderCell, head))).ToSequence()),
            new TableRow(head, names.Select(Block (name) => new Words(name, rhythm.Styles.Quiet, null)).ToSequence()),
            lines.Select(line => Row(line, table, rhythm)).ToSequence(),
            rhythm.Padding);
    }

    private static TableRow Row(HeadedLine line, Tag table, Rhythm rhythm)
    {
        var row = new Tag(TagKind.TableRow, table);
        return new TableRow(row,
        [
            new Words(line.Head, rhythm.Styles.Strong, new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row }),
            new Words(line.Text, rhythm.Styles.Body, new Tag(TagKind.Cell, row)),
        ]);
    }
}
