namespace PatternShop.Weave;

/// <summary>
/// The border function of D. E. Knuth, J. H. Morris and V. R. Pratt, "Fast pattern matching in strings", SIAM J. Comput. 6 (1977)
/// 323-350, and what follows from it, all in time linear in the number of items.
/// </summary>
internal static class Borders
{
    /// <summary>
    /// For every length from 0 the length of the longest proper prefix of that many first items that is also their suffix; -1 at 0.
    /// </summary>
    public static int[] Of(ReadOnlySpan<int> items)
    {
        var borders = new int[items.Length + 1];
        borders[0] = -1;
        var border = -1;
        for (var i = 0; i < items.Length; i++)
        {
            while (border >= 0 && items[border] != items[i])
            {
                border = borders[border];
            }

            borders[i + 1] = ++border;
        }

        return borders;
    }

    /// <summary>Every k from 0 below the length, ascending, for which the ring read from its item k on is what is sought. Both are of one length.</summary>
    public static List<int> Rotations(ReadOnlySpan<int> ring, ReadOnlySpan<int> sought)
    {
        var found = new List<int>();
        var borders = Of(sought);
        var matched = 0;
        for (var i = 0; i < (2 * ring.Length) - 1; i++)
        {
            var item = ring[i < ring.Length ? i : i - ring.Length];
            if (matched == sought.Length)
            {
                matched = borders[matched];
            }

            while (matched >= 0 && sought[matched] != item)
            {
                matched = borders[matched];
            }

            if (++matched == sought.Length)
            {
                found.Add(i - sought.Length + 1);
            }
        }

        return found;
    }

    /// <summary>
    /// Every s from 0 below the length, ascending, for which the ring is mirrored by changing item i with item s - i (modulo the length).
    /// </summary>
    public static List<int> Axes(ReadOnlySpan<int> ring)
    {
        var backwards = new int[ring.Length];
        for (var i = 0; i < ring.Length; i++)
        {
            backwards[i] = ring[i == 0 ? 0 : ring.Length - i];
        }

        return Rotations(ring, backwards);
    }
}
