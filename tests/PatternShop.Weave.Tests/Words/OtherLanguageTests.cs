using System.Text.RegularExpressions;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>A second language is the object that is passed in and nothing else: no word of directions comes from elsewhere.</summary>
public sealed partial class OtherLanguageTests
{
    [Fact]
    public void Directions_in_every_form_have_no_word_of_another_language() => Law.OfDocuments(document =>
    {
        var words = new OtherWords();
        var piece = Piece.Of(document);
        Assert.All(Texts(piece, words), text => Assert.DoesNotMatch(ForeignLetter(), text));
    });

    [Fact]
    public void A_word_from_elsewhere_would_be_seen() =>
        Law.CanFail(document => Assert.All(Texts(Piece.Of(document), Wording.English), text => Assert.DoesNotMatch(ForeignLetter(), text)));

    [Fact]
    public void Typed_runs_are_read_in_the_language() =>
        Assert.Equal([new Run(Stroke.Over, 2), new Run(Stroke.Under, 1)], new OtherWords().ReadRuns("z2 kiz"));

    private static IEnumerable<string> Texts(Piece piece, Wording words) =>
    [
        .. piece.Readings.SelectMany(reading => new[]
        {
            words.DirectionsText(reading),
            words.ShortText(reading.Writing),
            words.SpokenDirections(reading),
            words.MotifText(ByMotif.Of(piece, reading)),
        }),
        .. piece.PrintedRows().SelectMany(number => new[] { words.WrittenRow(piece, number), words.RowNotes(piece, number), words.PlaceText(piece, number), words.PlaceNotes(piece, number) }),
    ];

    [GeneratedRegex("[A-Za-z-[zqki]]", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex ForeignLetter();
}
