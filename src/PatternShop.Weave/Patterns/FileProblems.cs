namespace PatternShop.Weave;

/// <summary>A problem that knows its byte in the file, not yet its line.</summary>
internal sealed record FileProblem(string Code, string Pointer, int Offset, string What, string Remedy);

/// <summary>Gathers what is wrong with a file, and at the end finds the lines.</summary>
internal sealed class FileProblems
{
    private readonly List<FileProblem> _listed = [];
    private readonly HashSet<FileProblem> _known = [];
    private long _more;

    /// <summary>The steps that reading took so far.</summary>
    public ReadingSteps Steps { get; } = new();

    public bool Any => _listed.Count > 0;

    /// <summary>Whether further problems are only counted, so that their words need not be made.</summary>
    public bool IsFull => _listed.Count == Bounds.ListedProblems;

    /// <summary>Counts a problem that is not listed.</summary>
    public void AddUnlisted() => _more++;

    public void Add(string code, JsonPlace place, string what, string remedy) =>
        Add(new FileProblem(code, place.Pointer, place.Offset, what, remedy));

    /// <summary>Adds a problem, unless the very same was added before or too many were.</summary>
    public void Add(FileProblem problem)
    {
        if (IsFull)
        {
            _more += _known.Contains(problem) ? 0 : 1;
        }
        else if (_known.Add(problem))
        {
            _listed.Add(problem);
        }
    }

    /// <summary>The problems in the order of the file.</summary>
    public Sequence<Problem> Located(ReadOnlySpan<byte> utf8)
    {
        var located = new List<Problem>(_listed.Count + 1);
        var lines = new LineFinder(utf8);
        foreach (var problem in _listed.OrderBy(problem => problem.Offset))
        {
            var (line, column) = lines.At(problem.Offset);
            located.Add(new Problem(problem.Code, problem.Pointer, line, column, problem.What, problem.Remedy));
        }

        Steps.Add(lines.Walked);

        if (_more > 0)
        {
            located.Add(new Problem(
                ProblemCodes.MoreProblems, "", 1, 1, $"There are {Plain.Number(_more)} more.", "Mend these first, then read the file again."));
        }

        return located.ToSequence();
    }

    /// <summary>Counts lines and columns forwards, so that all problems together cost one walk through the file.</summary>
    private ref struct LineFinder(ReadOnlySpan<byte> utf8)
    {
        private readonly ReadOnlySpan<byte> _utf8 = utf8;
        private int _at;
        private int _line = 1;
        private int _column = 1;

        /// <summary>Bytes walked over so far.</summary>
        public readonly int Walked => _at;

        /// <summary>Line and column, from 1, of an offset that is not before the last one asked for.</summary>
        public (int Line, int Column) At(int offset)
        {
            for (; _at < offset && _at < _utf8.Length; _at++)
            {
                Step(_utf8[_at]);
            }

            return (_line, _column);
        }

        private void Step(byte unit)
        {
            var endsLine = unit == '\n' || (unit == '\r' && (_at + 1 == _utf8.Length || _utf8[_at + 1] != '\n'));
            if (endsLine)
            {
                _line++;
                _column = 1;
            }
            else if ((unit & 0xC0) != 0x80 && !StartsMark(unit))
            {
                _column++;
            }
        }

        // the byte order mark is no character of the first line
        private readonly bool StartsMark(byte unit) => _at == 0 && unit == 0xEF && PatternReader.Mark(_utf8) > 0;
    }
}
