using PdfSharp.Pdf;

namespace PatternShop.Print;

/// <summary>A bookmark for every heading (ISO 32000-1, 12.3.3): the title, and under it the sections.</summary>
internal sealed class Bookmarks(PdfDocument file)
{
    private const double PointsPerMillimetre = 72 / 25.4;
    private const double Above = 6;

    private readonly HashSet<Tag> _met = [];
    private readonly Entry _top = new(new PdfDictionary(file));
    private Entry? _title;

    /// <summary>Makes the bookmark of the heading to which a mark belongs, once.</summary>
    public void Meet(Placed item, PdfDictionary page, Paper paper)
    {
        if (item.Tag?.Path.FirstOrDefault(tag => tag.Bookmark is not null) is not { } heading || !_met.Add(heading))
        {
            return;
        }

        var entry = new Entry(new PdfDictionary(file));
        var top = new PdfReal((paper.Height - item.Mark.Y + Above) * PointsPerMillimetre);
        entry.Dictionary.Elements.SetString("/Title", heading.Bookmark!);
        entry.Dictionary.Elements["/Dest"] = new PdfArray(file, page.Reference!, new PdfName("/XYZ"), new PdfInteger(0), top, PdfNull.Value);
        (heading.Kind == TagKind.Heading1 ? _top : _title ?? _top).Below.Add(entry);
        _title = heading.Kind == TagKind.Heading1 ? entry : _title;
    }

    /// <summary>The root of the bookmarks; null without any.</summary>
    public PdfDictionary? Finish()
    {
        if (_top.Below.Count == 0)
        {
            return null;
        }

        _top.Dictionary.Elements.SetName("/Type", "/Outlines");
        Add(_top);
        Join(_top);
        return _top.Dictionary;
    }

    private void Add(Entry entry)
    {
        file.Internals.AddObject(entry.Dictionary);
        entry.Below.ForEach(Add);
    }

    // The title is shown open, so that all of its sections are counted as seen.
    private static int Join(Entry entry)
    {
        if (entry.Below.Count == 0)
        {
            return 0;
        }

        var below = entry.Below;
        for (var i = 0; i < below.Count; i++)
        {
            Refer(below[i], "/Parent", entry);
            if (i > 0)
            {
                Refer(below[i], "/Prev", below[i - 1]);
                Refer(below[i - 1], "/Next", below[i]);
            }
        }

        Refer(entry, "/First", below[0]);
        Refer(entry, "/Last", below[^1]);
        var count = below.Count + below.Sum(Join);
        entry.Dictionary.Elements.SetInteger("/Count", count);
        return count;
    }

    private static void Refer(Entry from, string name, Entry to) => from.Dictionary.Elements.SetReference(name, to.Dictionary);

    private sealed record Entry(PdfDictionary Dictionary)
    {
        public List<Entry> Below { get; } = [];
    }
}
