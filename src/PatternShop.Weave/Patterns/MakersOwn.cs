namespace PatternShop.Weave;

/// <summary>The maker's own words for one chart row, shown beside the row and marked as theirs.</summary>
/// <param name="Row">The chart row, from 1.</param>
/// <param name="Text">1 to 500 characters; may break lines.</param>
public sealed record RowWords(int Row, string Text);

/// <summary>A video that the maker points to. It is only ever a link: nothing is loaded from there.</summary>
/// <param name="Address">An address that begins with https:// and names a host, at most 500 characters of ASCII, kept as typed.</param>
/// <param name="Caption">What it shows, in the maker's words; 1 to 200 characters.</param>
/// <param name="Row">The chart row that it is about, from 1; null for the whole pattern.</param>
public sealed record Video(string Address, string Caption, int? Row)
{
    /// <summary>The host in lower case, which readers are shown before they follow the link; empty for an address that breaks the rules.</summary>
    public string Host => WebAddress.Host(Address) ?? "";
}

/// <summary>A photo by the maker: which one, and what it shows. The picture itself is kept elsewhere.</summary>
/// <param name="Hash">SHA-256 of the large picture as it is stored, 64 lower-case hexadecimal digits.</param>
/// <param name="Caption">What is to be seen, in the maker's words, for those who cannot see it too; 1 to 200 characters.</param>
/// <param name="Row">The chart row that it is about, from 1; null for the whole pattern.</param>
public sealed record Photo(string Hash, string Caption, int? Row);
