namespace PatternShop.Weave;

/// <summary>Gives threads names so that two have the same name exactly when they are equal in every cell.</summary>
internal static class ThreadNames
{
    /// <summary>For every row the first row, from 0, that is equal to it.</summary>
    public static int[] OfRows(BitGrid grid)
    {
        var first = new Dictionary<int, int>(new SameCells(grid));
        var names = new int[grid.Rows];
        for (var row = 0; row < names.Length; row++)
        {
            names[row] = first.TryAdd(row, row) ? row : first[row];
        }

        return names;
    }

    /// <summary>For every end the first end, from 0, that is equal to it.</summary>
    public static int[] OfEnds(BitGrid grid) => OfRows(grid.Transpose());

    // Two rows with one hash are still compared cell by cell.
    private sealed class SameCells(BitGrid grid) : IEqualityComparer<int>
    {
        public bool Equals(int x, int y) => grid.RowWords(x).SequenceEqual(grid.RowWords(y));

        public int GetHashCode(int row)
        {
            var hash = 0UL;
            foreach (var word in grid.RowWords(row))
            {
                hash = (hash ^ word) * 0x9E3779B97F4A7C15;
                hash ^= hash >> 29;
            }

            return (int)(hash ^ (hash >> 32));
        }
    }
}
