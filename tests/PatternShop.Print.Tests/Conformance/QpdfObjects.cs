using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace PatternShop.Print.Tests;

/// <summary>A file's objects as qpdf sees them; they can be changed and made a file again, to seed faults.</summary>
internal sealed class QpdfObjects
{
    // the other program does not read escaped letters in what is packed
    private static readonly JsonSerializerOptions Plain = new() { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly JsonNode _all;

    private QpdfObjects(JsonNode all) => _all = all;

    private JsonObject Table => _all["qpdf"]![1]!.AsObject();

    public JsonObject Trailer => Table["trailer"]!["value"]!.AsObject();

    public JsonObject Catalog => Of(Trailer["/Root"]!)!;

    /// <summary>Every dictionary of the file that is an object of its own, streams by their dictionaries.</summary>
    public IEnumerable<JsonObject> Dictionaries => Table.Where(entry => entry.Key != "trailer").Select(entry => Dictionary(entry.Value!)).OfType<JsonObject>();

    public static QpdfObjects Read(byte[] file)
    {
        var (said, code) = OutsideTool.Run("PATTERNSHOP_QPDF", "qpdf", file, "--json", "--json-stream-data=inline", "--decode-level=generalized", "FILE");
        return code == 0 ? new QpdfObjects(JsonNode.Parse(said)!) : throw new InvalidOperationException(said);
    }

    /// <summary>The changed objects as a file.</summary>
    public byte[] ToFile()
    {
        var folder = Directory.CreateTempSubdirectory("patternshop-");
        try
        {
            var to = Path.Combine(folder.FullName, "seeded.pdf");
            var (said, code) = OutsideTool.Run("PATTERNSHOP_QPDF", "qpdf", JsonSerializer.SerializeToUtf8Bytes(_all, Plain), "--json-input", "FILE", to);
            return code == 0 ? File.ReadAllBytes(to) : throw new InvalidOperationException(said);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>The dictionary that something is or refers to; null where it is none.</summary>
    public JsonObject? Of(JsonNode? node) => Value(node) as JsonObject;

    /// <summary>What something refers to, or itself.</summary>
    public JsonNode? Value(JsonNode? node)
    {
        var found = node is JsonValue value && value.TryGetValue(out string? text) && text.EndsWith(" R", StringComparison.Ordinal) ? Table[$"obj:{text}"] : node;
        return found is JsonObject entry && (entry.ContainsKey("value") || entry.ContainsKey("stream")) ? entry["value"] ?? Dictionary(entry) : found;
    }

    /// <summary>The content of a stream, as letters of one byte.</summary>
    public string? Content(JsonNode? reference) =>
        Table[$"obj:{reference}"]?["stream"]?["data"] is { } data ? Encoding.Latin1.GetString(Convert.FromBase64String(data.GetValue<string>())) : null;

    public void SetContent(JsonNode reference, string content) =>
        Table[$"obj:{reference}"]!["stream"]!["data"] = Convert.ToBase64String(Encoding.Latin1.GetBytes(content));

    /// <summary>The pages in order.</summary>
    public IEnumerable<JsonObject> Pages => Below(Of(Catalog["/Pages"])!);

    private IEnumerable<JsonObject> Below(JsonObject node) =>
        node["/Kids"] is null ? [node] : Value(node["/Kids"])!.AsArray().SelectMany(kid => Below(Of(kid)!));

    private static JsonObject? Dictionary(JsonNode entry) => (entry["value"] ?? entry["stream"]?["dict"]) as JsonObject;
}
