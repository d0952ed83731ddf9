using PatternShop.Store;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>What came of one file that a maker brought in.</summary>
/// <param name="File">Its name, as the browser says it.</param>
public abstract record BroughtIn(string File)
{
    /// <summary>It is a pattern of the maker's now.</summary>
    /// <param name="Lacking">Captions of photos that it names and the shop does not have.</param>
    public sealed record Made(string File, PatternId Id, string Title, IReadOnlyList<string> Lacking) : BroughtIn(File);

    /// <summary>Nothing was made of it.</summary>
    /// <param name="Problems">Every reason; at least one.</param>
    public sealed record Refused(string File, Sequence<Problem> Problems) : BroughtIn(File);
}
