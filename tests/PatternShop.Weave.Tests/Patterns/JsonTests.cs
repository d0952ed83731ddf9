using System.Text;
using System.Text.Json;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class JsonTests
{
    // RFC 8785, section 3.2.2, the member "string" of its example
    [Fact]
    public void Strings_take_the_fewest_escapes() =>
        AssertCanonical("""{"string":"€$\u000f\nA'B\"\\\\\"/"}""", """{ "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/" }""");

    // RFC 8785, section 3.2.2.2: the escapes with a letter, the others in lower-case hexadecimal, 7f as it is
    [Fact]
    public void Control_characters_are_escaped_by_letter_or_by_lower_case_number() =>
        AssertCanonical(
            "[\"\\b\\t\\n\\f\\r\\u0000\\u001f\u007f\"]", """["\u0008\u0009\u000A\u000C\u000D\u0000\u001F\u007F"]""");

    // RFC 8785, section 3.2.2, the member "literals" of the example
    [Fact]
    public void Words_stay_in_their_order() => AssertCanonical("""{"literals":[null,true,false]}""", """{ "literals": [null, true, false] }""");

    // RFC 8785, section 3.2.3, the example of sorting; the emoji (D83D DE00) stands before the letter FB33
    [Fact]
    public void Members_are_sorted_by_the_utf16_units_of_their_names() =>
        AssertCanonical(
            "{\"\\r\":\"Carriage Return\",\"1\":\"One\",\"\u0080\":\"Control\",\"ö\":\"Latin Small Letter O With Diaeresis\","
            + "\"€\":\"Euro Sign\",\"😀\":\"Emoji: Grinning Face\",\"\uFB33\":\"Hebrew Letter Dalet With Dagesh\"}",
            """
            {
              "\u20ac": "Euro Sign",
              "\r": "Carriage Return",
              "\ufb33": "Hebrew Letter Dalet With Dagesh",
              "1": "One",
              "\ud83d\ude00": "Emoji: Grinning Face",
              "\u0080": "Control",
              "\u00f6": "Latin Small Letter O With Diaeresis"
            }
            """);

    // RFC 8785, section 3.2.2.3 and appendix B (section and values from memory): minus zero is written 0, and the largest whole number that a double holds with all smaller ones
    [Fact]
    public void Whole_numbers_are_written_plainly() =>
        AssertCanonical("[0,-1,9007199254740991,-9007199254740991]", "[-0, -1, 9007199254740991, -9007199254740991]");

    [Theory]
    [InlineData("[9007199254740992]")]
    [InlineData("[1.5]")]
    [InlineData("[1e2]")]
    public void Other_numbers_have_no_canonical_form_here(string json) =>
        Assert.Throws<ArgumentException>(() => JsonWriter.Canonical(Parse(json)!));

    [Theory]
    [InlineData('\uD800')]
    [InlineData('\uDC00')]
    public void Half_a_pair_of_surrogates_cannot_be_written(char half) =>
        Assert.Throws<EncoderFallbackException>(() => JsonWriter.Canonical(new JsonText("a" + half, JsonPlace.None)));

    [Fact]
    public void Member_names_and_spaces_do_not_matter_to_the_canonical_form() =>
        AssertCanonical("""{"a":[1,{}],"b":{"c":[],"d":""}}""", "\t{ \"b\" : { \"d\":\"\", \"c\":[ ] } ,\r\n\"a\":[1 , { } ] } ");

    [Fact]
    public void Pointers_are_those_of_rfc_6901()
    {
        var value = (JsonObject)Parse("""{"a":[0,{"b/c~d":1}]}""")!;
        Assert.Equal("", value.Place.Pointer);
        Assert.Equal("/a/1/b~1c~0d", ((JsonObject)((JsonArray)value["a"]!).Items[1]).Members[0].Value.Place.Pointer);
    }

    /// <summary>The judge is System.Text.Json, which knows nothing of this parser: both take the same texts and understand the same by them.</summary>
    [Fact]
    public void The_parser_agrees_with_an_independent_one()
    {
        var (good, bad) = (0, 0);
        var pieces = Gen.OneOf(
            "{", "}", "[", "]", ",", ":", "\"a\"", "\"b\"", "\"\"", "\"\\u00e9\\n\"", "\"\\q\"", "\"é\\\"\"", "0", "-1", "01", "1.5", "2e+3", "-", "1.", "true", "nul", "null", " ", "\n", "x", "\"");
        var built = Gen.Recursive<string>((depth, self) => depth == 4
            ? Gen.OneOf("1", "\"t\"", "null", "-0.5e1")
            : Gen.OneOf(
                self.Array[0, 3].Select(items => "[" + string.Join(",", items) + "]"),
                self.Array[0, 3].Select(items => "{" + string.Join(" , ", items.Select((item, i) => $"\"{i}\" : {item}")) + "}"),
                Gen.OneOf("1", "\"t\\t\"", "true", "\"\\ud83d\\ude00\"")));
        var spoilt = Gen.Select(built, pieces, Gen.Int[0, 200]).Select((text, piece, at) => text.Insert(at % (text.Length + 1), piece));
        Gen.OneOf(pieces.Array[1, 8].Select(string.Concat), built, spoilt).SampleFixed(
            text =>
            {
                var expected = Independent(text);
                var problems = new FileProblems();
                var actual = JsonParser.Parse(Encoding.UTF8.GetBytes(text), 0, problems);
                Assert.Equal(expected is not null, actual is not null && !problems.Any);
                if (expected is not null)
                {
                    Assert.Equal(expected, Understood(actual!));
                }

                _ = expected is null ? Interlocked.Increment(ref bad) : Interlocked.Increment(ref good);
            },
            Effort.Of(20_000, 500_000));
        Assert.True(good > bad / 10 && bad > good / 10, $"{good} good, {bad} bad");
    }

    private static string? Independent(string text)
    {
        try
        {
            using var json = JsonDocument.Parse(text, new JsonDocumentOptions { AllowDuplicateProperties = false, MaxDepth = Bounds.FileDepth });
            return Understood(json.RootElement);
        }
        catch (Exception e) when (e is JsonException or InvalidOperationException)
        {
            // the latter where a text holds half a character
            return null;
        }
    }

    private static string Understood(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Object => "{" + string.Concat(value.EnumerateObject().Select(m => m.Name + "=" + Understood(m.Value) + ";")) + "}",
        JsonValueKind.Array => "[" + string.Concat(value.EnumerateArray().Select(item => Understood(item) + ";")) + "]",
        JsonValueKind.String => "'" + value.GetString() + "'",
        _ => value.GetRawText(),
    };

    private static string Understood(JsonValue value) => value switch
    {
        JsonObject json => "{" + string.Concat(json.Members.Select(m => m.Name + "=" + Understood(m.Value) + ";")) + "}",
        JsonArray array => "[" + string.Concat(array.Items.Select(item => Understood(item) + ";")) + "]",
        JsonText text => "'" + text.Value + "'",
        JsonNumber number => number.Text,
        JsonWord word => word.Word,
        _ => throw new InvalidOperationException(),
    };

    private static void AssertCanonical(string expected, string json) =>
        Assert.Equal(expected, Encoding.UTF8.GetString(JsonWriter.Canonical(Parse(json)!)));

    private static JsonValue? Parse(string json)
    {
        var problems = new FileProblems();
        var value = JsonParser.Parse(Encoding.UTF8.GetBytes(json), 0, problems);
        Assert.Equal([], problems.Located(Encoding.UTF8.GetBytes(json)));
        return value;
    }
}
