using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;

namespace PatternShop.Print.Tests;

/// <summary>
/// ISO 32000-1, 14.7.4: every numbered piece of marked content stands once on its page and belongs to one node, the tree of parents says the same,
/// and the same holds for annotations. Not one of the protocol's conditions, but all that it asks of tagged content rests on it.
/// </summary>
internal static partial class ParentTree
{
    public const string Fault = "parent tree";

    public static IEnumerable<string> Faults(QpdfObjects file)
    {
        var root = file.Of(file.Catalog["/StructTreeRoot"]) ?? [];
        var owners = new Dictionary<(string Page, int Mark), string>();
        var annotations = new Dictionary<string, string>(StringComparer.Ordinal);
        var isDouble = !Walk(file, root["/K"], owners, annotations);
        var parents = Numbers(file, root);
        var pages = PageReferences(file, file.Catalog["/Pages"]!.ToString()).ToList();
        return isDouble || pages.Exists(page => !IsRight(file, page, owners, parents)) || annotations.Any(pair => !IsRight(file, pair.Key, pair.Value, parents)) ? [Fault] : [];
    }

    private static bool IsRight(QpdfObjects file, string reference, Dictionary<(string Page, int Mark), string> owners, Dictionary<int, JsonNode?> parents)
    {
        var page = file.Of(reference)!;
        var marks = Mark().Matches(MarkedContent.OfPage(file, page)).Select(match => int.Parse(match.Groups["mark"].Value, CultureInfo.InvariantCulture)).ToList();
        var named = page["/StructParents"] is { } key && parents.GetValueOrDefault(key.GetValue<int>()) is { } list && file.Value(list) is JsonArray nodes ? nodes : [];
        return marks.Distinct().Count() == marks.Count && named.Count == marks.Count && owners.Keys.Count(owner => owner.Page == reference) == marks.Count
            && marks.TrueForAll(mark => mark < named.Count && owners.GetValueOrDefault((reference, mark)) == named[mark]?.ToString());
    }

    private static bool IsRight(QpdfObjects file, string annotation, string node, Dictionary<int, JsonNode?> parents) =>
        file.Of(annotation)?["/StructParent"] is { } key && parents.GetValueOrDefault(key.GetValue<int>())?.ToString() == node;

    private static Dictionary<int, JsonNode?> Numbers(QpdfObjects file, JsonObject root)
    {
        var list = file.Value(file.Of(root["/ParentTree"])?["/Nums"]) as JsonArray ?? [];
        return Enumerable.Range(0, list.Count / 2).ToDictionary(i => list[2 * i]!.GetValue<int>(), i => list[(2 * i) + 1]);
    }

    // False where something belongs to two nodes.
    private static bool Walk(QpdfObjects file, JsonNode? node, Dictionary<(string Page, int Mark), string> owners, Dictionary<string, string> annotations)
    {
        if (file.Of(node) is not { } dictionary)
        {
            return true;
        }

        var single = true;
        foreach (var kid in file.Value(dictionary["/K"]) is JsonArray many ? [.. many] : new[] { dictionary["/K"] })
        {
            single &= kid switch
            {
                JsonValue value when value.TryGetValue(out int mark) => owners.TryAdd((dictionary["/Pg"]!.ToString(), mark), node!.ToString()),
                _ when file.Of(kid) is { } inner && inner["/MCID"] is { } mark => owners.TryAdd(((inner["/Pg"] ?? dictionary["/Pg"])!.ToString(), mark.GetValue<int>()), node!.ToString()),
                _ when file.Of(kid)?["/Obj"] is { } annotation => annotations.TryAdd(annotation.ToString(), node!.ToString()),
                _ => Walk(file, kid, owners, annotations),
            };
        }

        return single;
    }

    private static IEnumerable<string> PageReferences(QpdfObjects file, string reference) =>
        file.Of(reference)!["/Kids"] is { } kids ? file.Value(kids)!.AsArray().SelectMany(kid => PageReferences(file, kid!.ToString())) : [reference];

    [GeneratedRegex("/MCID (?<mark>[0-9]+)", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, 10_000)]
    private static partial Regex Mark();
}
