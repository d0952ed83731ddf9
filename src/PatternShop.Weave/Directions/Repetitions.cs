using System.Numerics;
using System.Runtime.Intrinsics;

namespace PatternShop.Weave;

/// <summary>A stretch of a row that repeats: each run equals the run a period further on, as long as both are in the stretch.</summary>
/// <param name="First">Its first run, from 0.</param>
/// <param name="End">The run after its last; at least two periods from the first.</param>
/// <param name="Period">Runs once through: the fewest that repeat there.</param>
internal readonly record struct Repetition(int First, int End, int Period);

/// <summary>
/// Finds every stretch of a row that repeats and cannot be made longer. For each period the runs that equal the run a period on
/// are marked, 64 to a word; a stretch begins where a whole period of marks follows. Takes time in the order of runs² ÷ 64.
/// </summary>
internal sealed class Repetitions
{
    private const int Lanes = 8;
    private const int Bits = 64;
    private readonly List<Repetition> _found = [];
    private int[] _counts = [];
    private ulong[] _marks = [];

    /// <summary>The stretches by period, then by place. The list is reused by the next search.</summary>
    public List<Repetition> Of(ReadOnlySpan<Run> runs)
    {
        _found.Clear();
        var words = (runs.Length + Bits - 1) / Bits;
        Load(runs, words);

        // strokes alternate: only even periods can repeat, and there equal counts are equal runs
        for (var period = 2; 2 * period <= runs.Length; period += 2)
        {
            var compared = runs.Length - period;
            var used = (compared + Bits - 1) / Bits;
            var marks = _marks.AsSpan(0, used + 1);
            Mark(marks, period, compared);
            if (Narrow(marks, period))
            {
                Collect(marks, period);
            }
        }

        return _found;
    }

    private void Load(ReadOnlySpan<Run> runs, int words)
    {
        var room = (words * Bits) + (runs.Length / 2) + Bits;
        if (_counts.Length < room)
        {
            _counts = new int[room];
            _marks = new ulong[words + 1];
        }

        for (var i = 0; i < runs.Length; i++)
        {
            _counts[i] = runs[i].Count;
        }
    }

    private void Mark(Span<ulong> marks, int period, int compared)
    {
        for (var word = 0; word < marks.Length - 1; word++)
        {
            var bits = 0UL;
            for (var lane = 0; lane < Bits; lane += Lanes)
            {
                var at = (word * Bits) + lane;
                var here = Vector256.Create<int>(_counts.AsSpan(at, Lanes));
                var there = Vector256.Create<int>(_counts.AsSpan(at + period, Lanes));
                bits |= (ulong)Vector256.Equals(here, there).ExtractMostSignificantBits() << lane;
            }

            marks[word] = bits;
        }

        var last = compared % Bits;
        if (last != 0)
        {
            marks[^2] &= (1UL << last) - 1;
        }

        marks[^1] = 0;
    }

    // Keeps the marks that as many marks follow as make a whole period. False when none is left.
    private static bool Narrow(Span<ulong> marks, int length)
    {
        for (var have = 1; have < length;)
        {
            var step = Math.Min(have, length - have);
            have += step;
            if (!And(marks, step))
            {
                return false;
            }
        }

        return true;
    }

    private static bool And(Span<ulong> marks, int shift)
    {
        var (skip, bits) = (shift / Bits, shift % Bits);
        var any = 0UL;
        for (var word = 0; word < marks.Length; word++)
        {
            var low = word + skip < marks.Length ? marks[word + skip] : 0;
            var high = word + skip + 1 < marks.Length ? marks[word + skip + 1] : 0;
            marks[word] &= bits == 0 ? low : (low >> bits) | (high << (Bits - bits));
            any |= marks[word];
        }

        return any != 0;
    }

    private void Collect(ReadOnlySpan<ulong> marks, int period)
    {
        for (var first = NextMark(marks, 0, set: true); first >= 0;)
        {
            var after = NextMark(marks, first, set: false);
            if (!RepeatsSooner(first, period))
            {
                _found.Add(new Repetition(first, after - 1 + (2 * period), period));
            }

            first = NextMark(marks, after, set: true);
        }
    }

    // The last word is 0, so a mark that is not set is always found.
    private static int NextMark(ReadOnlySpan<ulong> marks, int from, bool set)
    {
        var word = from / Bits;
        for (var rest = Turned(marks[word], set) >> (from % Bits) << (from % Bits); ; rest = Turned(marks[word], set))
        {
            if (rest != 0)
            {
                return (word * Bits) + BitOperations.TrailingZeroCount(rest);
            }

            if (++word == marks.Length)
            {
                return -1;
            }
        }
    }

    private static ulong Turned(ulong word, bool set) => set ? word : ~word;

    // A period that is itself some shorter thing again and again: all periods of the stretch are, for they are the same runs in turn.
    private bool RepeatsSooner(int first, int period)
    {
        foreach (var shorter in _found)
        {
            if (period % shorter.Period == 0 && shorter.First <= first && shorter.End >= first + period && shorter.Period < period)
            {
                return true;
            }
        }

        return false;
    }
}
