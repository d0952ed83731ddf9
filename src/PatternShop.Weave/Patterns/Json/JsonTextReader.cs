using System.Buffers;
using System.Text;

namespace PatternShop.Weave;

/// <summary>Reads one text of JSON, quotation marks included. A character that is wrong is noted, bytes that are not UTF-8 once a text, and stands as U+FFFD.</summary>
internal ref struct JsonTextReader(ReadOnlySpan<byte> utf8, int start, JsonPlace place, FileProblems problems)
{
    private static readonly SearchValues<byte> Marks = SearchValues.Create("\"\\\n\r"u8);
    private static readonly SearchValues<byte> PlainBytes = SearchValues.Create(
        [.. Enumerable.Range(0x20, 0x60).Where(value => value is not ('"' or '\\')).Select(value => (byte)value)]);

    private readonly ReadOnlySpan<byte> _utf8 = utf8;
    private readonly StringBuilder _text = new();
    private int _at = start + 1;
    private bool _hasStrayBytes;

    /// <summary>The byte after the closing quotation mark.</summary>
    public int End { get; private set; }

    /// <summary>The text, or null when it has no end.</summary>
    public string? Read()
    {
        var close = Close();
        if (close < 0)
        {
            problems.Add(new(
                ProblemCodes.Syntax,
                place.Pointer,
                start,
                "The text that starts here has no closing quotation mark on its line.",
                "Add the quotation mark; write \\n for a new line inside a text. What follows was not read."));
            return null;
        }

        End = close + 1;
        var inside = _utf8[_at..close];
        return inside.ContainsAnyExcept(PlainBytes) ? Decoded(close) : Encoding.ASCII.GetString(inside);
    }

    private readonly int Close()
    {
        for (var at = _at; at < _utf8.Length;)
        {
            var next = _utf8[at..].IndexOfAny(Marks);
            if (next < 0)
            {
                return -1;
            }

            at += next;
            if (_utf8[at] != '\\')
            {
                return _utf8[at] == '"' ? at : -1;
            }

            at += 2;
        }

        return -1;
    }

    private string Decoded(int close)
    {
        while (_at < close)
        {
            var plain = _utf8[_at..close].IndexOfAnyExcept(PlainBytes);
            var length = plain < 0 ? close - _at : plain;
            _text.Append(Encoding.ASCII.GetString(_utf8.Slice(_at, length)));
            _at += length;
            if (_at < close)
            {
                Unusual(_utf8[_at..close]);
            }
        }

        return _text.ToString();
    }

    private void Unusual(ReadOnlySpan<byte> rest)
    {
        if (rest[0] == '\\')
        {
            Escape(rest);
        }
        else if (rest[0] < 0x20)
        {
            Bad(ProblemCodes.RawControl, rest[0], "A control character, {0}, stands in a text.", "Remove it, or replace it by a space.", 1);
        }
        else if (Rune.DecodeFromUtf8(rest, out var rune, out var used) == OperationStatus.Done)
        {
            _text.Append(rune.ToString());
            _at += used;
        }
        else if (_hasStrayBytes)
        {
            _at += used;
        }
        else
        {
            _hasStrayBytes = true;
            Bad(ProblemCodes.InvalidUtf8, rest[0], "A byte in a text is not UTF-8.", "Save the file as UTF-8.", used);
        }
    }

    private void Escape(ReadOnlySpan<byte> rest)
    {
        const string names = "\"\\/bfnrt";
        const string meanings = "\"\\/\b\f\n\r\t";
        var name = names.IndexOf((char)rest[1], StringComparison.Ordinal);
        if (name >= 0)
        {
            _text.Append(meanings[name]);
            _at += 2;
        }
        else if (Unit(rest) is not { } unit)
        {
            Bad(ProblemCodes.UnknownEscape, rest[1], "A backslash stands before something that has no meaning after it.", "Write two backslashes where one is meant.", 1);
        }
        else if (char.IsHighSurrogate(unit) && Unit(rest[6..]) is { } low && char.IsLowSurrogate(low))
        {
            _text.Append(unit).Append(low);
            _at += 12;
        }
        else if (char.IsSurrogate(unit))
        {
            Bad(ProblemCodes.LoneSurrogate, unit, "Half of a character, {0}, stands alone in a text.", "Write the character itself, or both halves.", 6);
        }
        else
        {
            _text.Append(unit);
            _at += 6;
        }
    }

    private static char? Unit(ReadOnlySpan<byte> rest)
    {
        if (rest.Length < 6 || rest[0] != '\\' || rest[1] != 'u')
        {
            return null;
        }

        var value = 0;
        foreach (var digit in rest[2..6])
        {
            if (!char.IsAsciiHexDigit((char)digit))
            {
                return null;
            }

            value = (value << 4) | HexValue(digit);
        }

        return (char)value;
    }

    private static int HexValue(byte digit) => digit <= '9' ? digit - '0' : (digit | 0x20) - 'a' + 10;

    private void Bad(string code, int character, string what, string remedy, int length)
    {
        if (problems.IsFull)
        {
            problems.AddUnlisted();
        }
        else
        {
            problems.Add(new(code, place.Pointer, _at, what.Replace("{0}", Plain.CodePoint(character), StringComparison.Ordinal), remedy));
        }

        _text.Append('\uFFFD');
        _at += length;
    }
}
