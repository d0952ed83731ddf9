using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace PatternShop.Print;

/// <summary>
/// The logical structure of a file (ISO 32000-1, 14.7), made while pages are painted: nodes stay open over page breaks, and every
/// piece of marked content has its number on its page and its node.
/// </summary>
internal sealed class StructureTree
{
    private readonly PdfDocument _file;
    private readonly PdfDictionary _document;
    private readonly PdfDictionary _root;
    private readonly List<(Tag Tag, Node Node)> _open = [];
    private readonly List<PdfArray> _nodesOfPages = [];
    private readonly List<(PdfDictionary Annotation, PdfDictionary Node)> _links = [];
    private readonly int _pages;
    private readonly Node _top;
    private PdfDictionary _page;
    private IReadOnlyDictionary<Tag, XRect> _places = new Dictionary<Tag, XRect>();

    /// <param name="file">The file.</param>
    /// <param name="pages">How many pages it has.</param>
    public StructureTree(PdfDocument file, int pages)
    {
        (_file, _pages) = (file, pages);
        _root = Object("/StructTreeRoot");
        _document = Object("/StructElem");
        _document.Elements.SetName("/S", "/Document");
        _document.Elements.SetReference("/P", _root);
        _root.Elements.SetReference("/K", _document);
        _top = new Node(_document, _file);
        _page = _document;
    }

    /// <summary>Begins a page.</summary>
    public void BeginPage(PdfDictionary page, PagePlan plan, Paper paper)
    {
        _page = page;
        _places = FigureBounds.Of(plan, paper);
        page.Elements.SetInteger("/StructParents", _nodesOfPages.Count);
        _nodesOfPages.Add(new PdfArray(_file));
        // a link goes on on the next page
        foreach (var (tag, node) in _open.Where(open => open.Tag.Kind == TagKind.Link && _places.ContainsKey(open.Tag)))
        {
            AddLink(node, tag);
        }
    }

    /// <summary>Opens a node with all that it belongs to and gives a piece of marked content on this page to it.</summary>
    /// <returns>The number of the marked content.</returns>
    public int Enter(Tag tag)
    {
        var path = tag.Path;
        var shared = 0;
        while (shared < path.Count && shared < _open.Count && _open[shared].Tag == path[shared])
        {
            shared++;
        }

        _open.RemoveRange(shared, _open.Count - shared);
        foreach (var next in path.Skip(shared))
        {
            _open.Add((next, Open(next, _open.Count == 0 ? _top : _open[^1].Node)));
        }

        var node = _open[^1].Node;
        var marked = _nodesOfPages[^1];
        var number = marked.Elements.Count;
        marked.Elements.Add(node.Dictionary.Reference!);
        node.Add(Marked(node, number));
        return number;
    }

    /// <summary>The root of the structure.</summary>
    public PdfDictionary Finish()
    {
        var numbers = new PdfArray(_file);
        foreach (var (page, nodes) in _nodesOfPages.Index())
        {
            numbers.Elements.Add(new PdfInteger(page));
            _file.Internals.AddObject(nodes);
            numbers.Elements.Add(nodes.Reference!);
        }

        foreach (var (i, link) in _links.Index())
        {
            numbers.Elements.Add(new PdfInteger(_pages + i));
            numbers.Elements.Add(link.Node.Reference!);
        }

        var tree = new PdfDictionary(_file);
        tree.Elements["/Nums"] = numbers;
        _file.Internals.AddObject(tree);
        _root.Elements.SetReference("/ParentTree", tree);
        _root.Elements.SetInteger("/ParentTreeNextKey", _pages + _links.Count);
        return _root;
    }

    // The node's page is that of its first content; content on other pages names its own.
    private PdfItem Marked(Node node, int number)
    {
        node.Page ??= _page;
        if (!node.Dictionary.Elements.ContainsKey("/Pg"))
        {
            node.Dictionary.Elements.SetReference("/Pg", _page);
        }

        if (node.Page == _page)
        {
            return new PdfInteger(number);
        }

        var reference = new PdfDictionary(_file);
        reference.Elements.SetName("/Type", "/MCR");
        reference.Elements.SetReference("/Pg", _page);
        reference.Elements.SetInteger("/MCID", number);
        return reference;
    }

    private Node Open(Tag tag, Node parent)
    {
        var dictionary = Object("/StructElem");
        dictionary.Elements.SetName("/S", "/" + tag.Name);
        dictionary.Elements.SetReference("/P", parent.Dictionary);
        parent.Add(dictionary.Reference!);
        Describe(dictionary, tag);
        var node = new Node(dictionary, _file);
        if (tag.Kind == TagKind.Link)
        {
            AddLink(node, tag);
        }

        return node;
    }

    private void Describe(PdfDictionary dictionary, Tag tag)
    {
        if (tag.Kind == TagKind.Figure)
        {
            dictionary.Elements.SetString("/Alt", tag.Alternative ?? throw new InvalidOperationException("A figure needs words."));
            dictionary.Elements["/A"] = Attributes("/Layout", ("/BBox", Rectangle(_places[tag])));
        }
        else if (tag.Kind == TagKind.HeaderCell)
        {
            dictionary.Elements["/A"] = Attributes("/Table", ("/Scope", new PdfName(tag.Scope == HeaderScope.Column ? "/Column" : "/Row")));
        }

        if (tag.ActualText is { } text)
        {
            dictionary.Elements.SetString("/ActualText", text);
        }

        if (tag.Language is { } language)
        {
            dictionary.Elements.SetString("/Lang", language);
        }
    }

    private PdfDictionary Attributes(string owner, (string Name, PdfItem Value) attribute)
    {
        var attributes = new PdfDictionary(_file);
        attributes.Elements.SetName("/O", owner);
        attributes.Elements[attribute.Name] = attribute.Value;
        return attributes;
    }

    private void AddLink(Node node, Tag tag)
    {
        var target = tag.Target ?? throw new InvalidOperationException("A link leads somewhere.");
        var action = new PdfDictionary(_file);
        action.Elements.SetName("/S", "/URI");
        action.Elements.SetString("/URI", target);
        var annotation = Object("/Annot");
        annotation.Elements.SetName("/Subtype", "/Link");
        annotation.Elements["/Rect"] = Rectangle(_places[tag]);
        // without it, readers draw a frame around links
        annotation.Elements["/Border"] = new PdfArray(_file, new PdfInteger(0), new PdfInteger(0), new PdfInteger(0));
        annotation.Elements.SetString("/Contents", target);
        annotation.Elements["/A"] = action;
        annotation.Elements.SetInteger("/StructParent", _pages + _links.Count);
        _links.Add((annotation, node.Dictionary));
        if (_page.Elements["/Annots"] is not PdfArray annotations)
        {
            _page.Elements["/Annots"] = annotations = new PdfArray(_file);
        }

        annotations.Elements.Add(annotation.Reference!);
        var reference = new PdfDictionary(_file);
        reference.Elements.SetName("/Type", "/OBJR");
        reference.Elements.SetReference("/Pg", _page);
        reference.Elements.SetReference("/Obj", annotation);
        node.Add(reference);
    }

    private PdfArray Rectangle(XRect place) =>
        new(_file, new PdfReal(Thousandths(place.Left)), new PdfReal(Thousandths(place.Top)), new PdfReal(Thousandths(place.Right)), new PdfReal(Thousandths(place.Bottom)));

    private static double Thousandths(double points) => Math.Round(points, 3);

    private PdfDictionary Object(string type)
    {
        var dictionary = new PdfDictionary(_file);
        dictionary.Elements.SetName("/Type", type);
        _file.Internals.AddObject(dictionary);
        return dictionary;
    }

    /// <summary>A node and its kids, of which a single one needs no list.</summary>
    private sealed class Node(PdfDictionary dictionary, PdfDocument file)
    {
        public PdfDictionary Dictionary { get; } = dictionary;

        public PdfDictionary? Page { get; set; }

        public void Add(PdfItem kid)
        {
            if (Dictionary.Elements["/K"] is PdfArray many)
            {
                many.Elements.Add(kid);
            }
            else if (Dictionary.Elements["/K"] is { } one)
            {
                Dictionary.Elements["/K"] = new PdfArray(file, one, kid);
            }
            else
            {
                Dictionary.Elements["/K"] = kid;
            }
        }
    }
}
