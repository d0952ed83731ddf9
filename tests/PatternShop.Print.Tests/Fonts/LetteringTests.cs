using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Print.Tests;

public sealed class LetteringTests
{
    private static readonly TextStyle Style = new(11);

    private static Gen<string> Texts { get; } = Gen.OneOf(
        Gen.Char['a', 'z'].Select(c => c.ToString()),
        Gen.OneOf(" ", "  ", "7", "12", "×", "over 3", "é", "Ω", "Ж", "中", "👩‍🌾", "→", "\u0301", "[", "]", ",", "cm"))
        .Array[0, 60].Select(string.Concat);

    [Fact]
    public void Lines_together_are_the_text() => Gen.Select(Texts, Gen.Double[3, 80]).Sample(
        (text, width) => Assert.Equal(text, string.Concat(Lettering.Lines(text, Style, width))),
        iter: Effort.Of(2_000, 100_000));

    [Fact]
    public void No_line_is_wider_than_the_room_unless_it_is_one_character() => Gen.Select(Texts, Gen.Double[3, 80]).Sample(
        (text, width) => Assert.All(
            Lettering.Lines(text, Style, width),
            line => Assert.True(Lettering.Width(line.TrimEnd(' '), Style) <= width + 1e-9 || Characters(line.Trim(' ')) == 1, $"'{line}' in {width}")),
        iter: Effort.Of(2_000, 100_000));

    [Fact]
    public void Pieces_together_are_the_text() => Texts.Sample(
        text => Assert.Equal(text, string.Concat(Lettering.Pieces(text, false).Select(piece => piece.Text))),
        iter: Effort.Of(2_000, 100_000));

    [Theory]
    [InlineData("from the left over 2", 26, "from the left /over 2")]
    [InlineData("[over 1, under 2] × 3", 28, "[over 1, /under 2] × 3")]
    [InlineData("rows; woven (14.7 cm)", 28, "rows; woven /(14.7 cm)")]
    public void Numbers_stay_with_their_words(string text, double width, string lines) =>
        Assert.Equal(lines, string.Join('/', Lettering.Lines(text, Style, width)));

    [Theory]
    [InlineData("Ωμέγα", "NotoSans-Regular")]
    [InlineData("каймой", "NotoSans-Regular")]
    [InlineData("Prüfung 10½ × 2", "AtkinsonHyperlegibleNext-Regular")]
    [InlineData("中", null)]
    [InlineData("👩‍🌾", null)]
    [InlineData("→", null)]
    public void Each_character_is_set_with_the_first_font_that_has_it(string text, string? font)
    {
        var piece = Assert.Single(Lettering.Pieces(text, false));
        Assert.Equal((text, font), (piece.Text, piece.Face?.Name));
    }

    [Fact]
    public void Control_characters_leave_no_trace() => Assert.Equal("ab", string.Concat(Lettering.Pieces("a\u0007\u200Eb", true).Select(piece => piece.Text)));

    private static int Characters(string text) => new System.Globalization.StringInfo(text).LengthInTextElements;

    /// <summary>"arch, 0.75 to 1.25 in" may be parted after the comma and before "to", and nowhere else.</summary>
    [Fact]
    public void Only_what_must_stay_together_does()
    {
        var lines = Lettering.Lines("lay it as an arch, 0.75 to 1.25 in high", new TextStyle(10), 0.1 + Lettering.Width("arch, 0.75", new TextStyle(10)));
        Assert.Equal(["lay it as ", "an arch, ", "0.75 ", "to 1.25 in ", "high"], lines);
        Assert.Equal(["under ", "over 2, ", "over 3"], Lettering.Lines("under over 2, over 3", new TextStyle(10), 0.1 + Lettering.Width("over 2,", new TextStyle(10))));
    }
}
