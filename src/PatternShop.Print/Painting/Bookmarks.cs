using PdfSharp.Drawing;
using PdfSharp.Pdf;

namespace PatternShop.Print;

/// <summary>A bookmark for every heading: the title, and under it the sections.</summary>
internal sealed class Bookmarks(PdfOutlineCollection top)
{
    private const double PointsPerMillimetre = 72 / 25.4;
    private const double Above = 6;

    private readonly HashSet<Tag> _met = [];
    private PdfOutline? _title;

    /// <summary>Makes the bookmark of the heading to which a mark belongs, once.</summary>
    public void Meet(Placed item, PdfPage page, Paper paper)
    {
        if (item.Tag?.Path.FirstOrDefault(tag => tag.Bookmark is not null) is not { } heading || !_met.Add(heading))
        {
            return;
        }

        var place = new PdfOutline(heading.Bookmark!, page, heading.Kind == TagKind.Heading1, PdfOutlineStyle.Regular, XColors.Black)
        {
            PageDestinationType = PdfPageDestinationType.Xyz,
            Left = 0,
            Top = (paper.Height - item.Mark.Y + Above) * PointsPerMillimetre,
        };
        if (heading.Kind == TagKind.Heading1)
        {
            top.Add(_title = place);
        }
        else
        {
            (_title?.Outlines ?? top).Add(place);
        }
    }
}
