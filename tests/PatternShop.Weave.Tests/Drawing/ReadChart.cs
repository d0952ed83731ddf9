using System.Globalization;

namespace PatternShop.Weave.Tests;

/// <summary>
/// Reads a chart off its picture as a weaver does: a column is above its end's number, a row beside its own, and a cell
/// is over where there is a dark patch beside its middle.
/// </summary>
internal sealed class ReadChart
{
    private readonly SvgPicture _picture;

    private ReadChart(SvgPicture picture, double cell)
    {
        _picture = picture;
        Cell = cell;
        Ends = picture.Texts.Where(text => text.Anchor == "middle" && IsEnd(text.Text) && text.Y > picture.Texts.Where(IsRow).Max(row => row.Y))
            .OrderBy(text => text.X).Select(text => (text.Text, text.X)).ToList();
        Rows = picture.Texts.Where(IsRow)
            .GroupBy(text => Math.Round(text.Y, 2))
            .Select(sides => (Number: int.Parse(sides.First().Text, CultureInfo.InvariantCulture), Middle: sides.First().Y - (sides.First().Size * 0.35), Sides: sides.OrderBy(text => text.X).ToList()))
            .OrderByDescending(row => row.Middle)
            .ToList();
    }

    /// <summary>Side of a cell in millimetres.</summary>
    public double Cell { get; }

    /// <summary>Ends from the left: name and middle.</summary>
    public IReadOnlyList<(string Name, double Middle)> Ends { get; }

    /// <summary>Rows from the bottom: number, middle and the numbers at both sides.</summary>
    public IReadOnlyList<(int Number, double Middle, List<PictureText> Sides)> Rows { get; }

    public static ReadChart Of(SvgPicture picture, double cell) => new(picture, cell);

    /// <summary>Whether the weft is over in a cell: dark beside the middle. An under cell is paper there and has a line in its middle.</summary>
    public bool IsOver(int row, int column)
    {
        var (x, y) = (Ends[column].Middle, Rows[row].Middle);
        var beside = _picture.ColourAt(x + (Cell * 0.25), y);
        var other = _picture.ColourAt(x - (Cell * 0.25), y);
        var middle = _picture.ColourAt(x, y);
        return (beside, other, middle) switch
        {
            ("#2b2b2b", "#2b2b2b", "#2b2b2b") => true,
            ("#fff", "#fff", "#111") => false,
            _ => throw new InvalidOperationException($"Cell {row}, {column} shows {other} {middle} {beside}."),
        };
    }

    // Row numbers stand at both sides, the one where the row starts in bold.
    private static bool IsRow(PictureText text) => text.Anchor is "start" or "end" && text.Text.All(char.IsAsciiDigit);

    private static bool IsEnd(string text) => text == "F" || text.All(char.IsAsciiDigit);
}
