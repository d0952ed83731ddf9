namespace PatternShop.Weave;

/// <summary>A part of a folded list: one step over some units, or a bracket around units that are done several times.</summary>
/// <param name="First">Its first unit, from 0.</param>
/// <param name="Length">Units of the step, or of the bracket once through.</param>
/// <param name="Times">1 for a step, 2 or more for a bracket.</param>
internal readonly record struct FoldedPart(int First, int Length, int Times);

/// <summary>
/// Writes a list with the fewest items: a step covers neighbouring units that belong together and is one item, a bracket is one item
/// more than the steps inside it, and brackets do not stand in brackets. Among equals it has the fewest parts.
/// </summary>
/// <remarks>
/// Any part of what a step covers is a step too, so inside a bracket steps as long as can be are the fewest. Best[j] is the fewest for the
/// first j units. A bracket that ends at j begins so many times its length before; all beginnings that share the length, and the
/// remainder by it, hold the same rows, so that only the best of them is kept. A bracket around something that is itself repeated is
/// never shorter than one around the smaller part.
/// </remarks>
internal sealed class LevelFolding
{
    // with it every list of up to 14,000 units is tried in full
    private const long Tries = 100_000_000;
    private const int Price = 32;

    private readonly int[] _units;
    private readonly int[] _reach;
    private readonly int _longest;
    private readonly long[] _best;
    private readonly FoldedPart[] _last;
    private readonly int[] _alike;
    private readonly Beginnings?[] _beginnings;

    private LevelFolding(int[] units, int[] reach)
    {
        _units = units;
        _reach = reach;
        _longest = (int)Math.Min(units.Length / 2, Math.Max(1, Tries / Math.Max(1, units.Length)));
        _best = new long[units.Length + 1];
        _last = new FoldedPart[units.Length + 1];
        _alike = new int[_longest + 1];
        _beginnings = new Beginnings?[_longest + 1];
    }

    /// <summary>The parts in order. Brackets of a list of more than 14,000 units are looked for up to 100,000,000 ÷ its length units.</summary>
    /// <param name="units">The units; equal numbers are the same unit.</param>
    /// <param name="reach">For every unit the place after the last one that a step beginning with it covers; never less than the one before's.</param>
    public static List<FoldedPart> Fold(int[] units, int[] reach)
    {
        var folding = new LevelFolding(units, reach);
        folding.Run();
        var parts = new List<FoldedPart>();
        for (var end = units.Length; end > 0;)
        {
            var part = folding._last[end];
            parts.Add(part);
            end = part.First;
        }

        parts.Reverse();
        return LongestFirst(parts, reach);
    }

    // Steps that follow one another could be parted elsewhere; the earlier one is made as long as can be.
    private static List<FoldedPart> LongestFirst(List<FoldedPart> parts, int[] reach)
    {
        var result = new List<FoldedPart>();
        for (var at = 0; at < parts.Count;)
        {
            if (parts[at].Times > 1)
            {
                result.Add(parts[at++]);
                continue;
            }

            var first = parts[at].First;
            while (at < parts.Count && parts[at].Times == 1)
            {
                at++;
            }

            var end = parts[at - 1].First + parts[at - 1].Length;
            for (; first < end; first = reach[first])
            {
                result.Add(new FoldedPart(first, Math.Min(reach[first], end) - first, 1));
            }
        }

        return result;
    }

    private void Run()
    {
        var window = new int[_units.Length];
        var (head, tail) = (0, 0);
        for (var end = 1; end <= _units.Length; end++)
        {
            while (tail > head && _best[window[tail - 1]] > _best[end - 1])
            {
                tail--;
            }

            window[tail++] = end - 1;
            while (_reach[window[head]] < end)
            {
                head++;
            }

            var first = window[head];
            (_best[end], _last[end]) = (_best[first] + Cost(1), new FoldedPart(first, end - first, 1));
            TryBrackets(end);
        }
    }

    private void TryBrackets(int end)
    {
        var last = _units[end - 1];
        for (var length = 1; length <= Math.Min(_longest, end - 1); length++)
        {
            if (_units[end - 1 - length] != last)
            {
                _alike[length] = 0;
            }
            else if (++_alike[length] >= length && !IsRepeated(length))
            {
                TryBracket(end, length);
            }
        }
    }

    private void TryBracket(int end, int length)
    {
        var beginnings = _beginnings[length] ??= new Beginnings(length);
        if (_alike[length] == length)
        {
            beginnings.Forget();
        }

        var first = end - (2 * length);
        var at = end % length;
        var kept = beginnings.First[at];
        if (kept < 0)
        {
            beginnings.Items[at] = Steps(first, first + length) + 1;
        }

        if (kept < 0 || _best[first] < _best[kept])
        {
            beginnings.First[at] = kept = first;
        }

        var cost = _best[kept] + Cost(beginnings.Items[at]);
        if (cost < _best[end])
        {
            (_best[end], _last[end]) = (cost, new FoldedPart(kept, length, (end - kept) / length));
        }
    }

    // Whether the last two times so many units are something shorter again and again.
    private bool IsRepeated(int length)
    {
        for (var part = 1; part <= length / 2; part++)
        {
            if (length % part == 0 && _alike[part] >= (2 * length) - part)
            {
                return true;
            }
        }

        return false;
    }

    private int Steps(int first, int end)
    {
        var steps = 0;
        for (var at = first; at < end; at = _reach[at])
        {
            steps++;
        }

        return steps;
    }

    private static long Cost(int items) => ((long)items << Price) + 1;

    private sealed class Beginnings
    {
        public Beginnings(int length)
        {
            First = new int[length];
            Items = new int[length];
            Forget();
        }

        public int[] First { get; }

        public int[] Items { get; }

        public void Forget() => Array.Fill(First, -1);
    }
}
