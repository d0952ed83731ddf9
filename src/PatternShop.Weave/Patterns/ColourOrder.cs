using System.Globalization;

namespace PatternShop.Weave;

/// <summary>What came of reading an order of colours.</summary>
/// <param name="Runs">The order; empty where there is none, or where it cannot be read.</param>
/// <param name="What">What is wrong; null where it was read.</param>
/// <param name="Remedy">What to do about it.</param>
public sealed record ColourOrderText(Sequence<ColourRun> Runs, string? What, string Remedy);

/// <summary>Orders of colours, written as makers say them: "6 blue, 2 white".</summary>
public static class ColourOrder
{
    private const string Form = "Write counts and colours with commas between, such as \"6 blue, 2 white\".";

    /// <summary>The order as text; empty for none.</summary>
    public static string Text(Sequence<ColourRun> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        return string.Join(", ", runs.Select(run => $"{Plain.Number(run.Count)} {run.Colour}"));
    }

    /// <summary>
    /// Reads counts and names, with commas or line ends between; a name without a count is one thread. Nothing is an empty order.
    /// Whether the colours exist is not judged here.
    /// </summary>
    public static ColourOrderText Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.Length > Bounds.OrderText)
        {
            return Wrong($"The order has {Plain.Count(text.Length, "character")}; at most {Plain.Number(Bounds.OrderText)} are read.", "Write one repeat of it: an order goes on by itself.");
        }

        if (string.IsNullOrWhiteSpace(text))
        {
            return new ColourOrderText([], null, "");
        }

        var parts = text.Split([',', ';', '\n'], StringSplitOptions.TrimEntries);
        var runs = new List<ColourRun>(parts.Length);
        foreach (var (at, part) in parts.Index())
        {
            if (part.Length == 0 && at == parts.Length - 1)
            {
                continue;
            }

            if (Run(part) is not { } run)
            {
                return Wrong($"Part {Plain.Number(at + 1)} of the order is {Plain.Quote(part)}, which is not a count and a colour.", Form);
            }

            runs.Add(run);
        }

        return new ColourOrderText(runs.ToSequence(), null, "");
    }

    /// <summary>The colour of a thread in an order that is repeated; null for an empty order.</summary>
    /// <param name="runs">The order.</param>
    /// <param name="thread">The thread, from 0.</param>
    public static string? At(Sequence<ColourRun> runs, int thread)
    {
        ArgumentNullException.ThrowIfNull(runs);
        var once = Threads(runs);
        if (once == 0)
        {
            return null;
        }

        var into = thread % once;
        foreach (var run in runs)
        {
            into -= run.Count;
            if (into < 0)
            {
                return run.Colour;
            }
        }

        return null;
    }

    /// <summary>How many threads the order has before it repeats.</summary>
    public static long Threads(Sequence<ColourRun> runs)
    {
        ArgumentNullException.ThrowIfNull(runs);
        return runs.Sum(run => (long)run.Count);
    }

    private static ColourRun? Run(string part)
    {
        var digits = part.AsSpan().IndexOfAnyExceptInRange('0', '9');
        var name = NamedColours.Written(digits < 0 ? "" : part[digits..]);
        var count = 1;
        var counted = digits == 0 || int.TryParse(part.AsSpan(0, Math.Max(digits, 0)), NumberStyles.None, CultureInfo.InvariantCulture, out count);
        return counted && NamedColours.CanBeName(name) ? new ColourRun(count, name) : null;
    }

    private static ColourOrderText Wrong(string what, string remedy) => new([], what, remedy);
}
