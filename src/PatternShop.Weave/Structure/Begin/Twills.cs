using System.Globalization;

namespace PatternShop.Weave;

/// <summary>How a point or a diamond is drawn from a base weave.</summary>
public enum PointWay
{
    /// <summary>1 2 3 2: turns on one shared thread at each end; 2n - 2 threads.</summary>
    Shared,

    /// <summary>1 2 3 1 3 2: goes on to the first thread again before it turns; 2n threads.</summary>
    Continued,
}

/// <summary>Regular twills and what is made of them.</summary>
public static class Twills
{
    /// <summary>
    /// A regular twill: the over/under numbers of row 1 from the left, such as "2/2" or "3/1/1/2", each next row moved by Step ends.
    /// </summary>
    /// <param name="numbers">Over and under in turn, an even number of whole numbers from 1, adding up to the width.</param>
    /// <param name="step">Ends by which each row is moved, from 1 below the width.</param>
    /// <param name="rises">The side to which the diagonals rise on the cloth, row 1 at the bottom.</param>
    /// <param name="begin">Ends by which row 1 is moved towards that side before anything else.</param>
    public static WeaveResult Regular(string numbers, int step = 1, Side rises = Side.Right, int begin = 0)
    {
        ArgumentNullException.ThrowIfNull(numbers);
        if (ReadNumbers(numbers) is not { } counts)
        {
            return WeaveResult.Refuse("twill-numbers", "numbers", $"\"{numbers}\" is not a twill.", "Write over and under in turn, such as 2/2 or 3/1/1/2.");
        }

        var row = counts.SelectMany((count, i) => Enumerable.Repeat(i % 2 == 0, count)).ToArray();
        if (row.Length > Bounds.MotifEnds)
        {
            return WeaveResult.Refuse("twill-numbers", "numbers", $"\"{numbers}\" is {row.Length} ends wide.", $"Stay within {Bounds.MotifEnds} ends.");
        }

        if (step < 1 || step >= row.Length)
        {
            return WeaveResult.Refuse("twill-step", "step", $"A step of {step} makes no twill of {row.Length} ends.", $"Choose a step from 1 to {row.Length - 1}.");
        }

        var away = rises == Side.Right ? -1 : 1;
        return new WeaveResult.Made(BitGrid.Create(
            row.Length / Divisors.Greatest(row.Length, step),
            row.Length,
            (r, end) => row[Modulo(end + (away * ((r * step) + begin)), row.Length)]));
    }

    /// <summary>A broken twill: the first half of the rows in order, the others from the last down (1 2 4 3).</summary>
    public static BitGrid Broken(BitGrid twill)
    {
        ArgumentNullException.ThrowIfNull(twill);
        var half = (twill.Rows + 1) / 2;
        return Reorder(twill, EveryThread(twill.Columns), [.. Enumerable.Range(1, half), .. Enumerable.Range(half + 1, twill.Rows - half).Reverse()]);
    }

    /// <summary>A point: the ends of a base weave there and back again.</summary>
    public static BitGrid Point(BitGrid weave, PointWay way = PointWay.Shared)
    {
        ArgumentNullException.ThrowIfNull(weave);
        return Reorder(weave, ThereAndBack(weave.Columns, way), EveryThread(weave.Rows));
    }

    /// <summary>A diamond: ends and rows of a base weave there and back again.</summary>
    public static BitGrid Diamond(BitGrid weave, PointWay way)
    {
        ArgumentNullException.ThrowIfNull(weave);
        return Reorder(weave, ThereAndBack(weave.Columns, way), ThereAndBack(weave.Rows, way));
    }

    /// <summary>
    /// Herringbone: the ends of a base weave, then the same backwards with a break and no shared end. The way back begins where the
    /// threads at both breaks are as opposite as can be.
    /// </summary>
    public static BitGrid Herringbone(BitGrid weave)
    {
        ArgumentNullException.ThrowIfNull(weave);
        var n = weave.Columns;
        var byEnd = weave.Transpose();
        int Apart(int a, int b) => Enumerable.Range(0, weave.Rows).Count(row => byEnd[a, row] != byEnd[b, row]);
        var back = Enumerable.Range(0, n).MaxBy(start => Math.Min(Apart(n - 1, start), Apart((start + 1) % n, 0)));
        return Reorder(
            weave,
            [.. EveryThread(n), .. Enumerable.Range(0, n).Select(i => Modulo(back - i, n) + 1)],
            EveryThread(weave.Rows));
    }

    /// <summary>A weave with its threads taken in other orders, each as often as it is named.</summary>
    /// <param name="weave">The base weave.</param>
    /// <param name="ends">Ends of the base weave, from 1, from the left.</param>
    /// <param name="rows">Rows of the base weave, from 1, row 1 first.</param>
    /// <exception cref="ArgumentException">An order is empty or names a thread that is not there.</exception>
    public static BitGrid Reorder(BitGrid weave, Sequence<int> ends, Sequence<int> rows)
    {
        ArgumentNullException.ThrowIfNull(weave);
        ArgumentNullException.ThrowIfNull(ends);
        ArgumentNullException.ThrowIfNull(rows);
        if (ends.Count == 0 || rows.Count == 0 || ends.Any(end => end < 1 || end > weave.Columns) || rows.Any(row => row < 1 || row > weave.Rows))
        {
            throw new ArgumentException($"The orders name ends from 1 to {weave.Columns} and rows from 1 to {weave.Rows}, at least one each.", nameof(ends));
        }

        return BitGrid.Create(rows.Count, ends.Count, (row, end) => weave[rows[row] - 1, ends[end] - 1]);
    }

    /// <summary>
    /// A weave drawn from a base weave by a typed order of ends and a typed order of rows, as <see cref="ThreadOrder"/> reads them; an order
    /// that is left empty takes every thread once. Problems name the order in their pointer, "/ends" or "/rows".
    /// </summary>
    public static WeaveResult Drawn(BitGrid weave, string ends, string rows)
    {
        ArgumentNullException.ThrowIfNull(weave);
        var read = new[] { Order(ends, "/ends", weave.Columns, Bounds.MotifEnds), Order(rows, "/rows", weave.Rows, Bounds.MotifRows) };
        var problems = read.SelectMany(order => order.Problems).ToSequence();
        return problems.Count == 0
            ? new WeaveResult.Made(Reorder(weave, read[0].Threads, read[1].Threads))
            : new WeaveResult.Refused(problems);
    }

    /// <summary>The order there and back again of n threads.</summary>
    public static Sequence<int> ThereAndBack(int threads, PointWay way) => way == PointWay.Continued
        ? [.. Enumerable.Range(1, threads), 1, .. Enumerable.Range(2, Math.Max(0, threads - 1)).Reverse()]
        : [.. Enumerable.Range(1, threads), .. Enumerable.Range(2, Math.Max(0, threads - 2)).Reverse()];

    private static (Sequence<int> Threads, IEnumerable<Problem> Problems) Order(string text, string pointer, int threads, int most)
    {
        ArgumentNullException.ThrowIfNull(text);
        return string.IsNullOrWhiteSpace(text)
            ? (EveryThread(threads), [])
            : ThreadOrder.Read(text, threads, most) switch
            {
                OrderResult.Read order => (order.Threads, []),
                OrderResult.Refused refused => ([], refused.Problems.Select(problem => problem with { Pointer = pointer })),
                _ => throw new InvalidOperationException("No other result."),
            };
    }

    private static Sequence<int> EveryThread(int threads) => Enumerable.Range(1, threads).ToSequence();

    private static List<int>? ReadNumbers(string numbers)
    {
        var counts = new List<int>();
        foreach (var part in numbers.Split('/'))
        {
            if (!int.TryParse(part.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count is < 1 or > Bounds.MotifEnds)
            {
                return null;
            }

            counts.Add(count);
        }

        return counts.Count % 2 == 0 && counts.Count <= Bounds.MotifEnds ? counts : null;
    }

    private static int Modulo(int value, int by) => ((value % by) + by) % by;
}
