using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Where a version is found, in words; the code for a camera stands at the foot of every sheet.</summary>
internal static class AddressBlock
{
    public static Stack Of(string address, Rhythm rhythm, Wording wording) => new(
    [
        new Stacked(0, new Words(wording.FoundText, rhythm.Styles.Body, new Tag(TagKind.Paragraph))),
        new Stacked(1.5, new Words(address, rhythm.Styles.Strong, new Tag(TagKind.Link, new Tag(TagKind.Paragraph)) { Target = address })),
    ]);
}
