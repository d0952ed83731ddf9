using System.Text;

namespace PatternShop.Web;

/// <summary>The readable part of an address. The pattern's id finds it; this only tells people what they will see.</summary>
internal static class Slug
{
    private const int Most = 60;
    private const string Nameless = "pattern";

    /// <summary>Small letters and digits of a title, joined by hyphens: "Harbour lights, no. 2" becomes "harbour-lights-no-2".</summary>
    public static string Of(string title)
    {
        var slug = new StringBuilder();
        foreach (var sign in title)
        {
            if (char.IsAsciiLetterOrDigit(sign))
            {
                slug.Append(char.ToLowerInvariant(sign));
            }
            else if (slug.Length > 0 && slug[^1] != '-' && sign is not ('\'' or '’'))
            {
                slug.Append('-');
            }
        }

        slug.Length = Math.Min(slug.Length, Most);
        var text = slug.ToString().TrimEnd('-');
        return text.Length > 0 ? text : Nameless;
    }
}
