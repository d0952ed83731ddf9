namespace PatternShop.Weave;

/// <summary>
/// Reads JSON (RFC 8259) from UTF-8 into values with places. Strict: no comments, no trailing commas. What can be stepped
/// over (these two, characters inside texts, a member given twice) is noted and reading goes on; where the form itself breaks it ends.
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
        SkipSpace(JsonPlace.None);
        var place = JsonPlace.Root(_at);
        if (_at == _utf8.Length)
        {
            return Stop(ProblemCodes.FileEmpty, place, "The file is empty.", "Choose a file that holds a pattern.");
        }

        var value = Value(place);
        SkipSpace(place);
        _problems.Steps.Add(_at);
        if (value is not null && _at < _utf8.Length)
        {
            _problems.Add(
                new(ProblemCodes.TrailingText, "", _at, $"The pattern ends before this, but here is {Found() ?? "a byte that is not UTF-8"}.", "Remove everything after the last brace."));
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
            '-' or '+' or (>= '0' and <= '9') => Number(place),
            (>= 'a' and <= 'z') or (>= 'A' and <= 'Z') => Word(place),
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
        SkipSpace(place);
        if (!Take(']'))
        {
            do
            {
                if (Value(place.Item(items.Count, _at)) is not { } item)
                {
                    return null;
                }

                items.Add(item);
            }
            while (HasNext(place, ']', "list"));
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
        SkipSpace(place);
        if (!Take('}'))
        {
            do
            {
                if (Member(place) is not { } member)
                {
                    return null;
                }

                Keep(member, members, names);
            }
            while (HasNext(place, '}', "object"));
            if (!Take('}'))
            {
                Expected("a comma or the '}' that ends the object", place);
                return null;
            }
        }

        return new JsonObject(members.ToSequence(), place, _problems.Steps);
    }

    /// <summary>Whether something follows in a list or an object: takes the comma before it. A comma before the end is noted and taken too.</summary>
    private bool HasNext(JsonPlace place, char end, string kind)
    {
        SkipSpace(place);
        var comma = _at;
        if (!Take(','))
        {
            return false;
        }

        SkipSpace(place);
        if (_at == _utf8.Length || _utf8[_at] != end)
        {
            return true;
        }

        _problems.Add(new(ProblemCodes.TrailingComma, place.Pointer, comma, $"This comma has nothing after it: the {kind} ends there.", "Remove the comma."));
        return false;
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

        SkipSpace(parent);
        if (!Take(':'))
        {
            Expected($"a colon after {Plain.Quote(name)}", parent);
            return null;
        }

        SkipSpace(parent);
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
        return JsonNumberForm.IsNumber(token) ? new JsonNumber(text, place)
            : IsNotFinite(text) ? NotANumber(text, place)
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
        return word is JsonWord.True or JsonWord.False or JsonWord.Null ? new JsonWord(word, place)
            : IsNotFinite(word) ? NotANumber(word, place)
            : Stop(ProblemCodes.Syntax, place, $"{Plain.Quote(word)} stands without quotation marks.", "Write texts between quotation marks: \"like this\".");
    }

    // as other languages and programs write them
    private static bool IsNotFinite(string text) => text.TrimStart('-', '+').ToUpperInvariant() is "NAN" or "INFINITY" or "INF";

    private readonly JsonValue? NotANumber(string text, JsonPlace place) =>
        Stop(ProblemCodes.NotANumber, place, $"{text} isn't a number that a pattern can hold.", "Write a number in digits, such as 12. What follows was not read.");

    private readonly char Peek() => _at < _utf8.Length ? (char)_utf8[_at] : '\0';

    private bool Take(char wanted)
    {
        var taken = _at < _utf8.Length && _utf8[_at] == wanted;
        _at += taken ? 1 : 0;
        return taken;
    }

    /// <summary>Steps over white space, and over comments, which are noted.</summary>
    private void SkipSpace(JsonPlace around)
    {
        while (true)
        {
            while (_at < _utf8.Length && _utf8[_at] is (byte)' ' or (byte)'\n' or (byte)'\r' or (byte)'\t')
            {
                _at++;
            }

            var length = CommentLength(_utf8[_at..]);
            if (length == 0)
            {
                return;
            }

            if (_problems.IsFull)
            {
                _problems.AddUnlisted();
            }
            else
            {
                _problems.Add(new(ProblemCodes.Comment, around.Pointer, _at, "A comment starts here; a pattern file can't hold any.", "Remove the comment. What readers should know can go into \"notes\"."));
            }

            _at += length;
        }
    }

    private static int CommentLength(ReadOnlySpan<byte> rest)
    {
        if (rest.StartsWith("//"u8))
        {
            var end = rest.IndexOfAny((byte)'\n', (byte)'\r');
            return end < 0 ? rest.Length : end;
        }

        if (rest.StartsWith("/*"u8))
        {
            var end = rest[2..].IndexOf("*/"u8);
            return end < 0 ? rest.Length : end + 4;
        }

        return 0;
    }

    /// <summary>What stands here, in words; null where it is not UTF-8.</summary>
    private readonly string? Found() =>
        _at == _utf8.Length ? "the end of the file"
        : _utf8[_at] == '"' ? "a quotation mark"
        : System.Text.Rune.DecodeFromUtf8(_utf8[_at..], out var rune, out _) == System.Buffers.OperationStatus.Done ? Plain.Quote(rune.ToString())
        : null;

    private readonly JsonValue? Expected(string wanted, JsonPlace place)
    {
        _problems.Add(Found() is { } found
            ? new(ProblemCodes.Syntax, place.Pointer, _at, $"There should be {wanted} here, not {found}.", "Fix this place, then read the file again: what follows was not read.")
            : new(ProblemCodes.InvalidUtf8, place.Pointer, _at, "A byte here is not UTF-8.", "Save the file as UTF-8, then read it again: what follows was not read."));
        return null;
    }

    private readonly JsonValue? Stop(string code, JsonPlace place, string what, string remedy)
    {
        _problems.Add(code, place, what, remedy);
        return null;
    }
}
