using System.Globalization;
using System.Text.RegularExpressions;

namespace PatternShop.Web.Tests;

/// <summary>Reads written directions back, as a weaver does: "under 1, [over 1, under 2] × 3" into one stroke an end.</summary>
internal static partial class WrittenRuns
{
    /// <summary>True for over, in the order in which the needle meets the ends.</summary>
    /// <exception cref="FormatException">The text is not directions.</exception>
    public static IReadOnlyList<bool> Strokes(string text)
    {
        if (!Whole().IsMatch(text))
        {
            throw new FormatException($"These are no directions: {text}");
        }

        var plain = text;
        while (Bracket().IsMatch(plain))
        {
            plain = Bracket().Replace(plain, bracket => string.Join(", ", Enumerable.Repeat(bracket.Groups["runs"].Value, Number(bracket.Groups["times"]))));
        }

        return [.. Run().Matches(plain).SelectMany(run => Enumerable.Repeat(run.Groups["stroke"].Value == "over", Number(run.Groups["count"])))];
    }

    public static IReadOnlyList<bool> Strokes(IEnumerable<(bool Over, int Count)> runs) => [.. runs.SelectMany(run => Enumerable.Repeat(run.Over, run.Count))];

    private static int Number(Group digits) => int.Parse(digits.ValueSpan, CultureInfo.InvariantCulture);

    // runs; in round brackets they are woven several times; those and runs in square brackets again
    private const string One = @"(over|under) [1-9]\d*";
    private const string Inner = $@"({One}|\({One}(, {One})*\) × \d+)";
    private const string Item = $@"({One}|\[{Inner}(, {Inner})*\] × \d+)";

    [GeneratedRegex($"^{Item}(, {Item})*$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Whole();

    [GeneratedRegex(@"[\[(](?<runs>[^\[\]()]*)[\])] × (?<times>\d+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Bracket();

    [GeneratedRegex(@"(?<stroke>over|under) (?<count>\d+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Run();
}
