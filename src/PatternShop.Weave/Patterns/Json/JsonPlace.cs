namespace PatternShop.Weave;

/// <summary>Where a value stands: its first byte in the file, and the way to it from the whole.</summary>
internal sealed class JsonPlace
{
    private const int LongestName = 60;

    private readonly JsonPlace? _parent;
    private readonly string? _name;
    private readonly int _index;

    private JsonPlace(JsonPlace? parent, string? name, int index, int offset)
    {
        _parent = parent;
        _name = name;
        _index = index;
        Offset = offset;
    }

    /// <summary>The place of values that were not read from a file.</summary>
    public static JsonPlace None { get; } = new(null, null, 0, 0);

    /// <summary>Bytes before the value.</summary>
    public int Offset { get; }

    /// <summary>The JSON pointer (RFC 6901). Names longer than any that has a meaning are cut, so that pointers stay short.</summary>
    public string Pointer
    {
        get
        {
            var parts = new Stack<string>();
            for (var at = this; at._parent is not null; at = at._parent)
            {
                parts.Push(at._name is null ? Plain.Number(at._index) : Escape(at._name));
            }

            return string.Concat(parts.Select(part => "/" + part));
        }
    }

    public static JsonPlace Root(int offset) => new(null, null, 0, offset);

    public JsonPlace Member(string name, int offset) => new(this, name, 0, offset);

    public JsonPlace Item(int index, int offset) => new(this, null, index, offset);

    /// <summary>The name of a member as it stands in a pointer.</summary>
    public static string Escape(string name)
    {
        var kept = name.Length <= LongestName ? name : Plain.Cut(name, LongestName);
        return kept.Replace("~", "~0", StringComparison.Ordinal).Replace("/", "~1", StringComparison.Ordinal);
    }
}
