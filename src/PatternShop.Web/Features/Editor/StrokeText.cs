using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>
/// The text in which the browser keeps and sends a stroke: "8.8 o0:3-5/2,7 u4:0" is a stroke on a motif of 8 rows of 8 ends
/// that sets row 0, ends 3 to 5 and row 1, ends 2 and 7 over, and row 4, end 0 under. Numbers are in base 36, rows and ends
/// from 0; a row without its number is the one after the last. "8.8 c0:0-3:5=2.2:AQI=" covers rows 0 to 3 of ends 0 to 5 with a piece
/// of 2 rows of 2 ends, packed as <see cref="MotifCells"/> are; with p for c a copy is put down.
/// </summary>
internal static class StrokeText
{
    /// <summary>Characters of a message: those of a piece as large as a motif can be, and what stands round it. Below what closes the connection.</summary>
    public const int Most = 200_000;

    // so that the row after it is none either
    private const int NoRow = -2;

    /// <summary>The stroke; null when the text is none.</summary>
    public static SetCells? Read(string text)
    {
        if (text.Length > Most || text.Split(' ') is not [var size, .. var groups] || groups.Length is 0 or > 2)
        {
            return null;
        }

        int[] sizes = [.. size.Split('.').Select(Number)];
        if (sizes is not [>= 1 and <= Bounds.MotifRows, >= 1 and <= Bounds.MotifEnds])
        {
            return null;
        }

        if (groups is [['c' or 'p', ..] covering])
        {
            return CoveringText.Read(sizes[0], sizes[1], covering, Number);
        }

        var cells = new CellSet(sizes[0], sizes[1]);
        return groups.All(group => Group(cells, group)) ? cells.Stroke() : null;
    }

    private static bool Group(CellSet cells, string group)
    {
        if (group is not ['o' or 'u', .. var lines])
        {
            return false;
        }

        var row = NoRow;
        foreach (var line in lines.Split('/'))
        {
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            row = colon < 0 ? row + 1 : Number(line[..colon]);
            if (!line[(colon + 1)..].Split(',').All(run => Run(cells, row, run, group[0] == 'o')))
            {
                return false;
            }
        }

        return true;
    }

    private static bool Run(CellSet cells, int row, string run, bool over)
    {
        var dash = run.IndexOf('-', StringComparison.Ordinal);
        var first = Number(dash < 0 ? run : run[..dash]);
        var last = dash < 0 ? first : Number(run[(dash + 1)..]);
        return cells.TrySet(row, first, last, over);
    }

    // base 36, or -1
    private static int Number(string text)
    {
        var value = 0;
        foreach (var letter in text)
        {
            var digit = letter is >= 'a' and <= 'z' ? letter - 'a' + 10 : char.IsAsciiDigit(letter) ? letter - '0' : -1;
            if (digit < 0 || text.Length > 4)
            {
                return -1;
            }

            value = (value * 36) + digit;
        }

        return text.Length == 0 ? -1 : value;
    }

    private sealed class CellSet(int rows, int ends)
    {
        private readonly int _perRow = (ends + 63) >> 6;
        private readonly ulong[] _cells = new ulong[rows * ((ends + 63) >> 6)];
        private readonly ulong[] _over = new ulong[rows * ((ends + 63) >> 6)];
        private bool _any;

        public bool TrySet(int row, int first, int last, bool over)
        {
            if (row < 0 || row >= rows || first < 0 || last < first || last >= ends)
            {
                return false;
            }

            for (var end = first; end <= last; end++)
            {
                var (word, bit) = ((row * _perRow) + (end >> 6), 1UL << (end & 63));
                _cells[word] |= bit;
                _over[word] = over ? _over[word] | bit : _over[word] & ~bit;
            }

            return _any = true;
        }

        public SetCells? Stroke() => _any ? new SetCells(BitGrid.FromWords(rows, ends, _cells), BitGrid.FromWords(rows, ends, _over)) : null;
    }
}
