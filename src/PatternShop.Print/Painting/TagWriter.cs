using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Annotations;
using PdfSharp.Pdf.Structure;
using PdfSharp.UniversalAccessibility;

namespace PatternShop.Print;

/// <summary>
/// Opens and closes the structure nodes of a file while pages are painted. A node stays open over page breaks. The file's
/// library begins the first marked content of a page inside a text object; drawings must begin outside of one.
/// </summary>
internal sealed class TagWriter(UAManager accessibility)
{
    private readonly List<Tag> _open = [];
    private bool _inDecoration;
    private bool _pageHasContent;
    private bool _writing;
    private PdfPage? _page;
    private IReadOnlyDictionary<Tag, XRect> _figures = new Dictionary<Tag, XRect>();

    private StructureBuilder Builder => accessibility.StructureBuilder;

    public void BeginPage(PdfPage page, PagePlan plan, Paper paper)
    {
        _page = page;
        _pageHasContent = false;
        _figures = FigureBounds.Of(plan, paper);
    }

    /// <summary>Closes decoration; nodes stay open.</summary>
    public void EndPage()
    {
        EndDecoration();
        Builder.EndMarkedContentsWithId();
    }

    public void CloseAll() => CloseTo(0);

    /// <summary>Makes a node, or decoration, the one that is painted next.</summary>
    /// <param name="tag">The node; null for decoration.</param>
    /// <param name="writing">Whether text comes next, not a drawing.</param>
    /// <param name="blank">Writes something invisible.</param>
    public void Enter(Tag? tag, bool writing, Action blank)
    {
        if (tag is null)
        {
            EnterDecoration();
            return;
        }

        EndDecoration();
        var isNew = OpenPath(tag);
        if (isNew || writing != _writing || !_pageHasContent)
        {
            Builder.EndMarkedContentsWithId();
            BeginMode(writing, blank);
        }

        _writing = writing;
        _pageHasContent = true;
    }

    private void BeginMode(bool writing, Action blank)
    {
        if (writing)
        {
            accessibility.BeginTextMode();
            return;
        }

        if (!_pageHasContent)
        {
            blank();
            Builder.EndMarkedContentsWithId();
        }

        accessibility.BeginGraphicMode();
    }

    private void EnterDecoration()
    {
        if (!_inDecoration)
        {
            Builder.EndMarkedContentsWithId();
            accessibility.BeginGraphicMode();
            Builder.BeginArtifact();
            _inDecoration = true;
        }
    }

    private void EndDecoration()
    {
        if (_inDecoration)
        {
            accessibility.BeginGraphicMode();
            Builder.End();
            _inDecoration = false;
        }
    }

    private bool OpenPath(Tag tag)
    {
        var path = tag.Path;
        var shared = 0;
        while (shared < path.Count && shared < _open.Count && _open[shared] == path[shared])
        {
            shared++;
        }

        if (shared == path.Count && shared == _open.Count)
        {
            return false;
        }

        CloseTo(shared);
        foreach (var next in path.Skip(shared))
        {
            Open(next);
        }

        return true;
    }

    private void Open(Tag tag)
    {
        if (tag.Kind == TagKind.Figure)
        {
            Builder.BeginIllustrationElement(tag.Name, tag.Alternative ?? throw new InvalidOperationException("A figure needs words."), _figures[tag]);
        }
        else if (tag.Kind == TagKind.Link)
        {
            OpenLink(tag.Target ?? throw new InvalidOperationException("A link leads somewhere."), _figures[tag]);
        }
        else if (tag.Kind == TagKind.Span)
        {
            Builder.BeginInlineLevelElement(tag.Name);
        }
        else
        {
            Builder.BeginBlockLevelElement(tag.Name);
        }

        Describe(Builder.CurrentStructureElement, tag);
        _open.Add(tag);
    }

    private void OpenLink(string target, XRect place)
    {
        var link = PdfLinkAnnotation.CreateWebLink(new PdfRectangle(place), target);
        // without it, readers draw a frame around links
        link.Elements["/Border"] = new PdfArray(_page!.Owner, new PdfInteger(0), new PdfInteger(0), new PdfInteger(0));
        Builder.BeginElement(link, target);
    }

    private static void Describe(PdfStructureElement element, Tag tag)
    {
        if (tag.ActualText is { } text)
        {
            element.Elements.SetString("/ActualText", text);
        }

        if (tag.Language is { } language)
        {
            element.Elements.SetString("/Lang", language);
        }

        if (tag.Kind == TagKind.HeaderCell)
        {
            element.TableAttributes.Elements.SetName("/Scope", tag.Scope == HeaderScope.Column ? "/Column" : "/Row");
        }
    }

    private void CloseTo(int count)
    {
        while (_open.Count > count)
        {
            Builder.End();
            _open.RemoveAt(_open.Count - 1);
        }
    }
}
