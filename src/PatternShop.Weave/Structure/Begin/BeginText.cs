namespace PatternShop.Weave;

/// <summary>Collects what is wrong with typed or pasted text.</summary>
internal sealed class BeginText
{
    /// <summary>Characters of a text that is read: enough for the largest chart in words.</summary>
    public const int Longest = 4_000_000;

    private readonly List<Problem> _problems = [];
    private int _more;

    public bool IsFine => _problems.Count == 0;

    public Sequence<Problem> Problems => _more == 0
        ? _problems.ToSequence()
        : [.. _problems, new Problem(BeginProblemCodes.MoreProblems, "", 0, 0, $"There are {Plain.Number(_more)} more problems.", "Mend these first.")];

    public void Add(string code, int line, int column, string what, string remedy)
    {
        if (_problems.Count < Bounds.ListedProblems)
        {
            _problems.Add(new Problem(code, "", line, column, what, remedy));
        }
        else
        {
            _more++;
        }
    }

    /// <summary>The lines of a text, whatever ends them.</summary>
    public static string[] Lines(string text) =>
        text.Replace("\r\n", "\n", StringComparison.Ordinal).Replace('\r', '\n').Split('\n');
}
