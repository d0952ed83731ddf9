using PatternShop.Weave;
using UglyToad.PdfPig;
using Xunit;

namespace PatternShop.Print.Tests;

/// <summary>Colours on the sheet, read by another library.</summary>
public sealed class ClothColourTests
{
    [Fact]
    public void The_small_cloth_has_the_colours_of_its_yarns_and_nothing_else_has_any()
    {
        var coloured = Samples.Diamond with { Cloth = ClothLook.Plain with { Warp = new YarnLook(null, "red"), Wefts = [new YarnLook(null, "blue")] } };
        // our own values of the two names, rounded as the file writes them; edges are three fifths as light
        Assert.Equal([(61, 102, 152), (178, 58, 53)], Colours(coloured).Where(colour => colour is (61, 102, 152) or (178, 58, 53)).Order());
        Assert.InRange(Colours(coloured).Count, 2, 4);
        Assert.Empty(Colours(Samples.Diamond));
    }

    private static HashSet<(int Red, int Green, int Blue)> Colours(PatternDocument document)
    {
        using var pdf = PdfDocument.Open(Samples.Print(document));
        return
        [
            .. pdf.GetPages()
                .SelectMany(page => page.Paths)
                .Select(path => (path.IsFilled ? path.FillColor : path.StrokeColor)!.ToRGBValues())
                .Where(colour => colour.r != colour.g || colour.g != colour.b)
                .Select(colour => (Part(colour.r), Part(colour.g), Part(colour.b))),
        ];
    }

    private static int Part(double value) => (int)Math.Round(value * 255);
}
