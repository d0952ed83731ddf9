namespace PatternShop.Weave;

/// <summary>
/// Reads JSON (RFC 8259) from UTF-8 into values with places. Strict: no comments, no trailing commas. What can be stepped
/// over (characters inside texts, a member given twice) is noted and reading goes on; where the form itself breaks it ends.
/// </summary>
internal ref struct JsonParser
{
    private readonly ReadOnlySpan<byte> _utf8;
    private readonly FileProblems _problems;
    private int _at;
    private int _depth;
    private int _values;

    private JsonParser(ReadOnlySpan<byte> utf8, int start, FileProblems problems)
    {
        _utf8 = utf8;
        _at = start;
        _problems = problems;
    }

    /// <summary>The value that the file holds, or null where reading could not go on; the problems then say why.</summary>
    public static JsonValue? Parse(ReadOnlySpan<byte> utf8, int start, FileProblems problems) =>
        new JsonParser(utf8, start, problems).File();

    private JsonValue? File()
    {
        SkipSpace();
        var place = JsonPlace.Root(_at);
        if (_at == _utf8.Length)
        {
            return Stop(ProblemCodes.FileEmpty, place, "The file is empty.", "Choose a file that holds a pattern.");
        }

        var value = Value(place);
        SkipSpace();
        if (value is not null && _at < _utf8.Length)
        {
            _problems.Add(
                new(ProblemCodes.TrailingText, "", _at, $"After the end of the pattern stands {Found()}.", "Remove everything after the last brace."));
        }

        return value;
    }

    private JsonValue? Value(JsonPlace place)
    {
        if (++_values > Bounds.FileValues)
        {
            return Stop(
                ProblemCodes.TooManyValues,
                place,
                $"The file holds more than {Plain.Number(Bounds.FileValues)} values.",
                "Take away what does not belong to the pattern.");
        }

        return Peek() switch
        {
            '{' => Nested(place, isObject: true),
            '[' => Nested(place, isObject: false),
            '"' => Text(place) is { } text ? new JsonText(text, place) : null,
            '-' or (>= '0' and <= '9') => Number(place),
            >= 'a' and <= 'z' => Word(place),
            _ => Expected("a value", place),
        };
    }

    private JsonValue? Nested(JsonPlace place, bool isObject)
    {
        if (_depth == Bounds.FileDepth)
        {
            return Stop(
                ProblemCodes.TooDeep,
                place,
                $"More than {Plain.Number(Bounds.FileDepth)} objects and lists stand inside one another.",
                "A pattern needs no more than six; take the inner ones away.");
        }

        _depth++;
        _at++;
        JsonValue? value = isObject ? Object(place) : Array(place);
        _depth--;
        return value;
    }

    private JsonArray? Array(JsonPlace place)
    {
        var items = new List<JsonValue>();
        SkipSpace();
        if (!Take(']'))
        {
            do
            {
                SkipSpace();
                if (Value(place.Item(items.Count, _at)) is not { } item)
                {
                    return null;
                }

                items.Add(item);
                SkipSpace();
            }
            while (Take(','));
            if (!Take(']'))
            {
                Expected("a comma or the ']' that ends the list", place);
                return null;
            }
        }

        return new JsonArray(items.ToSequence(), place);
    }

    private JsonObject? Object(JsonPlace place)
    {
        var members = new List<JsonMember>();
        var names = new HashSet<string>(StringComparer.Ordinal);
        SkipSpace();
        if (!Take('}'))
        {
            do
            {
                SkipSpace();
                if (Member(place) is not { } member)
                {
                    return null;
                }

                Keep(member, members, names);
                SkipSpace();
            }
            while (Take(','));
            if (!Take('}'))
            {
                Expected("a comma or the '}' that ends the object", place);
                return null;
            }
        }

        return new JsonObject(members.ToSequence(), place);
    }

    private JsonMember? Member(JsonPlace parent)
    {
        var start = _at;
        if (Peek() != '"')
        {
            Expected("a name in quotation marks", parent);
            return null;
        }

        if (Text(parent) is not { } name)
        {
            return null;
        }

        SkipSpace();
        if (!Take(':'))
        {
            Expected($"a colon after {Plain.Quote(name)}", parent);
            return null;
        }

        SkipSpace();
        return Value(parent.Member(name, _at)) is { } value ? new JsonMember(name, start, value) : null;
    }

    private readonly void Keep(JsonMember member, List<JsonMember> members, HashSet<string> names)
    {
        if (names.Add(member.Name))
        {
            members.Add(member);
            return;
        }

        _problems.Add(new(
            ProblemCodes.DuplicateMember,
            member.Value.Place.Pointer,
            member.NameOffset,
            $"{Plain.Quote(member.Name)} is given twice.",
            "Keep one of the two and remove the other."));
    }

    private string? Text(JsonPlace place)
    {
        var text = new JsonTextReader(_utf8, _at, place, _problems);
        if (text.Read() is not { } value)
        {
            return null;
        }

        _at = text.End;
        return value;
    }

    private JsonValue? Number(JsonPlace place)
    {
        var start = _at;
        while (_at < _utf8.Length && (_utf8[_at] is (byte)'-' or (byte)'+' or (byte)'.' || char.IsAsciiLetterOrDigit((char)_utf8[_at])))
        {
            _at++;
        }

        var token = _utf8[start.._at];
        var text = System.Text.Encoding.ASCII.GetString(token);
        return JsonNumberForm.IsNumber(token)
            ? new JsonNumber(text, place)
            : Stop(
                ProblemCodes.Syntax,
                place,
                $"{Plain.Quote(text)} is not written as a number.",
                "Write digits without leading zeros, such as 12, and texts between quotation marks.");
    }

    private JsonValue? Word(JsonPlace place)
    {
        var start = _at;
        while (_at < _utf8.Length && char.IsAsciiLetterOrDigit((char)_utf8[_at]))
        {
            _at++;
        }

        var word = System.Text.Encoding.ASCII.GetString(_utf8[start.._at]);
        return word is "true" or "false" or JsonWord.Null
            ? new JsonWord(word, place)
            : Stop(ProblemCodes.Syntax, place, $"{Plain.Quote(word)} stands without quotation marks.", "Write texts between quotation marks: \"like this\".");
    }

    private readonly char Peek() => _at < _utf8.Length ? (char)_utf8[_at] : '\0';

    private bool Take(char wanted)
    {
        var taken = _at < _utf8.Length && _utf8[_at] == wanted;
        _at += taken ? 1 : 0;
        return taken;
    }

    private void SkipSpace()
    {
        while (_at < _utf8.Length && _utf8[_at] is (byte)' ' or (byte)'\n' or (byte)'\r' or (byte)'\t')
        {
            _at++;
        }
    }

    private readonly string Found()
    {
        if (_at == _utf8.Length)
        {
            return "the end of the file";
        }

        var status = System.Text.Rune.DecodeFromUtf8(_utf8[_at..], out var rune, out _);
        return status == System.Buffers.OperationStatus.Done ? Plain.Quote(rune.ToString()) : "a byte that is not UTF-8";
    }

    private readonly JsonValue? Expected(string wanted, JsonPlace place)
    {
        var isText = _at == _utf8.Length || System.Text.Rune.DecodeFromUtf8(_utf8[_at..], out _, out _) == System.Buffers.OperationStatus.Done;
        _problems.Add(new(
            isText ? ProblemCodes.Syntax : ProblemCodes.InvalidUtf8,
            place.Pointer,
            _at,
            $"Here stands {Found()} instead of {wanted}.",
            "Mend the form of the file here, then read it again: what follows was not read."));
        return null;
    }

    private readonly JsonValue? Stop(string code, JsonPlace place, string what, string remedy)
    {
        _problems.Add(code, place, what, remedy);
        return null;
    }
}
