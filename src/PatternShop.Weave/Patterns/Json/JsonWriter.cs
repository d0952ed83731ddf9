using System.Globalization;
using System.Text;

namespace PatternShop.Weave;

/// <summary>
/// Writes JSON: canonically (RFC 8785: members sorted by the UTF-16 units of their names, no spaces, the fewest escapes,
/// whole numbers only), or for people, in the given order, a line for each thing.
/// </summary>
internal static class JsonWriter
{
    // beyond it a double no longer holds every whole number, and RFC 8785 writes doubles
    private const long LargestWhole = (1L << 53) - 1;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>The canonical bytes.</summary>
    /// <exception cref="ArgumentException">A number that is not whole or too large, or a text with half a surrogate pair.</exception>
    public static byte[] Canonical(JsonValue value)
    {
        var text = new StringBuilder();
        Write(text, value, Layout.Canonical, 0);
        return Strict.GetBytes(text.ToString());
    }

    /// <summary>Bytes for people to read, ending in a new line.</summary>
    /// <exception cref="ArgumentException">As for <see cref="Canonical"/>.</exception>
    public static byte[] Readable(JsonValue value)
    {
        var text = new StringBuilder();
        Write(text, value, Layout.Readable, 0);
        return Strict.GetBytes(text.Append('\n').ToString());
    }

    private enum Layout
    {
        Canonical,
        Readable,
        OneLine,
    }

    private static void Write(StringBuilder into, JsonValue value, Layout layout, int depth)
    {
        switch (value)
        {
            case JsonText text:
                WriteText(into, text.Value);
                break;
            case JsonNumber number:
                into.Append(Whole(number.Text));
                break;
            case JsonWord word:
                into.Append(word.Word);
                break;
            case JsonArray array:
                Write(into, array.Items, item => Write(into, item, Inner(layout, item), depth + 1), '[', ']', layout, depth);
                break;
            case JsonObject json:
                var members = layout == Layout.Canonical ? json.Members.OrderBy(member => member.Name, StringComparer.Ordinal).ToSequence() : json.Members;
                Write(into, members, member => WriteMember(into, member, layout, depth + 1), '{', '}', layout, depth);
                break;
        }
    }

    private static void WriteMember(StringBuilder into, JsonMember member, Layout layout, int depth)
    {
        WriteText(into, member.Name);
        into.Append(layout == Layout.Canonical ? ":" : ": ");
        Write(into, member.Value, Inner(layout, member.Value), depth);
    }

    private static void Write<T>(StringBuilder into, Sequence<T> items, Action<T> write, char open, char close, Layout layout, int depth)
    {
        into.Append(open);
        for (var i = 0; i < items.Count; i++)
        {
            into.Append(i == 0 ? "" : ",");
            Space(into, layout, depth + 1, first: i == 0);
            write(items[i]);
        }

        if (items.Count > 0)
        {
            Space(into, layout, depth, first: true);
        }

        into.Append(close);
    }

    private static void Space(StringBuilder into, Layout layout, int depth, bool first)
    {
        if (layout == Layout.Readable)
        {
            into.Append('\n').Append(' ', 2 * depth);
        }
        else if (layout == Layout.OneLine && !first)
        {
            into.Append(' ');
        }
    }

    // objects that hold nothing nested read best on one line
    private static Layout Inner(Layout layout, JsonValue value) =>
        layout == Layout.Readable && value is JsonObject json && json.Members.All(member => member.Value is not (JsonArray or JsonObject))
            ? Layout.OneLine
            : layout;

    private static string Whole(string number) =>
        long.TryParse(number, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var whole) && Math.Abs(whole) <= LargestWhole
            ? Plain.Number(whole)
            : throw new ArgumentException($"{number} is not a whole number of at most {LargestWhole}.", nameof(number));

    private static void WriteText(StringBuilder into, string text)
    {
        into.Append('"');
        foreach (var unit in text)
        {
            _ = unit switch
            {
                '"' => into.Append("\\\""),
                '\\' => into.Append("\\\\"),
                '\b' => into.Append("\\b"),
                '\t' => into.Append("\\t"),
                '\n' => into.Append("\\n"),
                '\f' => into.Append("\\f"),
                '\r' => into.Append("\\r"),
                < ' ' => into.Append("\\u").Append(((int)unit).ToString("x4", CultureInfo.InvariantCulture)),
                _ => into.Append(unit),
            };
        }

        into.Append('"');
    }
}
