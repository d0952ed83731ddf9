using System.Globalization;
using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>What was typed for a pattern that begins blank.</summary>
public sealed record BlankPattern(string Title, string Ends, string Rows)
{
    public static BlankPattern Begin { get; } = new("", "8", "8");

    internal static BlankPattern Read(IFormCollection form) =>
        new(form[nameof(Title)].ToString(), form[nameof(Ends)].ToString(), form[nameof(Rows)].ToString());

    /// <summary>The pattern, every cell under; or null and all that is wrong.</summary>
    internal PatternDocument? Document(out IReadOnlyList<FieldProblem> problems)
    {
        var (ends, rows) = (Size(Ends, Bounds.MotifEnds), Size(Rows, Bounds.MotifRows));
        var document = Make(Title.Trim(), ends ?? 1, rows ?? 1);
        problems =
        [
            .. DocumentRules.Check(document).Concat(NewWords.Check(document)).Select(problem => new FieldProblem(nameof(Title), problem.What, problem.Remedy)),
            .. Wrong(nameof(Ends), "ends", ends, Bounds.MotifEnds),
            .. Wrong(nameof(Rows), "rows", rows, Bounds.MotifRows),
        ];
        return problems.Count == 0 ? document : null;
    }

    private static int? Size(string typed, int most) =>
        int.TryParse(typed.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var size) && size >= 1 && size <= most ? size : null;

    private static IEnumerable<FieldProblem> Wrong(string field, string what, int? size, int most) => size is null
        ? [new FieldProblem(field, $"The number of {what} does not do.", string.Create(CultureInfo.InvariantCulture, $"Write a whole number from 1 to {most}."))]
        : [];

    private static PatternDocument Make(string title, int ends, int rows) => new(
        title,
        "en",
        "",
        "",
        BitGrid.Create(rows, ends, static (_, _) => false),
        new WidthPlan(1, 0, 0, new FloatingSelvedges(EdgeWay.Alike, Stroke.Under)),
        new RowPlan([new Weft(Side.Right)], Stroke.Under, [new Repeat(2, [new ChartRows(1, rows, 1)])]),
        new Gauge(new Density(4, DensityUnit.PerInch), new Density(4, DensityUnit.PerInch)),
        GlyphStyle.Cells);
}
