using System.Collections.Frozen;
using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>What a part of the page is to somebody who cannot see it; the names are those of ISO 32000-1, 14.8.4.</summary>
internal enum TagKind
{
    Heading1,
    Heading2,
    Heading3,
    Paragraph,
    Figure,
    List,
    ListItem,
    ListLabel,
    ListBody,
    Table,
    TableRow,
    HeaderCell,
    Cell,
    Span,
    Link,
}

/// <summary>Which cells a header cell names.</summary>
internal enum HeaderScope
{
    Column,
    Row,
}

/// <summary>
/// One node of the document's logical structure. Nodes know their parent; children are whatever is painted for them, in
/// order. Immutable; two nodes that look alike are still two nodes.
/// </summary>
/// <param name="kind">What it is.</param>
/// <param name="parent">The node that it belongs to, or null for the document itself.</param>
internal sealed class Tag(TagKind kind, Tag? parent = null)
{
    private static readonly FrozenDictionary<TagKind, string> Names = new Dictionary<TagKind, string>
    {
        [TagKind.Heading1] = "H1",
        [TagKind.Heading2] = "H2",
        [TagKind.Heading3] = "H3",
        [TagKind.Paragraph] = "P",
        [TagKind.Figure] = "Figure",
        [TagKind.List] = "L",
        [TagKind.ListItem] = "LI",
        [TagKind.ListLabel] = "Lbl",
        [TagKind.ListBody] = "LBody",
        [TagKind.Table] = "Table",
        [TagKind.TableRow] = "TR",
        [TagKind.HeaderCell] = "TH",
        [TagKind.Cell] = "TD",
        [TagKind.Span] = "Span",
        [TagKind.Link] = "Link",
    }.ToFrozenDictionary();

    public TagKind Kind { get; } = kind;

    public Tag? Parent { get; } = parent;

    /// <summary>What a figure shows, in words.</summary>
    public string? Alternative { get; init; }

    /// <summary>The characters that a drawing stands for.</summary>
    public string? ActualText { get; init; }

    /// <summary>Where a link leads.</summary>
    public string? Target { get; init; }

    /// <summary>What a heading is called among the bookmarks; null without a bookmark.</summary>
    public string? Bookmark { get; init; }

    /// <summary>BCP 47 tag where the language is not the document's.</summary>
    public string? Language { get; init; }

    /// <summary>Which cells a header cell names.</summary>
    public HeaderScope Scope { get; init; }

    /// <summary>Where everything lies in a figure that is a chart, relative to its corner; null for others.</summary>
    public ChartLayout? Chart { get; init; }

    /// <summary>The standard name of the kind.</summary>
    public string Name => Names[Kind];

    /// <summary>The nodes from the document down to this one.</summary>
    public IReadOnlyList<Tag> Path => field ??= [.. Parent?.Path ?? [], this];

    public override string ToString() => string.Join(" > ", Path.Select(tag => tag.Name));
}
