using System.Globalization;

namespace PatternShop.Weave;

/// <summary>Reads the runs of one row.</summary>
internal sealed class RunsLineReader(string text, int line, int firstColumn, BeginText problems)
{
    private const int Deepest = 2;
    private const string Example = "Write runs such as o2 u1, or over 2, under 1.";

    private readonly List<Bracket> _open = [new Bracket(0)];
    private Side? _from;
    private int _at;
    private bool _failed;

    // the row itself is the outermost
    private sealed class Bracket(int at)
    {
        public int At { get; } = at;

        public List<Run> Runs { get; } = [];

        public int Ends { get; set; }
    }

    /// <summary>The row; null when the text holds none or something is wrong with it.</summary>
    public RunsLine? Read()
    {
        SkipHeading();
        SkipSpace();
        var first = _at;
        while (_at < text.Length && !_failed)
        {
            ReadItem();
            SkipSpace();
        }

        if (_open.Count > 1 && !_failed)
        {
            Fail(BeginProblemCodes.RunsBracket, _open[^1].At, "This bracket is not closed.", "Close it with ] and say how many times, such as ] × 3.");
        }

        var runs = _open[0].Runs;
        return _failed || runs.Count == 0 ? null : new RunsLine(line, firstColumn + first, _from, runs.ToSequence());
    }

    private void SkipHeading()
    {
        var end = text.IndexOf(':', StringComparison.Ordinal);
        if (end < 0)
        {
            return;
        }

        var heading = text[..end];
        var (left, right) = (Contains(heading, "left"), Contains(heading, "right"));
        _from = left == right ? null : left ? Side.Left : Side.Right;
        _at = end + 1;
    }

    private static bool Contains(string text, string word) => text.Contains(word, StringComparison.OrdinalIgnoreCase);

    private void ReadItem()
    {
        var begin = _at;
        var sign = text[_at];
        if (sign is '[' or '(')
        {
            _at++;
            if (_open.Count > Deepest)
            {
                Fail(BeginProblemCodes.RunsBracket, begin, "Brackets stand in brackets more than two deep.", "Write out the innermost one.");
                return;
            }

            _open.Add(new Bracket(begin));
        }
        else if (sign is ']' or ')')
        {
            _at++;
            Close(begin);
        }
        else
        {
            ReadRun(begin);
        }
    }

    private void Close(int begin)
    {
        if (_open.Count == 1)
        {
            Fail(BeginProblemCodes.RunsBracket, begin, "This bracket was not opened.", "Open it with [ before the runs that it repeats.");
            return;
        }

        var bracket = _open[^1];
        _open.RemoveAt(_open.Count - 1);
        if (bracket.Runs.Count == 0)
        {
            Fail(BeginProblemCodes.RunsBracket, bracket.At, "There is nothing in this bracket.", "Write the runs that it repeats, or take it away.");
            return;
        }

        if (ReadTimes() is { } times)
        {
            for (var time = 0; time < times && !_failed; time++)
            {
                Add(bracket.Runs, bracket.Ends, begin);
            }
        }
    }

    // "× 3", "x3", "* 3", "3 times", "3 ×", "twice", "once".
    private int? ReadTimes()
    {
        SkipSpace();
        var begin = _at;
        var word = Word();
        if (word is "twice" or "once")
        {
            return word == "twice" ? 2 : 1;
        }

        var sign = word == "x" || word == "times";
        if (!sign)
        {
            _at = begin;
            sign = _at < text.Length && text[_at] is '×' or '*';
            _at += sign ? 1 : 0;
        }

        SkipSpace();
        var at = _at;
        var number = Number();
        if (number is null or < 1 or > Bounds.MotifEnds)
        {
            Fail(BeginProblemCodes.RunsTimes, Math.Min(at, Math.Max(0, text.Length - 1)), "It is not said how many times the bracket is done.", $"Write × and a number from 1 to {Plain.Number(Bounds.MotifEnds)} after it, such as [o1 u1] × 3.");
            return null;
        }

        if (!sign)
        {
            SkipSpace();
            var after = _at;
            if (Word() is not ("times" or "x"))
            {
                _at = after;
                _at += _at < text.Length && text[_at] is '×' or '*' ? 1 : 0;
            }
        }

        return number;
    }

    private void ReadRun(int begin)
    {
        var word = Word();
        var stroke = word switch { "o" or "over" => Stroke.Over, "u" or "under" => Stroke.Under, _ => (Stroke?)null };
        if (stroke is null)
        {
            var shown = word.Length > 0 ? text[begin.._at] : char.IsHighSurrogate(text[begin]) && begin + 1 < text.Length ? text.Substring(begin, 2) : text.Substring(begin, 1);
            Fail(BeginProblemCodes.RunsWord, begin, $"{Plain.Quote(shown)} is no run.", Example);
            return;
        }

        var end = _at;
        SkipBlanks();
        var at = _at;
        var number = Number();
        if (at == _at)
        {
            _at = end;
            number = 1;
        }

        if (number is null or < 1 or > Bounds.MotifEnds)
        {
            Fail(BeginProblemCodes.RunsCount, at, $"A run of {Plain.Cut(text[at.._at], 12)} ends is not possible.", $"Write a number from 1 to {Plain.Number(Bounds.MotifEnds)}.");
            return;
        }

        Add([new Run(stroke.Value, number.Value)], number.Value, begin);
    }

    private void Add(List<Run> runs, int ends, int at)
    {
        _open[^1].Runs.AddRange(runs);
        _open[^1].Ends += ends;
        if (_open[^1].Ends > Bounds.MotifEnds)
        {
            Fail(BeginProblemCodes.RunsTooWide, at, $"The row is more than {Plain.Number(Bounds.MotifEnds)} ends wide.", $"Stay within {Plain.Number(Bounds.MotifEnds)} ends.");
        }
    }

    private string Word()
    {
        var begin = _at;
        while (_at < text.Length && char.IsLetter(text[_at]))
        {
            _at++;
        }

        return text[begin.._at].ToLower(CultureInfo.InvariantCulture);
    }

    // Null when the digits are too many for a number; nothing is read when there are none.
    private int? Number()
    {
        var begin = _at;
        while (_at < text.Length && char.IsAsciiDigit(text[_at]))
        {
            _at++;
        }

        return int.TryParse(text.AsSpan(begin, _at - begin), NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
    }

    private void SkipBlanks()
    {
        while (_at < text.Length && char.IsWhiteSpace(text[_at]))
        {
            _at++;
        }
    }

    private void SkipSpace()
    {
        while (_at < text.Length && (char.IsWhiteSpace(text[_at]) || text[_at] is ',' or ';' or '.' or '\uFEFF'))
        {
            _at++;
        }
    }

    private void Fail(string code, int at, string what, string remedy)
    {
        _failed = true;
        problems.Add(code, line, firstColumn + at, what, remedy);
    }
}
