namespace PatternShop.Weave;

/// <summary>Gathers the problems of a document that was not read from a file.</summary>
internal sealed class RuleProblems
{
    private readonly List<Problem> _problems = [];

    public void Add(string code, string pointer, string what, string remedy) =>
        _problems.Add(new Problem(code, pointer, 0, 0, what, remedy));

    /// <summary>Adds a problem unless the rule is kept.</summary>
    public void Require(bool kept, string code, string pointer, string what, string remedy)
    {
        if (!kept)
        {
            Add(code, pointer, what, remedy);
        }
    }

    public Sequence<Problem> All() => _problems.ToSequence();
}
