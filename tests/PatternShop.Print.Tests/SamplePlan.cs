using PatternShop.Weave;

namespace PatternShop.Print.Tests;

/// <summary>A document that uses every kind of block and mark, over several pages.</summary>
internal static class SamplePlan
{
    public static PrintPlan Make(string title = "Small diamond Ωμέγα Ж 中👩‍🌾", Paper? paper = null)
    {
        var parts = new List<Stacked>
        {
            new(0, new Words(title, new TextStyle(22, true), new Tag(TagKind.Heading1))),
            new(3, new Words("Row 1 starts at the right ← and goes on → until ↑ or ↓ and a box ☐. " + string.Concat(Enumerable.Repeat("A line of words that wraps. ", 30)), new TextStyle(11), new Tag(TagKind.Paragraph))),
            new(6, new Headed(new Words("The figure", new TextStyle(15, true), new Tag(TagKind.Heading2)), 2, Figure())),
            new(6, new Headed(new Words("The rows", new TextStyle(15, true), new Tag(TagKind.Heading2)), 2, Rows(60))),
        };
        var facts = new FileFacts(title, "en", "Not issued", "Free to weave & sell", "A chart with directions");
        var size = paper ?? Paper.A4;
        var pages = PagePlanner.Plan(size, new Margins(20, 18, 20, 20), new Stack(parts.ToSequence()), (page, of) =>
            TextLine.Set($"Page {page} of {of}", 20, size.Height - 10, new TextStyle(9, false, 0.35), null));
        return new PrintPlan(size, facts, pages);
    }

    private static Picture Figure()
    {
        var figure = new Tag(TagKind.Figure) { Alternative = "Two squares" };
        Sequence<Sequence<Spot>> square = [[new(0, 0), new(20, 0), new(20, 20), new(0, 20)]];
        return new Picture(60, 22, [
            new Placed(new AreaMark(0, 0, square, 0.1), figure),
            new Placed(new StrokeMark(30, 0, square, true, 0.4, 0.1), figure),
            .. TextLine.Set("twenty", 52, 12, new TextStyle(10), figure),
        ]);
    }

    private static Table Rows(int count)
    {
        var table = new Tag(TagKind.Table);
        var head = new Tag(TagKind.TableRow, table);
        string[] names = ["Row", "From", "Directions"];
        return new Table(
            [14, 40],
            new TableRow(head, names.Select(Block (n) => new Words(n, new TextStyle(11, true), new Tag(TagKind.HeaderCell, head))).ToSequence()),
            new TableRow(head, names.Select(Block (n) => new Words(n, new TextStyle(11, true), null)).ToSequence()),
            Enumerable.Range(1, count).Select(i => Row(i, table)).ToSequence());
    }

    private static TableRow Row(int number, Tag table)
    {
        var row = new Tag(TagKind.TableRow, table);
        var text = string.Join(", ", Enumerable.Range(1, number == 20 ? 900 : (number * 7) % 40).Select(i => $"over {i}"));
        return new TableRow(row, [
            new Words($"{number}", new TextStyle(11, true), new Tag(TagKind.HeaderCell, row) { Scope = HeaderScope.Row }),
            new Words(number % 2 == 0 ? "from the left →" : "← from the right", new TextStyle(11), new Tag(TagKind.Cell, row)),
            new Words(text.Length == 0 ? "-" : text, new TextStyle(12), new Tag(TagKind.Cell, row)),
        ]);
    }
}
