namespace PatternShop.Print;

/// <summary>Headings of sections.</summary>
internal static class Headings
{
    public static Words Section(string text, Rhythm rhythm) => new(text, rhythm.Styles.Heading, new Tag(TagKind.Heading2) { Bookmark = text });

    public static Words Part(string text, Rhythm rhythm) => new(text, rhythm.Styles.Subheading, new Tag(TagKind.Heading3));
}
