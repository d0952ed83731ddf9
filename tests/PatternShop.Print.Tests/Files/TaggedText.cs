using System.Text;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;
using UglyToad.PdfPig.Tokens;

namespace PatternShop.Print.Tests;

/// <summary>One node of a file's logical structure with what a reader that follows it hears.</summary>
internal sealed record TaggedNode(string Name, string Text, IReadOnlyList<TaggedNode> Children, DictionaryToken Dictionary)
{
    /// <summary>The text of this node and all below it, in order.</summary>
    public string AllText { get; init; } = Text;

    public IEnumerable<TaggedNode> SelfAndBelow => [this, .. Children.SelectMany(child => child.SelfAndBelow)];

    public string? Value(string name) => Dictionary.TryGet(NameToken.Create(name), out var token)
        ? token switch { StringToken text => text.Data, HexToken text => text.Data, NameToken value => value.Data, _ => token.ToString() }
        : null;
}

/// <summary>Reads a file's text along its structure tree, as a screen reader does; with a library that has no part in writing it.</summary>
internal sealed class TaggedText
{
    private readonly PdfDocument _file;
    private readonly Dictionary<(IndirectReference Page, int Mark), string> _marked = [];

    private TaggedText(PdfDocument file)
    {
        _file = file;
        var pages = PageReferences(Resolve(file.Structure.Catalog.CatalogDictionary, "Pages"));
        foreach (var page in file.GetPages())
        {
            foreach (var marked in page.GetMarkedContents().Where(marked => !marked.IsArtifact && marked.MarkedContentIdentifier >= 0))
            {
                _marked[(pages[page.Number - 1], marked.MarkedContentIdentifier)] = string.Concat(marked.Letters.Select(letter => letter.Value));
            }
        }
    }

    /// <summary>The document node.</summary>
    public static TaggedNode Read(byte[] file)
    {
        using var document = PdfDocument.Open(file);
        var reader = new TaggedText(document);
        var root = reader.Resolve(document.Structure.Catalog.CatalogDictionary, "StructTreeRoot");
        return reader.Node((DictionaryToken)reader.Resolved(root.Data["K"]), null);
    }

    private TaggedNode Node(DictionaryToken node, IndirectReference? page)
    {
        var own = node.TryGet(NameToken.Create("Pg"), out var given) ? ((IndirectReferenceToken)given).Data : page;
        var text = new StringBuilder();
        var all = new StringBuilder();
        var children = new List<TaggedNode>();
        foreach (var kid in Kids(node))
        {
            switch (Resolved(kid))
            {
                case NumericToken mark:
                    Add(_marked.GetValueOrDefault((own!.Value, mark.Int), string.Empty));
                    break;
                case DictionaryToken inner when inner.TryGet(NameToken.Create("MCID"), out var mark):
                    Add(_marked.GetValueOrDefault((((IndirectReferenceToken)inner.Data["Pg"]).Data, ((NumericToken)mark).Int), string.Empty));
                    break;
                // a reference to an annotation, such as a link
                case DictionaryToken reference when reference.TryGet(NameToken.Create("Obj"), out _):
                    break;
                case DictionaryToken child:
                    children.Add(Node(child, own));
                    all.Append(children[^1].AllText);
                    break;
                case var other:
                    throw new InvalidOperationException($"No way to read {other}.");
            }
        }

        return new TaggedNode(((NameToken)node.Data["S"]).Data, text.ToString(), children, node) { AllText = all.ToString() };

        void Add(string said)
        {
            text.Append(said);
            all.Append(said);
        }
    }

    private IEnumerable<IToken> Kids(DictionaryToken node)
    {
        if (!node.TryGet(NameToken.Create("K"), out var kids))
        {
            return [];
        }

        return Resolved(kids) is ArrayToken many ? many.Data : [kids];
    }

    private List<IndirectReference> PageReferences(DictionaryToken node)
    {
        var pages = new List<IndirectReference>();
        foreach (var kid in ((ArrayToken)Resolved(node.Data["Kids"])).Data.Cast<IndirectReferenceToken>())
        {
            var inner = (DictionaryToken)Resolved(kid);
            pages.AddRange(inner.Data.ContainsKey("Kids") ? PageReferences(inner) : [kid.Data]);
        }

        return pages;
    }

    private DictionaryToken Resolve(DictionaryToken from, string name) => (DictionaryToken)Resolved(from.Data[name]);

    private IToken Resolved(IToken token) => token is IndirectReferenceToken reference ? _file.Structure.GetObject(reference.Data).Data : token;
}
