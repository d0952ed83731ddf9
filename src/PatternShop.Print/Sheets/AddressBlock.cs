using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>Where a version is found: for a camera and for eyes.</summary>
internal static class AddressBlock
{
    private const double Gap = 4;

    // large enough for a phone over a table
    private const double Module = 0.8;

    public static Beside Of(string address, Rhythm rhythm, Wording wording)
    {
        var code = QrPicture.Of(address, Module);
        var figure = new Tag(TagKind.Figure) { Alternative = wording.CodeDescription(address) };
        return new Beside(
            new Picture(code.Width, code.Height, ShapeMarks.Of(code).Select(mark => new Placed(mark, figure)).ToSequence()),
            Gap,
            new Stack(
            [
                new Stacked(0, new Words(wording.FoundText, rhythm.Styles.Body, new Tag(TagKind.Paragraph))),
                new Stacked(1.5, new Words(address, rhythm.Styles.Strong, new Tag(TagKind.Paragraph))),
            ]));
    }
}
