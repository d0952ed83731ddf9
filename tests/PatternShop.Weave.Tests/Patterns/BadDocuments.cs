using System.Globalization;
using System.Text;

namespace PatternShop.Weave.Tests;

/// <summary>A file that must be refused, with its problems as "code pointer line:column", one a line.</summary>
public sealed record BadDocument(string Name, byte[] Utf8, string Expected)
{
    public override string ToString() => Name;
}

/// <summary>Bad files made by hand, each from the same good one.</summary>
public static class BadDocuments
{
    public const string Good = """
        {
        "format": 4,
        "title": "Sample",
        "language": "en",
        "licence": "Weave it",
        "notes": "None",
        "motif": [
          "x..x",
          ".xx."
        ],
        "width": {"repeats": 2, "offset": 1, "balance": 3,
          "floating": {"edges": "alike", "first": "under"}},
        "rows": {
          "wefts": [{"start": "left"}, {"start": "right"}],
          "firstPlain": "under",
          "steps": [
            {"step": "chart", "first": 1, "last": 2, "weft": 1},
            {"step": "plain", "count": 1, "weft": 2},
            {"step": "stitch", "name": "twining", "yarn": "own", "across": 1, "from": "left"},
            {"step": "stitch", "name": "hemming", "yarn": "working", "across": 2, "weft": 1},
            {"step": "repeat", "times": 2, "steps": [
              {"step": "chart", "first": 2, "last": 1, "weft": 1}]}
          ]},
        "gauge": {"sett": {"amount": "4", "unit": "in"},
          "rows": {"amount": "5", "unit": "10 cm"}},
        "glyphs": "cells"
        }
        """;

    private const string ChartStep = """{"step": "chart", "first": 1, "last": 2, "weft": 1}""";

    public static IReadOnlyList<BadDocument> All { get; } =
    [
        // the file
        new("nothing", [], "file-empty  1:1"),
        new("only space", " \n\n  "u8.ToArray(), "file-empty  3:3"),
        new("only a byte order mark", [0xEF, 0xBB, 0xBF], "file-empty  1:1"),
        new("a list", "[]"u8.ToArray(), "wrong-type  1:1"),
        new("too large", new byte[Bounds.FileBytes + 1], "file-too-large  1:1"),
        new("not JSON at all", "<pattern/>"u8.ToArray(), "not-a-pattern  1:1"),
        new("words", "  Chart of the shawl\n"u8.ToArray(), "not-a-pattern  1:1"),
        new("a number", "12"u8.ToArray(), "not-a-pattern  1:1"),
        new("zeros", new byte[100], "not-a-pattern  1:1"),
        new("PNG", [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 13], "not-a-pattern  1:1"),
        new("JPEG", [0xFF, 0xD8, 0xFF, 0xE0, 0, 16], "not-a-pattern  1:1"),
        new("GIF", "GIF89a"u8.ToArray(), "not-a-pattern  1:1"),
        new("PDF", "%PDF-1.7\n"u8.ToArray(), "not-a-pattern  1:1"),
        new("ZIP", [0x50, 0x4B, 3, 4, 20, 0], "not-a-pattern  1:1"),
        new("gzip", [0x1F, 0x8B, 8, 0], "not-a-pattern  1:1"),
        new("RTF", "{\\rtf1\\ansi {}}"u8.ToArray(), "not-a-pattern  1:1"),
        new("UTF-16", Encoding.Unicode.GetBytes(Good), "not-a-pattern  1:1"),
        new("UTF-16 with a mark", [.. Encoding.Unicode.Preamble, .. Encoding.Unicode.GetBytes(Good)], "not-a-pattern  1:1"),
        new("UTF-16, larger byte first", Encoding.BigEndianUnicode.GetBytes(Good), "not-a-pattern  1:1"),
        new("UTF-32", [.. Encoding.UTF32.Preamble, .. Encoding.UTF32.GetBytes(Good)], "not-a-pattern  1:1"),
        new("too deep", Encoding.UTF8.GetBytes(new string('[', 100_000)), "too-deep /0/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0 1:17"),
        new("too many values", Encoding.UTF8.GetBytes("[" + string.Join(",\n", Enumerable.Repeat("1", 60_000)) + "]"), "too-many-values /49999 50000:1"),
        Instead("text after the end", "\"cells\"\n}", "\"cells\"\n}\n\n more", "trailing-text  29:2"),
        Instead("comma too many", "\".xx.\"\n]", "\".xx.\",\n]", "trailing-comma /motif 9:9"),
        Instead("comma before the last brace", "\"cells\"\n}", "\"cells\",\n}", "trailing-comma  26:18"),
        Instead("comma too many, and balance below 0", "\"balance\": 3,\n  \"floating\": {\"edges\": \"alike\", \"first\": \"under\"}}", "\"balance\": -3,}", "balance /width/balance 11:49\ntrailing-comma /width 11:51"),
        Instead("two commas", "\"x..x\",", "\"x..x\",,", "syntax /motif/1 8:10"),
        Instead("comma missing", "\"Sample\",", "\"Sample\"", "syntax  4:1"),
        Instead("comma missing in a list", "\"x..x\",", "\"x..x\"", "syntax /motif 9:3"),
        Instead("colon missing", "\"title\":", "\"title\"", "syntax  3:9"),
        Instead("name without quotation marks", "\"title\"", "title", "syntax  3:1"),
        Instead("quotation mark missing", "\"Sample\"", "\"Sample", "syntax /title 3:10"),
        Instead("end missing", "\"glyphs\": \"cells\"\n}", "\"glyphs\": \"cells\"\n", "syntax  27:1"),
        Instead("text without quotation marks", "\"cells\"", "cells", "syntax /glyphs 26:11"),
        Instead("leading zero", "\"repeats\": 2", "\"repeats\": 02", "syntax /width/repeats 11:22"),
        Instead("comment", "\"format\": 4,", "\"format\": 4, // four", "comment  2:14"),
        new("comment before everything", Encoding.UTF8.GetBytes("// mine\n" + Good), "comment  1:1"),
        Instead("comments of both kinds", "\"repeats\": 2", "\"repeats\" /* times */ : // how often\n2", "comment /width 11:21\ncomment /width 11:35"),
        Instead("comment without an end", "\"cells\"\n}", "\"cells\"\n} /* that is all", "comment  27:3"),
        Instead("NaN", "\"repeats\": 2", "\"repeats\": NaN", "not-a-number /width/repeats 11:22"),
        Instead("minus infinity", "\"repeats\": 2", "\"repeats\": -Infinity", "not-a-number /width/repeats 11:22"),
        Instead("plus sign", "\"repeats\": 2", "\"repeats\": +2", "syntax /width/repeats 11:22"),
        Bytes("Latin-1 in a text", "Weave it", [0x57, 0xE9, 0x57], "invalid-utf8 /licence 5:14"),
        Bytes("Latin-1 outside texts", "\"glyphs\"", [0xE9], "invalid-utf8  26:1"),
        Bytes("surrogates encoded as UTF-8", "Weave it", [0xED, 0xA0, 0x80], "invalid-utf8 /licence 5:13"),
        Instead("half a character", "Weave it", "a\\ud83db", "lone-surrogate /licence 5:14"),
        Instead("the other half", "Weave it", "\\ude00", "lone-surrogate /licence 5:13"),
        Instead("halves the wrong way round", "Weave it", "\\ude00\\ud83d", "lone-surrogate /licence 5:13\nlone-surrogate /licence 5:19"),
        Instead("tab in a text", "Weave it", "é\tx", "raw-control /licence 5:14"),
        Instead("unknown escape", "Weave it", "C:\\pattern", "unknown-escape /licence 5:15"),
        Instead("cut escape", "Weave it", "\\u00e", "unknown-escape /licence 5:13"),
        Instead("title twice", "\"language\"", "\"title\"", "duplicate-member /title 4:1"),
        Instead("twice, once escaped", "\"language\"", "\"t\\u0069tle\"", "duplicate-member /title 4:1"),

        // the form of the document
        Instead("newer format", "\"format\": 4", "\"format\": 5", "format-newer /format 2:11"),
        Instead("format 0", "\"format\": 4", "\"format\": 0", "format-unknown /format 2:11"),
        Instead("no format", "\"format\": 4,", "", "missing-member /format 1:1"),
        Instead("format as text", "\"format\": 4", "\"format\": \"3\"", "wrong-type /format 2:11"),
        Instead("no title", "\"title\": \"Sample\",", "", "missing-member /title 1:1"),
        Instead("title null", "\"Sample\"", "null", "wrong-type /title 3:10"),
        Instead("unknown member", "\"glyphs\"", "\"colours\"", "unknown-member /colours 26:1"),
        Instead("unknown member with a long name", "\"glyphs\"", $"\"{new string('g', 500)}\"", $"unknown-member /{new string('g', 60)}… 26:1"),
        Instead("unknown member in the width", "\"balance\"", "\"balance/ends~\"", "unknown-member /width/balance~1ends~0 11:38"),
        Instead("unknown member in a step", "\"count\": 1,", "\"count\": 1, \"times\": 2,", "unknown-member /rows/steps/1/times 18:35"),
        Instead("repeats with a point", "\"repeats\": 2", "\"repeats\": 2.0", "not-whole /width/repeats 11:22"),
        Instead("repeats with an exponent", "\"repeats\": 2", "\"repeats\": 2e0", "not-whole /width/repeats 11:22"),
        Instead("number beyond all", "\"repeats\": 2", "\"repeats\": 99999999999999999999", "number-size /width/repeats 11:22"),
        Instead("number with an exponent beyond all", "\"repeats\": 2", "\"repeats\": 1e400", "number-size /width/repeats 11:22"),
        Instead("number with an exponent far below zero", "\"offset\": 1", "\"offset\": -1e400", "number-size /width/offset 11:35"),
        Instead("format beyond all", "\"format\": 4", "\"format\": -1e400", "number-size /format 2:11"),
        Instead("number as text", "\"repeats\": 2", "\"repeats\": \"2\"", "wrong-type /width/repeats 11:22"),
        Instead("motif as one text", "[\n  \"x..x\",\n  \".xx.\"\n]", "\"x..x\"", "wrong-type /motif 7:10"),
        Instead("motif without rows", "[\n  \"x..x\",\n  \".xx.\"\n]", "[]", "motif-empty /motif 7:10"),
        Instead("row without cells", "\".xx.\"", "\"\"", "motif-empty /motif/1 9:3"),
        Instead("row too short", "\".xx.\"", "\".xx\"", "motif-row-length /motif/1 9:3"),
        Instead("row no text", "\".xx.\"", "6", "wrong-type /motif/1 9:3"),
        Instead("strange cell", "\".xx.\"", "\".oX.\"", "motif-cell /motif/1 9:3"),
        Instead("strange cells and too long", "\".xx.\"", "\"😀..\\t.\"", "motif-row-length /motif/1 9:3\nmotif-cell /motif/1 9:3"),
        Instead("unknown edges", "\"alike\"", "\"same\"", "unknown-word /width/floating/edges 12:25"),
        Instead("floating as a number", "{\"edges\": \"alike\", \"first\": \"under\"}", "1", "wrong-type /width/floating 12:15"),
        Instead("floating without first", ", \"first\": \"under\"", "", "missing-member /width/floating/first 12:15"),
        Instead("unknown side", "\"right\"", "\"top\"", "unknown-word /rows/wefts/1/start 14:42"),
        Instead("weft as a text", "{\"start\": \"right\"}", "\"right\"", "wrong-type /rows/wefts/1 14:32"),
        Instead("unknown glyphs", "\"cells\"", "\"Cells\"", "unknown-word /glyphs 26:11"),
        Instead("unknown step", "\"plain\"", "\"tabby\"", "unknown-word /rows/steps/1/step 18:14"),
        Instead("step without a kind", "\"step\": \"plain\", ", "", "missing-member /rows/steps/1/step 18:5"),
        Instead("step as a text", "{\"step\": \"plain\", \"count\": 1, \"weft\": 2}", "\"plain\"", "wrong-type /rows/steps/1 18:5"),
        Instead("steps as an object", ChartStep, "[]", "wrong-type /rows/steps/0 17:5"),
        Instead("repeat in a repeat", "{\"step\": \"chart\", \"first\": 2, \"last\": 1, \"weft\": 1}", "{\"step\": \"repeat\", \"times\": 2, \"steps\": []}", "nested-repeat /rows/steps/4/steps/0 22:7"),
        Instead("rows as a list", "\"rows\": {\"amount\": \"5\", \"unit\": \"10 cm\"}", "\"rows\": []", "wrong-type /gauge/rows 25:11"),
        Instead("no unit", ", \"unit\": \"in\"", "", "missing-member /gauge/sett/unit 24:19"),
        Instead("unknown unit", "\"in\"", "\"inch\"", "unknown-word /gauge/sett/unit 24:43"),
        Instead("amount as a number", "\"4\"", "4", "wrong-type /gauge/sett/amount 24:30"),
        Instead("amount with a comma", "\"4\"", "\"4,5\"", "not-decimal /gauge/sett/amount 24:30"),
        Instead("amount with an exponent", "\"4\"", "\"4e1\"", "not-decimal /gauge/sett/amount 24:30"),
        Instead("amount with a space", "\"4\"", "\" 4\"", "not-decimal /gauge/sett/amount 24:30"),
        Instead("amount empty", "\"4\"", "\"\"", "not-decimal /gauge/sett/amount 24:30"),
        Instead("amount ending in a point", "\"4\"", "\"4.\"", "not-decimal /gauge/sett/amount 24:30"),
        Instead("amount with a sign", "\"4\"", "\"+4\"", "not-decimal /gauge/sett/amount 24:30"),
        Instead("amount of very many digits", "\"4\"", $"\"4.{new string('0', 30)}1\"", "not-decimal /gauge/sett/amount 24:30"),

        // what it says
        Instead("blank title", "Sample", "  ", "text-empty /title 3:10"),
        Instead("long title", "Sample", new string('T', 121), "text-length /title 3:10"),
        Instead("new line in the title", "Sample", "Sam\\nple", "text-character /title 3:10"),
        Instead("control character in the title", "Sample", "Sam\\u0085ple", "text-character /title 3:10"),
        Instead("zero in the title", "Sample", "Sam\\u0000ple", "text-character /title 3:10"),
        Instead("tab in the title", "Sample", "Sam\\tple", "text-character /title 3:10"),
        Instead("title turned around", "Sample", "Sam\\u202eple", "text-direction /title 3:10"),
        Instead("title within marks of direction", "Sample", "\u2066Sample\u2069", "text-direction /title 3:10"),
        Instead("licence turned around", "Weave it", "\u202dWeave it", "text-direction /licence 5:12"),
        Instead("notes turned around", "None", "One\\nTwo\\u202b", "text-direction /notes 6:10"),
        Instead("stitch turned around", "twining", "twin\u202cing", "text-direction /rows/steps/2/name 19:32"),
        Own("words turned around", "\"rowWords\": [{\"row\": 1, \"text\": \"a\u2067b\"}]", "text-direction /rowWords/0/text 6:50"),
        Own("caption of a video turned around", "\"videos\": [{\"address\": \"https://films.example/1\", \"caption\": \"a\u202ab\"}]", "text-direction /videos/0/caption 6:79"),
        Own("caption of a photo turned around", $"\"photos\": [{Picture(1).Replace("\"c\"", "\"\u2068c\"", StringComparison.Ordinal)}]", "text-direction /photos/0/caption 6:117"),
        Instead("no character at all", "Weave it", "\\ufffe", "text-character /licence 5:12"),
        Instead("line separator", "None", "\u2028", "text-character /notes 6:10"),
        Instead("carriage return in the notes", "None", "A\\r\\nB", "text-character /notes 6:10"),
        Instead("long licence", "Weave it", new string('L', 2001), "text-length /licence 5:12"),
        Instead("long notes", "None", new string('N', 20_001), "text-length /notes 6:10"),
        Instead("language in words", "\"en\"", "\"English language\"", "language /language 4:13"),
        Instead("empty language", "\"en\"", "\"\"", "language /language 4:13"),
        Instead("too many rows", "\".xx.\"", string.Join(",", Enumerable.Repeat("\".xx.\"", 1000)), "motif-size /motif 7:10"),
        new("too many ends", Encoding.UTF8.GetBytes(Good.Replace("x..x", new string('x', 1001), StringComparison.Ordinal).Replace(".xx.", new string('.', 1001), StringComparison.Ordinal).Replace("\"repeats\": 2", "\"repeats\": 1", StringComparison.Ordinal)), "motif-size /motif 7:10\npiece-ends /width 11:10"),
        Instead("no repeats", "\"repeats\": 2", "\"repeats\": 0", "repeats /width/repeats 11:22"),
        Instead("offset too large", "\"offset\": 1", "\"offset\": 4", "offset /width/offset 11:35"),
        Instead("offset below 0", "\"offset\": 1", "\"offset\": -1", "offset /width/offset 11:35"),
        Instead("balance below 0", "\"balance\": 3", "\"balance\": -3", "balance /width/balance 11:49"),
        Instead("too many ends across", "\"repeats\": 2", "\"repeats\": 250", "piece-ends /width 11:10"),
        Instead("more ends than numbers", "\"repeats\": 2", "\"repeats\": 2147483647", "piece-ends /width 11:10"),
        Instead("no wefts", "[{\"start\": \"left\"}, {\"start\": \"right\"}]", "[]", "wefts /rows/wefts 14:12\nweft-unknown /rows/steps/0/weft 17:54\nweft-unknown /rows/steps/1/weft 18:43\nweft-unknown /rows/steps/3/weft 20:83\nweft-unknown /rows/steps/4/steps/0/weft 22:56"),
        Instead("too many wefts", "{\"start\": \"right\"}", string.Join(",", Enumerable.Repeat("{}", 16)), "wefts /rows/wefts 14:12"),
        Instead("weft that is not listed", "\"weft\": 2", "\"weft\": 3", "weft-unknown /rows/steps/1/weft 18:43"),
        Instead("weft 0", "\"weft\": 2", "\"weft\": 0", "weft-unknown /rows/steps/1/weft 18:43"),
        Instead("row that does not exist", "\"first\": 1, \"last\": 2", "\"first\": 0, \"last\": 3", "chart-row /rows/steps/0/first 17:32\nchart-row /rows/steps/0/last 17:43"),
        Instead("rows beyond numbers", "\"first\": 1, \"last\": 2", "\"first\": -2147483648, \"last\": 2147483647", "chart-row /rows/steps/0/first 17:32\nchart-row /rows/steps/0/last 17:53"),
        Instead("no plain rows", "\"count\": 1", "\"count\": 0", "plain-count /rows/steps/1/count 18:32"),
        Instead("no times", "\"times\": 2", "\"times\": 0", "repeat-times /rows/steps/4/times 21:33"),
        Instead("empty repeat", "[\n      {\"step\": \"chart\", \"first\": 2, \"last\": 1, \"weft\": 1}]", "[]", "repeat-empty /rows/steps/4/steps 21:45"),
        Instead("stitch without a name", "\"twining\"", "\"\"", "text-empty /rows/steps/2/name 19:32"),
        Instead("stitch with a long name", "twining", new string('t', 61), "text-length /rows/steps/2/name 19:32"),
        Instead("stitch across too often", "\"across\": 1,", "\"across\": 101,", "stitch-across /rows/steps/2/across 19:68"),
        Instead("stitch across never", "\"across\": 1,", "\"across\": 0,", "stitch-across /rows/steps/2/across 19:68"),
        Instead("working weft from a side", "\"across\": 2, \"weft\": 1", "\"across\": 2, \"from\": \"left\"", "stitch-from /rows/steps/3/from 20:83"),
        Instead("own yarn of a weft", "\"across\": 1, \"from\": \"left\"", "\"across\": 1, \"weft\": 1", "stitch-weft /rows/steps/2/weft 19:79"),
        Instead("too many steps", ChartStep, string.Join(",", Enumerable.Repeat(ChartStep, 996)), "step-count /rows/steps 16:12"),
        Instead("too many rows to weave", "\"times\": 2", "\"times\": 100000", "piece-rows /rows/steps 16:12"),
        Instead("more rows than numbers", "\"count\": 1,", "\"count\": 2147483647,", "piece-rows /rows/steps 16:12"),
        Rows("rows whose product is more than numbers", """{"steps": [{"step": "repeat", "times": 2, "steps": [{"step": "plain", "count": 2147483647}]}]}""", "piece-rows /rows/steps 13:19"),
        Rows("times beyond all rows", """{"steps": [{"step": "repeat", "times": 2147483647, "steps": [{"step": "plain", "count": 2147483647}]}]}""", "piece-rows /rows/steps 13:19"),
        Instead("too many stitches", ",\n    {\"step\": \"repeat\", \"times\": 2, \"steps\": [\n      {\"step\": \"chart\", \"first\": 2, \"last\": 1, \"weft\": 1}]}", ",{\"step\":\"repeat\",\"times\":99999,\"steps\":[{\"step\":\"stitch\",\"name\":\"s\",\"yarn\":\"own\",\"across\":1}]}", "piece-stitches /rows/steps 16:12"),
        Rows("nothing woven", """{"steps": [{"step": "stitch", "name": "s", "yarn": "own", "across": 1}]}""", "nothing-woven /rows/steps 13:19"),
        Rows("no steps", """{"steps": []}""", "nothing-woven /rows/steps 13:19"),
        Rows("plan as a text", "\"all\"", "wrong-type /rows 13:9"),
        Rows("steps as a text", """{"steps": "all"}""", "wrong-type /rows/steps 13:19"),
        Instead("amount 0", "\"4\"", "\"0\"", "density /gauge/sett/amount 24:30"),
        Instead("amount below 0", "\"4\"", "\"-4\"", "density /gauge/sett/amount 24:30"),
        Instead("amount too large", "\"4\"", "\"1000.1\"", "density /gauge/sett/amount 24:30"),
        Instead("five decimal places", "\"4\"", "\"4.12345\"", "decimal-places /gauge/sett/amount 24:30"),

        // the maker's own words, pictures and limits
        Own("words as a text", "\"rowWords\": \"none\"", "wrong-type /rowWords 6:30"),
        Own("words that are no object", "\"rowWords\": [3]", "wrong-type /rowWords/0 6:31"),
        Own("words without a row", "\"rowWords\": [{\"text\": \"a\"}, {\"row\": 0, \"text\": \"b\"}]", "missing-member /rowWords/0/row 6:31"),
        Own("words that say nothing", "\"rowWords\": [{\"row\": 1, \"text\": \" \\n \"}]", "text-empty /rowWords/0/text 6:50"),
        Own("long words", $"\"rowWords\": [{{\"row\": 1, \"text\": \"{new string('w', 501)}\"}}]", "text-length /rowWords/0/text 6:50"),
        Own("words for a row that does not exist", "\"rowWords\": [{\"row\": 3, \"text\": \"a\"}]", "chart-row /rowWords/0/row 6:39"),
        Own("words for one row twice", "\"rowWords\": [{\"row\": 2, \"text\": \"a\"}, {\"row\": 2, \"text\": \"b\"}]", "row-words-order /rowWords/1/row 6:64"),
        Own("words for rows downwards", "\"rowWords\": [{\"row\": 2, \"text\": \"a\"}, {\"row\": 1, \"text\": \"b\"}]", "row-words-order /rowWords/1/row 6:64"),
        Video("plain http", "http://films.example/1", "video-address /videos/0/address 6:41"),
        Video("a script", "javascript:alert(1)//https://films.example", "video-address /videos/0/address 6:41"),
        Video("a user name", "https://films.example@other.example/", "video-address /videos/0/address 6:41"),
        Video("a port", "https://films.example:8443/", "video-address /videos/0/address 6:41"),
        Video("no domain", "https://localhost/film", "video-address /videos/0/address 6:41"),
        Video("a number for a host", "https://127.0.0.1/film", "video-address /videos/0/address 6:41"),
        Video("letters that look alike", "https://fi\u0131ms.example/", "video-address /videos/0/address 6:41"),
        Video("a space", "https://films.example/a b", "video-address /videos/0/address 6:41"),
        Video("half an escape", "https://films.example/%4", "video-address /videos/0/address 6:41"),
        Video("an empty label", "https://films..example/", "video-address /videos/0/address 6:41"),
        Video("too long", "https://films.example/" + new string('f', 500), "video-address /videos/0/address 6:41"),
        Own("video without a caption", "\"videos\": [{\"address\": \"https://films.example/1\"}]", "missing-member /videos/0/caption 6:29"),
        Own("video of no row", "\"videos\": [{\"address\": \"https://films.example/1\", \"caption\": \"c\", \"row\": null}]", "wrong-type /videos/0/row 6:91"),
        Own("video of row 0", "\"videos\": [{\"address\": \"https://films.example/1\", \"caption\": \"c\", \"row\": 0}]", "chart-row /videos/0/row 6:91"),
        Own("too many videos", $"\"videos\": [{string.Join(",", Enumerable.Repeat("{\"address\": \"https://films.example/1\", \"caption\": \"c\"}", 31))}]", "video-count /videos 6:28"),
        Own("photo without a name", "\"photos\": [{\"caption\": \"c\"}]", "missing-member /photos/0/hash 6:29"),
        Own("photo by another name", "\"photos\": [{\"hash\": \"sample.jpg\", \"caption\": \"c\"}]", "photo-hash /photos/0/hash 6:38"),
        Own("photo twice", $"\"photos\": [{Picture(1)}, {Picture(1)}]", "photo-twice /photos/1/hash 6:132"),
        Own("too many photos", $"\"photos\": [{string.Join(",", Enumerable.Range(1, 21).Select(Picture))}]", "photo-count /photos 6:28"),
        Own("limits as a number", "\"limits\": 3", "wrong-type /limits 6:28"),
        Own("limits that say nothing", "\"limits\": {}", "limits-empty /limits 6:28"),
        Own("limit of no thread", "\"limits\": {\"threads\": 0}", "limit-threads /limits/threads 6:40"),
        Own("limit of too many threads", "\"limits\": {\"threads\": 1001}", "limit-threads /limits/threads 6:40"),
        Own("limit of no length", "\"limits\": {\"length\": {\"amount\": \"0\", \"unit\": \"in\"}}", "limit-length /limits/length/amount 6:50"),
        Own("limit in unknown unit", "\"limits\": {\"length\": {\"amount\": \"1\", \"unit\": \"10 cm\"}}", "unknown-word /limits/length/unit 6:63"),
        Own("limit of five places", "\"limits\": {\"length\": {\"amount\": \"0.12345\", \"unit\": \"cm\"}}", "decimal-places /limits/length/amount 6:50"),

        Own("pages after the chart as a list", "\"afterChart\": [\"notes\"]", "wrong-type /afterChart 6:32"),
        Own("pages after the chart as nothing", "\"afterChart\": null", "wrong-type /afterChart 6:32"),
        Own("a page in words", "\"afterChart\": {\"notes\": \"no\"}", "wrong-type /afterChart/notes 6:42"),
        Own("a page that is neither", "\"afterChart\": {\"notes\": null}", "wrong-type /afterChart/notes 6:42"),
        Own("a page that is no choice", "\"afterChart\": {\"cautions\": false}", "unknown-member /afterChart/cautions 6:33"),
        Own("a page twice", "\"afterChart\": {\"notes\": false, \"notes\": true}", "duplicate-member /afterChart/notes 6:49"),

        // older formats
        new(
            "members of format 3 in format 2",
            Encoding.UTF8.GetBytes(Replace("\"notes\": \"None\"", "\"notes\": \"None\", \"limits\": null, \"videos\": []").Replace("\"format\": 4", "\"format\": 2", StringComparison.Ordinal)),
            "unknown-member /limits 6:18\nunknown-member /videos 6:34"),
        new(
            "members of format 3 in format 1",
            Encoding.UTF8.GetBytes(WithRows(Replace("\"notes\": \"None\"", "\"notes\": \"None\", \"rowWords\": []").Replace("\"format\": 4", "\"format\": 1", StringComparison.Ordinal), """{"start": "left"}""")),
            "unknown-member /rowWords 6:18"),
        First("strange start in format 1", """{"start": "up", "steps": [{"step": "plain", "count": 1, "weft": 2}]}""", "unknown-word /rows/start 13:19"),
        // thickness and colours, from column 18 of line 6
        Own("cloth as a text", "\"cloth\": \"blue\"", "wrong-type /cloth 6:27"),
        Own("cloth with a stranger", "\"cloth\": {\"yarn\": 1}", "unknown-member /cloth/yarn 6:28"),
        Own("warp as a text", "\"cloth\": {\"warp\": \"blue\"}", "wrong-type /cloth/warp 6:36"),
        Own("weft as a colour", "\"cloth\": {\"wefts\": [\"blue\"]}", "wrong-type /cloth/wefts/0 6:38"),
        Own("more wefts than there are", "\"cloth\": {\"wefts\": [{}, {}, {\"colour\": \"blue\"}]}", "cloth-wefts /cloth/wefts 6:37"),
        Own("colour that is not known", "\"cloth\": {\"warp\": {\"colour\": \"bleu\"}}", "colour-unknown /cloth/warp/colour 6:47"),
        Own("colour as a number", "\"cloth\": {\"warp\": {\"colour\": 3}}", "wrong-type /cloth/warp/colour 6:47"),
        Own("thickness as a number", "\"cloth\": {\"warp\": {\"thickness\": 2}}", "wrong-type /cloth/warp/thickness 6:50"),
        Own("no thickness", "\"cloth\": {\"warp\": {\"thickness\": {\"amount\": \"0\", \"unit\": \"mm\"}}}", "thickness /cloth/warp/thickness/amount 6:61"),
        Own("thickness of five places", "\"cloth\": {\"wefts\": [{\"thickness\": {\"amount\": \"0.12345\", \"unit\": \"mm\"}}]}", "decimal-places /cloth/wefts/0/thickness/amount 6:63"),
        Own("thickness in an unknown unit", "\"cloth\": {\"warp\": {\"thickness\": {\"amount\": \"2\", \"unit\": \"cm\"}}}", "unknown-word /cloth/warp/thickness/unit 6:74"),
        Own("order as a list", "\"cloth\": {\"ends\": [6, \"blue\"]}", "wrong-type /cloth/ends 6:36"),
        Own("order without a colour", "\"cloth\": {\"ends\": \"6 blue, 2\"}", "colour-order /cloth/ends 6:36"),
        Own("order that is too long", $"\"cloth\": {{\"rows\": \"{string.Concat(Enumerable.Repeat("1 red, ", 200))}\"}}", "colour-order /cloth/rows 6:36"),
        Own("order that is too long in its own form", $"\"cloth\": {{\"rows\": \"{string.Join(',', Enumerable.Repeat("red", 200))}\"}}", "order-length /cloth/rows 6:36"),
        Own("order with no thread", "\"cloth\": {\"rows\": \"6 blue, 0 white\"}", "colour-threads /cloth/rows 6:36"),
        Own("order of an unknown colour", "\"cloth\": {\"rows\": \"6 blue, 2 wite\"}", "colour-unknown /cloth/rows 6:36"),
        Own("own colour as a text", "\"cloth\": {\"colours\": [\"sea\"]}", "wrong-type /cloth/colours/0 6:40"),
        Own("own colour without a value", "\"cloth\": {\"colours\": [{\"name\": \"sea\"}]}", "missing-member /cloth/colours/0/value 6:40"),
        Own("own colour with a word for a value", "\"cloth\": {\"colours\": [{\"name\": \"sea\", \"value\": \"blue\"}]}", "colour-value /cloth/colours/0/value 6:65"),
        Own("own colour whose name is a count", "\"cloth\": {\"colours\": [{\"name\": \"2 sea\", \"value\": \"#3a6b7e\"}]}", "colour-name /cloth/colours/0/name 6:49"),
        Own("own colour with a comma", "\"cloth\": {\"colours\": [{\"name\": \"sea, deep\", \"value\": \"#3a6b7e\"}]}", "colour-name /cloth/colours/0/name 6:49"),
        Own("own colour with a name of ours", "\"cloth\": {\"colours\": [{\"name\": \"Blue\", \"value\": \"#3a6b7e\"}]}", "colour-twice /cloth/colours/0/name 6:49"),
        Own("too many own colours", $"\"cloth\": {{\"colours\": [{string.Join(", ", Enumerable.Range(1, Bounds.OwnColours + 1).Select(i => $"{{\"name\": \"sea {i.ToString(CultureInfo.InvariantCulture)}\", \"value\": \"#3a6b7e\"}}"))}]}}", "colour-count /cloth/colours 6:39"),
        new(
            "colours in format 3",
            Encoding.UTF8.GetBytes(Replace("\"notes\": \"None\"", "\"notes\": \"None\", \"cloth\": {}").Replace("\"format\": 4", "\"format\": 3", StringComparison.Ordinal)),
            "unknown-member /cloth 6:18"),
        First("wefts in format 1", """{"start": "left", "wefts": []}""", "unknown-member /rows/wefts 13:27"),
        First("too many wefts in format 1", """{"start": "left", "steps": [{"step": "plain", "count": 1, "weft": 17}]}""", "weft-unknown /rows/steps/0/weft 13:75"),
        Rows("start after format 1", """{"start": "left"}""", "unknown-member /rows/start 13:10"),

        // several at once, in the order of the file
        new(
            "many problems",
            Encoding.UTF8.GetBytes(Good
                .Replace("\"Sample\"", "\"\"", StringComparison.Ordinal)
                .Replace("\"language\": \"en\"", "\"language\": 5, \"title\": 1", StringComparison.Ordinal)
                .Replace("\"x..x\"", "\"x.\"", StringComparison.Ordinal)
                .Replace("\"offset\": 1", "\"offset\": -1", StringComparison.Ordinal)
                .Replace("\"last\": 2", "\"last\": 3", StringComparison.Ordinal)
                .Replace("\"amount\": \"5\"", "\"amount\": \"0\"", StringComparison.Ordinal)),
            "text-empty /title 3:10\nwrong-type /language 4:13\nduplicate-member /title 4:16\nmotif-row-length /motif/1 9:3\n"
            + "offset /width/offset 11:35\nchart-row /rows/steps/0/last 17:43\ndensity /gauge/rows/amount 25:22"),
        new(
            "more problems than are listed",
            Encoding.UTF8.GetBytes("{" + string.Join(",\n", Enumerable.Range(0, 250).Select(i => $"\"a{i}\":1")) + "}"),
            "missing-member /format 1:1\n" + string.Join('\n', Enumerable.Range(0, 199).Select(i => $"unknown-member /a{i} {i + 1}:{(i == 0 ? 2 : 1)}").Append("more-problems  1:1"))),
    ];

    /// <summary>Members put after the notes, in line 6 from column 18.</summary>
    private static BadDocument Own(string name, string members, string expected) =>
        Instead(name, "\"notes\": \"None\"", $"\"notes\": \"None\", {members}", expected);

    private static BadDocument Video(string name, string address, string expected) =>
        Own($"video at {name}", $"\"videos\": [{{\"address\": \"{address}\", \"caption\": \"c\"}}]", expected);

    private static string Picture(int number) => $"{{\"hash\": \"{new string('a', 61)}{number.ToString("d3", CultureInfo.InvariantCulture)}\", \"caption\": \"c\"}}";

    private static BadDocument Instead(string name, string old, string replacement, string expected) =>
        new(name, Encoding.UTF8.GetBytes(Replace(old, replacement)), expected);

    private static BadDocument Bytes(string name, string old, byte[] replacement, string expected)
    {
        var at = Good.IndexOf(old, StringComparison.Ordinal);
        return new(name, [.. Encoding.UTF8.GetBytes(Good[..at]), .. replacement, .. Encoding.UTF8.GetBytes(Good[(at + old.Length)..])], expected);
    }

    private static BadDocument Rows(string name, string rows, string expected) => new(name, Encoding.UTF8.GetBytes(WithRows(Good, rows)), expected);

    private static BadDocument First(string name, string rows, string expected) =>
        new(name, Encoding.UTF8.GetBytes(WithRows(Good.Replace("\"format\": 4", "\"format\": 1", StringComparison.Ordinal), rows)), expected);

    private static string WithRows(string json, string rows)
    {
        var from = json.IndexOf("\"rows\": {\n", StringComparison.Ordinal) + "\"rows\": ".Length;
        var to = json.IndexOf(",\n\"gauge\"", StringComparison.Ordinal);
        return json[..from] + rows + json[to..];
    }

    private static string Replace(string old, string replacement)
    {
        var at = Good.IndexOf(old, StringComparison.Ordinal);
        return at < 0
            ? throw new ArgumentException(string.Create(CultureInfo.InvariantCulture, $"{old} does not stand in the good document."), nameof(old))
            : Good[..at] + replacement + Good[(at + old.Length)..];
    }
}
