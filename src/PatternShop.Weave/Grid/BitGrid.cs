using System.Numerics;
using System.Runtime.InteropServices;

namespace PatternShop.Weave;

/// <summary>
/// An immutable grid of rows × columns of cells that are true or false. In a chart a row is a row, a column an end
/// (both from 0: row 0 is woven first, column 0 is the weaver's left) and a true cell means that the weft lies
/// <b>over</b> the end. Rows are packed into 64-bit words, the lowest bit leftmost; bits past the last column are 0.
/// </summary>
public sealed class BitGrid : IEquatable<BitGrid>
{
    private readonly ulong[] _words;

    private BitGrid(int rows, int columns, ulong[] words)
    {
        Rows = rows;
        Columns = columns;
        WordsPerRow = WordsFor(columns);
        _words = words;
    }

    /// <summary>Number of rows, at least 1.</summary>
    public int Rows { get; }

    /// <summary>Number of columns, at least 1.</summary>
    public int Columns { get; }

    /// <summary>Number of 64-bit words that hold one row.</summary>
    public int WordsPerRow { get; }

    /// <summary>The cell at a row and a column, both from 0.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside the grid.</exception>
    public bool this[int row, int column]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(row);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(row, Rows);
            ArgumentOutOfRangeException.ThrowIfNegative(column);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(column, Columns);
            return (_words[(row * WordsPerRow) + (column >> 6)] >> (column & 63) & 1) != 0;
        }
    }

    /// <summary>Number of true cells.</summary>
    public int Count
    {
        get
        {
            var count = 0;
            foreach (var word in _words)
            {
                count += BitOperations.PopCount(word);
            }

            return count;
        }
    }

    /// <summary>The packed words of one row.</summary>
    public ReadOnlySpan<ulong> RowWords(int row) => _words.AsSpan(row * WordsPerRow, WordsPerRow);

    /// <summary>Makes a grid whose cell (row, column), both from 0, is what <paramref name="cell"/> answers.</summary>
    public static BitGrid Create(int rows, int columns, Func<int, int, bool> cell)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        ArgumentNullException.ThrowIfNull(cell);
        var perRow = WordsFor(columns);
        var words = new ulong[rows * perRow];
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                if (cell(row, column))
                {
                    words[(row * perRow) + (column >> 6)] |= 1UL << (column & 63);
                }
            }
        }

        return new BitGrid(rows, columns, words);
    }

    /// <summary>Makes a grid from packed words, rows after one another; bits past the last column are cleared.</summary>
    /// <exception cref="ArgumentException">The number of words does not fit the size.</exception>
    public static BitGrid FromWords(int rows, int columns, ReadOnlySpan<ulong> words)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        var perRow = WordsFor(columns);
        if (words.Length != rows * perRow)
        {
            throw new ArgumentException($"A grid of {rows} × {columns} takes {rows * perRow} words, not {words.Length}.", nameof(words));
        }

        var copy = words.ToArray();
        var lastMask = (columns & 63) == 0 ? ulong.MaxValue : (1UL << (columns & 63)) - 1;
        for (var row = 0; row < rows; row++)
        {
            copy[(row * perRow) + perRow - 1] &= lastMask;
        }

        return new BitGrid(rows, columns, copy);
    }

    /// <summary>The same grid with one cell set.</summary>
    public BitGrid With(int row, int column, bool value)
    {
        if (this[row, column] == value)
        {
            return this;
        }

        var words = (ulong[])_words.Clone();
        words[(row * WordsPerRow) + (column >> 6)] ^= 1UL << (column & 63);
        return new BitGrid(Rows, Columns, words);
    }

    /// <summary>The same grid with the cells that are true in <paramref name="chosen"/> taken from <paramref name="values"/>.</summary>
    /// <exception cref="ArgumentException">The three grids are not of one size.</exception>
    public BitGrid With(BitGrid chosen, BitGrid values)
    {
        ArgumentNullException.ThrowIfNull(chosen);
        ArgumentNullException.ThrowIfNull(values);
        if ((Rows, Columns) != (chosen.Rows, chosen.Columns) || (Rows, Columns) != (values.Rows, values.Columns))
        {
            throw new ArgumentException($"Grids of {Rows} × {Columns} are needed.", nameof(chosen));
        }

        var words = (ulong[])_words.Clone();
        for (var i = 0; i < words.Length; i++)
        {
            words[i] = (words[i] & ~chosen._words[i]) | (values._words[i] & chosen._words[i]);
        }

        return new BitGrid(Rows, Columns, words);
    }

    /// <summary>Some neighbouring columns of the grid, all rows.</summary>
    /// <exception cref="ArgumentOutOfRangeException">They do not lie within the grid.</exception>
    public BitGrid ColumnsOf(int first, int count)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(first);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, Columns - first);
        var perRow = WordsFor(count);
        var words = new ulong[Rows * perRow];
        var (from, shift) = (first >> 6, first & 63);
        for (var row = 0; row < Rows; row++)
        {
            var source = RowWords(row);
            for (var i = 0; i < perRow; i++)
            {
                var low = source[from + i] >> shift;
                var high = shift == 0 || from + i + 1 >= source.Length ? 0 : source[from + i + 1] << (64 - shift);
                words[(row * perRow) + i] = low | high;
            }
        }

        return FromWords(Rows, count, words);
    }

    /// <summary>Rows become columns and columns rows: cell (r, c) of the result is cell (c, r) of this grid.</summary>
    public BitGrid Transpose()
    {
        var perRow = WordsFor(Rows);
        var words = new ulong[Columns * perRow];
        Span<ulong> block = stackalloc ulong[64];
        for (var top = 0; top < Rows; top += 64)
        {
            var rows = Math.Min(64, Rows - top);
            for (var word = 0; word < WordsPerRow; word++)
            {
                block.Clear();
                for (var row = 0; row < rows; row++)
                {
                    block[row] = _words[((top + row) * WordsPerRow) + word];
                }

                TransposeBlock(block);
                var columns = Math.Min(64, Columns - (word << 6));
                for (var column = 0; column < columns; column++)
                {
                    words[(((word << 6) + column) * perRow) + (top >> 6)] = block[column];
                }
            }
        }

        return new BitGrid(Columns, Rows, words);
    }

    // 64 × 64 cells: the two squares beside the diagonal change places, then the same within squares of half the side.
    private static void TransposeBlock(Span<ulong> block)
    {
        var mask = 0x00000000FFFFFFFFUL;
        for (var side = 32; side > 0; side >>= 1, mask ^= mask << side)
        {
            for (var row = 0; row < 64; row = (row + side + 1) & ~side)
            {
                var changed = ((block[row] >> side) ^ block[row + side]) & mask;
                block[row] ^= changed << side;
                block[row + side] ^= changed;
            }
        }
    }

    public bool Equals(BitGrid? other) =>
        other is not null && Rows == other.Rows && Columns == other.Columns && _words.AsSpan().SequenceEqual(other._words);

    public override bool Equals(object? obj) => Equals(obj as BitGrid);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        hash.Add(Rows);
        hash.Add(Columns);
        hash.AddBytes(MemoryMarshal.AsBytes<ulong>(_words));
        return hash.ToHashCode();
    }

    /// <summary>The text form (<see cref="GridText"/>) on one line, rows separated by " / ".</summary>
    public override string ToString() => string.Join(" / ", GridText.Write(this));

    private static int WordsFor(int columns) => (columns + 63) >> 6;
}
