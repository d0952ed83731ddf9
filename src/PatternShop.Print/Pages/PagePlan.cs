using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>What the file says of itself.</summary>
/// <param name="Title">The document's title.</param>
/// <param name="Language">BCP 47 tag.</param>
/// <param name="Version">The line that names the version.</param>
/// <param name="Licence">What readers may do; may be empty.</param>
/// <param name="Subject">What it is, in a few words.</param>
internal sealed record FileFacts(string Title, string Language, string Version, string Licence, string Subject);

/// <summary>One page: what is painted, in reading order; worked out when it is first looked at.</summary>
internal sealed class PagePlan(Func<Sequence<Placed>> items)
{
    public PagePlan(Sequence<Placed> items)
        : this(() => items)
    {
    }

    public Sequence<Placed> Items => field ??= items();
}

/// <summary>All pages of a document, ready to be painted. Pure data: made without any PDF.</summary>
internal sealed record PrintPlan(Paper Paper, FileFacts Facts, Sequence<PagePlan> Pages);
