using System.Globalization;

namespace PatternShop.Weave;

/// <summary>
/// Reads the members of one object by type. A member that cannot be read is noted as a problem and answered with a value
/// that keeps every rule, so that the rest can still be judged.
/// </summary>
internal sealed class MemberReader
{
    private readonly JsonObject _object;
    private readonly FileProblems _problems;

    /// <summary>Lets every member stand, whatever its name.</summary>
    public MemberReader(JsonObject json, FileProblems problems)
    {
        _object = json;
        _problems = problems;
    }

    /// <summary>Notes the members that are not among the known.</summary>
    public MemberReader(JsonObject json, FileProblems problems, params ReadOnlySpan<string> known)
        : this(json, problems)
    {
        string? remedy = null;
        problems.Steps.Add((long)json.Members.Count * known.Length);
        foreach (var member in json.Members)
        {
            if (!known.Contains(member.Name))
            {
                remedy ??= $"Remove it; what may stand here: {string.Join(", ", known)}.";
                problems.Add(new(
                    ProblemCodes.UnknownMember,
                    member.Value.Place.Pointer,
                    member.NameOffset,
                    $"{Plain.Quote(member.Name)} has no meaning here.",
                    remedy));
            }
        }
    }

    public bool Has(string name) => _object[name] is not null;

    /// <summary>The member, or null when it is absent, which is noted where it is required.</summary>
    public JsonValue? Find(string name, bool required)
    {
        var value = _object[name];
        if (value is null && required)
        {
            _problems.Add(
                ProblemCodes.MissingMember,
                _object.Place.Member(name, _object.Place.Offset),
                $"{Plain.Quote(name)} is missing.",
                $"Add {Plain.Quote(name)}.");
        }

        return value;
    }

    /// <summary>A member of one type, or null when it is absent or of another.</summary>
    public T? Find<T>(string name, bool required, string wanted)
        where T : JsonValue
    {
        var value = Find(name, required);
        return value is null ? null : Typed<T>(value, name, wanted);
    }

    public JsonObject? Object(string name, bool required) => Find<JsonObject>(name, required, "an object in braces");

    public JsonArray? Array(string name, bool required) => Find<JsonArray>(name, required, "a list in square brackets");

    /// <summary>A text; required when there is no fallback.</summary>
    public string Text(string name, string? fallback) =>
        Find<JsonText>(name, fallback is null, "a text in quotation marks")?.Value ?? fallback ?? "-";

    /// <summary>A whole number; required when there is no fallback.</summary>
    public int Whole(string name, int neutral, int? fallback)
    {
        var number = Find<JsonNumber>(name, fallback is null, "a whole number without quotation marks");
        return number is null ? Has(name) ? neutral : fallback ?? neutral : Whole(number) ?? neutral;
    }

    /// <summary>A whole number that must be there; null where it cannot be read.</summary>
    public int? Whole(string name) =>
        Find<JsonNumber>(name, required: true, "a whole number without quotation marks") is { } number ? Whole(number) : null;

    /// <summary>A yes or no that may be left out.</summary>
    public bool YesOrNo(string name, bool fallback)
    {
        const string Wanted = "true or false";
        if (Find<JsonWord>(name, required: false, Wanted) is not { } word)
        {
            return fallback;
        }

        if (word.IsNull)
        {
            _problems.Add(ProblemCodes.WrongType, word.Place, $"{Plain.Quote(name)} is {word.Kind}, not {Wanted}.", $"Write {Wanted}.");
            return fallback;
        }

        return word.Word == JsonWord.True;
    }

    /// <summary>The member "amount", which must be there: a decimal number as a text; 1 where it cannot be read.</summary>
    public decimal Amount()
    {
        var amount = Find<JsonText>("amount", required: true, "a number in quotation marks, such as \"4.5\"");
        return amount is null ? 1 : Amount(amount);
    }

    /// <summary>A word of an enumeration; required when there is no fallback.</summary>
    public T? Word<T>(string name, WordTable<T> words, T? fallback)
        where T : struct, Enum
    {
        if (Find<JsonText>(name, fallback is null, "a text in quotation marks") is not { } text)
        {
            return fallback;
        }

        var value = words.Read(text.Value);
        if (value is null)
        {
            _problems.Add(ProblemCodes.UnknownWord, text.Place, $"{Plain.Quote(text.Value)} has no meaning for {Plain.Quote(name)}.", $"Write {words.Choice}.");
        }

        return value ?? fallback;
    }

    /// <summary>The value as one type, or null, which is noted.</summary>
    public T? Typed<T>(JsonValue value, string label, string wanted)
        where T : JsonValue
    {
        if (value is T typed)
        {
            return typed;
        }

        _problems.Add(ProblemCodes.WrongType, value.Place, $"{Plain.Quote(label)} is {value.Kind}, not {wanted}.", $"Write {wanted}.");
        return null;
    }

    private decimal Amount(JsonText json)
    {
        var text = json.Value;
        var fits = text.Length <= 24
            && decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _);
        var formed = fits && char.IsAsciiDigit(text[^1]) && (char.IsAsciiDigit(text[0]) || (text[0] == '-' && char.IsAsciiDigit(text[1])));
        if (!formed)
        {
            _problems.Add(
                ProblemCodes.NotDecimal, json.Place, $"{Plain.Quote(text)} is not a number that can be used.", "Write digits, with a point for decimals, such as \"4.5\".");
            return 1;
        }

        return decimal.Parse(text, CultureInfo.InvariantCulture);
    }

    private int? Whole(JsonNumber number)
    {
        if (int.TryParse(number.Text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole))
        {
            return whole;
        }

        var shown = Plain.Cut(number.Text, 40);
        // infinite where not even a floating-point number is as large
        switch (double.Parse(number.Text, NumberStyles.Float, CultureInfo.InvariantCulture))
        {
            case > int.MaxValue:
                _problems.Add(ProblemCodes.NumberSize, number.Place, $"{shown} is larger than any number that is used here.", "Write a smaller number, in digits.");
                break;
            case < int.MinValue:
                _problems.Add(ProblemCodes.NumberSize, number.Place, $"{shown} is smaller than any number that is used here.", "Write a larger number, in digits.");
                break;
            default:
                _problems.Add(ProblemCodes.NotWhole, number.Place, $"{shown} is not written as a whole number.", "Write it without point and exponent.");
                break;
        }

        return null;
    }
}
