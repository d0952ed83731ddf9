using System.Text.Json.Nodes;

namespace PatternShop.Print.Tests;

/// <summary>A node of the structure tree with its standard type.</summary>
internal sealed record StructureNode(string Type, JsonObject Dictionary, StructureNode? Parent)
{
    public List<StructureNode> Children { get; } = [];

    /// <summary>References to annotations among its kids.</summary>
    public List<string> Annotations { get; } = [];

    public IEnumerable<StructureNode> SelfAndBelow => [this, .. Children.SelectMany(child => child.SelfAndBelow)];

    public IEnumerable<StructureNode> Above => Parent is null ? [] : [Parent, .. Parent.Above];

    /// <summary>The top nodes of a file, in order.</summary>
    public static List<StructureNode> Roots(QpdfObjects file)
    {
        var root = file.Of(file.Catalog["/StructTreeRoot"]);
        var top = new StructureNode("StructTreeRoot", root ?? [], null);
        if (root is not null)
        {
            AddKids(file, top, root["/K"]);
        }

        return top.Children;
    }

    private static void AddKids(QpdfObjects file, StructureNode node, JsonNode? kids)
    {
        foreach (var kid in file.Value(kids) is JsonArray many ? [.. many] : new[] { kids })
        {
            if (file.Of(kid) is not { } dictionary)
            {
                continue;
            }

            if (dictionary["/Type"]?.ToString() == "/OBJR")
            {
                node.Annotations.Add(dictionary["/Obj"]!.ToString());
            }
            else if (dictionary["/S"] is { } type)
            {
                var child = new StructureNode(type.ToString()[1..], dictionary, node);
                node.Children.Add(child);
                AddKids(file, child, dictionary["/K"]);
            }
        }
    }
}
