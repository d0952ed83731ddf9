using System.Globalization;

namespace PatternShop.Weave;

/// <summary>What comes of a typed order of threads.</summary>
public abstract record OrderResult
{
    private OrderResult()
    {
    }

    /// <summary>The order.</summary>
    /// <param name="Threads">The threads one after another, from 1.</param>
    public sealed record Read(Sequence<int> Threads) : OrderResult;

    /// <summary>The text is no order of these threads.</summary>
    public sealed record Refused(Sequence<Problem> Problems) : OrderResult;
}

/// <summary>
/// Reads an order of ends or rows as it is typed: numbers parted by blanks or commas, and stretches up or down such as "1-6, 5-2"
/// (either dash).
/// </summary>
public static class ThreadOrder
{
    /// <summary>The order, or everything that is wrong with it, by line and column.</summary>
    /// <param name="text">The text.</param>
    /// <param name="threads">How many threads there are to name.</param>
    /// <param name="most">How long the order may become.</param>
    public static OrderResult Read(string text, int threads, int most)
    {
        ArgumentNullException.ThrowIfNull(text);
        var problems = new BeginText();
        var order = new List<int>();
        foreach (var (index, line) in BeginText.Lines(text).Index())
        {
            foreach (var (word, column) in Words(line))
            {
                Add(order, word, index + 1, column, threads, problems);
                if (order.Count > most)
                {
                    problems.Add(BeginProblemCodes.OrderTooLong, index + 1, column, $"The order is longer than {Plain.Number(most)} threads.", $"Stay within {Plain.Number(most)}.");
                    return new OrderResult.Refused(problems.Problems);
                }
            }
        }

        if (order.Count == 0 && problems.IsFine)
        {
            problems.Add(BeginProblemCodes.OrderEmpty, 1, 1, "The order names no thread.", "Write numbers, such as 1-6, 5-2.");
        }

        return problems.IsFine ? new OrderResult.Read(order.ToSequence()) : new OrderResult.Refused(problems.Problems);
    }

    private static void Add(List<int> order, string word, int line, int column, int threads, BeginText problems)
    {
        var parts = word.Split('-', '–');
        var numbers = parts.Select(part => int.TryParse(part, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : -1).ToArray();
        if (numbers.Length > 2 || Array.Exists(parts, part => part.Length == 0 || !part.All(char.IsAsciiDigit)))
        {
            problems.Add(BeginProblemCodes.OrderWord, line, column, $"{Plain.Quote(word)} is no thread.", "Write numbers, such as 1-6, 5-2.");
            return;
        }

        if (Array.Exists(numbers, number => number < 1 || number > threads))
        {
            problems.Add(BeginProblemCodes.OrderThread, line, column, $"There is no thread {Plain.Cut(word, 12)}.", $"Name threads from 1 to {Plain.Number(threads)}.");
            return;
        }

        var (first, last) = (numbers[0], numbers[^1]);
        for (var thread = first; ; thread += first <= last ? 1 : -1)
        {
            order.Add(thread);
            if (thread == last)
            {
                return;
            }
        }
    }

    // Words and their columns from 1.
    private static IEnumerable<(string Word, int Column)> Words(string line)
    {
        for (var at = 0; at < line.Length;)
        {
            if (char.IsWhiteSpace(line[at]) || line[at] is ',' or ';')
            {
                at++;
                continue;
            }

            var begin = at;
            while (at < line.Length && !(char.IsWhiteSpace(line[at]) || line[at] is ',' or ';'))
            {
                at++;
            }

            yield return (line[begin..at], begin + 1);
        }
    }
}
