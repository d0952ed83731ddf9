using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>One row of a table. Only its last cell may go on on another page, so that rows are read in order.</summary>
/// <param name="Tag">The row's node.</param>
/// <param name="Cells">One block a column; each carries its own tags.</param>
internal sealed record TableRow(Tag Tag, Sequence<Block> Cells)
{
    /// <summary>Whether a page never begins with it: it belongs to the row before.</summary>
    public bool IsBound { get; init; }
}

/// <summary>
/// Rows of cells with a thin rule between them. Where it goes on on another page the header row is painted again, as decoration.
/// </summary>
/// <param name="Columns">Width of each column but the last in millimetres; the last takes what is left.</param>
/// <param name="Header">The header row, or null.</param>
/// <param name="Again">The header row as decoration, or null.</param>
/// <param name="Rows">The rows.</param>
/// <param name="Padding">Above and below what stands in a row, in millimetres.</param>
/// <param name="Continued">Whether the header row stands on an earlier page.</param>
internal sealed record Table(Sequence<double> Columns, TableRow? Header, TableRow? Again, Sequence<TableRow> Rows, double Padding, bool Continued = false) : Block
{
    /// <summary>So many rows stand at the foot of a page at least: a heading and one row are easily overlooked there.</summary>
    public int FewestRows { get; init; } = 3;

    /// <summary>Whether there is a rule above the first row where there are no heads.</summary>
    public bool HasTopRule { get; init; } = true;

    /// <summary>Whether a thin rule stands under each row.</summary>
    public bool HasRules { get; init; } = true;

    private const double Gutter = 3;
    private const double HeaderRule = 0.35;
    private const double Rule = 0.12;

    public override Fit Fit(double width, double height, bool fresh)
    {
        var header = (Continued ? Again : Header) is { } names ? FitRow(names, width, height, true) : new RowFit(Items.None, 0, null);
        var items = new List<Items> { header.Items };
        var used = header.Height;
        if (header.Height > 0 || HasTopRule)
        {
            items.Add([RuleAt(used, width, header.Height > 0 ? HeaderRule : Rule)]);
        }

        for (var i = 0; i < Rows.Count; i++)
        {
            var row = FitRow(Rows[i], width, height - used, fresh && i == 0);
            if (row.Rest is null && !(fresh && i == 0) && i + 1 < Rows.Count && Rows[i + 1].IsBound && FitRow(Rows[i + 1], width, height - used - row.Height, false).Rest is not null)
            {
                row = new RowFit([], 0, Rows[i]);
            }

            if (!row.Items.IsEmpty)
            {
                items.Add(row.Items.Moved(0, used));
                used += row.Height;
                items.Add(HasRules ? [RuleAt(used, width, Rule)] : Items.None);
            }

            if (row.Rest is { } rest)
            {
                var tooFew = row.Items.IsEmpty && (i == 0 || (i < FewestRows && !fresh));
                return tooFew
                    ? Print.Fit.Nothing(this)
                    : new Fit(Items.Joined(items.ToSequence()), used, this with { Rows = [rest, .. Rows.Skip(i + 1)], Continued = true });
            }
        }

        return new Fit(Items.Joined(items.ToSequence()), used, null);
    }

    private RowFit FitRow(TableRow row, double width, double height, bool fresh)
    {
        var items = new List<Items>();
        var tallest = 0.0;
        var left = 0.0;
        for (var i = 0; i < row.Cells.Count; i++)
        {
            var isLast = i == row.Cells.Count - 1;
            var room = isLast ? width - left : Columns[i] - Gutter;
            var fit = row.Cells[i].Fit(room, isLast ? height - (2 * Padding) : double.PositiveInfinity, isLast && fresh);
            items.Add(fit.Items.Moved(left, Padding));
            tallest = Math.Max(tallest, fit.Height);
            if (isLast && (fit.IsNothing || (tallest + (2 * Padding) > height && !fresh)))
            {
                return new RowFit(Items.None, 0, row);
            }

            if (isLast && fit.Rest is { } rest)
            {
                var empty = Enumerable.Repeat<Block>(new Picture(0, 0, []), row.Cells.Count - 1);
                return new RowFit(Items.Joined(items.ToSequence()), tallest + (2 * Padding), row with { Cells = [.. empty, rest] });
            }

            left += isLast ? 0 : Columns[i];
        }

        return new RowFit(Items.Joined(items.ToSequence()), tallest + (2 * Padding), null);
    }

    private static Placed RuleAt(double y, double width, double thickness) =>
        new(new StrokeMark(0, y, [[new Spot(0, 0), new Spot(width, 0)]], false, thickness, 0.55), null);

    private sealed record RowFit(Items Items, double Height, TableRow? Rest);
}
