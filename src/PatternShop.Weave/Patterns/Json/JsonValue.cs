namespace PatternShop.Weave;

/// <summary>A value of JSON (RFC 8259) with the place at which it was read. Immutable; upgrades make new ones and keep the places.</summary>
internal abstract class JsonValue(JsonPlace place)
{
    public JsonPlace Place { get; } = place;

    /// <summary>What it is, with an article, for sentences.</summary>
    public abstract string Kind { get; }
}

internal sealed class JsonText(string value, JsonPlace place) : JsonValue(place)
{
    public string Value { get; } = value;

    public override string Kind => "a text";
}

/// <summary>A number, kept as it was written.</summary>
internal sealed class JsonNumber(string text, JsonPlace place) : JsonValue(place)
{
    public string Text { get; } = text;

    public override string Kind => "a number";
}

/// <summary>One of the words true, false and null.</summary>
internal sealed class JsonWord(string word, JsonPlace place) : JsonValue(place)
{
    public const string True = "true";
    public const string False = "false";
    public const string Null = "null";

    public string Word { get; } = word;

    public bool IsNull => Word == Null;

    public override string Kind => Word;
}

internal sealed class JsonArray(Sequence<JsonValue> items, JsonPlace place) : JsonValue(place)
{
    public Sequence<JsonValue> Items { get; } = items;

    public override string Kind => "a list";
}

internal sealed class JsonObject(Sequence<JsonMember> members, JsonPlace place, ReadingSteps? steps = null) : JsonValue(place)
{
    // more than any object has whose members all have a meaning
    private const int Few = 20;

    private Dictionary<string, JsonValue>? _byName;

    public Sequence<JsonMember> Members { get; } = members;

    public override string Kind => "an object";

    public JsonValue? this[string name] => Members.Count <= Few ? Compared(name) : Indexed(name);

    private JsonValue? Compared(string name)
    {
        foreach (var member in Members)
        {
            steps?.Add(1);
            if (member.Name == name)
            {
                return member.Value;
            }
        }

        return null;
    }

    // A file may hold many members that mean nothing, and ask for one of them at every other place.
    private JsonValue? Indexed(string name)
    {
        if (_byName is null)
        {
            steps?.Add(Members.Count);
            _byName = Members.ToDictionary(member => member.Name, member => member.Value, StringComparer.Ordinal);
        }

        steps?.Add(1);
        return _byName.GetValueOrDefault(name);
    }

    /// <summary>The same object with a member replaced where it stands, or added at the end.</summary>
    public JsonObject With(string name, JsonValue value)
    {
        var member = new JsonMember(name, value.Place.Offset, value);
        return this[name] is null
            ? new JsonObject(Members.Append(member).ToSequence(), Place, steps)
            : new JsonObject(Members.Select(m => m.Name == name ? member : m).ToSequence(), Place, steps);
    }

    /// <summary>The same object without the members of that name.</summary>
    public JsonObject Without(string name) => new(Members.Where(m => m.Name != name).ToSequence(), Place, steps);
}

/// <summary>A member of an object; its name stands at NameOffset in the file.</summary>
internal sealed record JsonMember(string Name, int NameOffset, JsonValue Value);
