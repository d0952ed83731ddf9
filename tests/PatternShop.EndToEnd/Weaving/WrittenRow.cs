using System.Globalization;
using System.Text.RegularExpressions;

namespace PatternShop.EndToEnd;

/// <summary>A row as a reader finds it written.</summary>
internal sealed partial record WrittenRow(int Number, string From, string Text)
{
    private const string FromLeft = "from the left →";
    private const string FromRight = "← from the right";

    /// <summary>The runs that the text stands for, brackets written out.</summary>
    public IReadOnlyList<Run> Runs => WovenRow.Join(Written().Matches(WithoutBrackets(Text))
        .Select(run => new Run(run.Groups["stroke"].Value == "over", Number32(run.Groups["count"]))));

    /// <summary>What is written otherwise than it is woven, naming row and run; also woven rows that no written row stands for.</summary>
    public static IReadOnlyList<string> Differences(IReadOnlyList<WrittenRow> written, IReadOnlyList<WovenRow> woven) =>
    [
        .. written.SelectMany(row => row.Number <= woven.Count ? row.Differences(woven[row.Number - 1]) : [FormattableString.Invariant($"row {row.Number}: not woven")]),
        .. woven.Where(row => written.All(other => other.Number != row.Number) && !written.Any(other => other.Differences(row).Count == 0))
            .Select(row => FormattableString.Invariant($"row {row.Number}: not written")),
    ];

    private IReadOnlyList<string> Differences(WovenRow woven)
    {
        var heading = woven.FromLeft ? FromLeft : FromRight;
        if (From != heading)
        {
            return [FormattableString.Invariant($"row {woven.Number}: {From}, not {heading}")];
        }

        var differing = Enumerable.Range(0, Math.Max(Runs.Count, woven.Runs.Count)).Where(at => At(Runs, at) != At(woven.Runs, at)).ToList();
        return differing.Count == 0 ? [] : [FormattableString.Invariant($"row {woven.Number}, run {differing[0] + 1}: {At(Runs, differing[0])}, not {At(woven.Runs, differing[0])}")];
    }

    private static string At(IReadOnlyList<Run> runs, int at) => at < runs.Count ? runs[at].ToString() : "nothing";

    // the innermost brackets first, until none is left
    private static string WithoutBrackets(string text)
    {
        while (Bracket().IsMatch(text))
        {
            text = Bracket().Replace(text, WriteOut);
        }

        return text;
    }

    private static string WriteOut(Match bracket) => string.Join(", ", Enumerable.Repeat(bracket.Groups["runs"].Value, Number32(bracket.Groups["times"])));

    private static int Number32(Group digits) => int.Parse(digits.ValueSpan, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"[\[(](?<runs>[^\[\]()]*)[\])]\s*×\s*(?<times>\d+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Bracket();

    [GeneratedRegex(@"(?<stroke>over|under)\s+(?<count>\d+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Written();
}
