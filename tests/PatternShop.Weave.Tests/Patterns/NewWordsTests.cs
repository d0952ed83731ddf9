using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class NewWordsTests
{
    private const string Turned = "Harbour \u202Esthgil";

    private static readonly PatternDocument Stored = Charts.Document(Charts.TenEndDiamond, repeats: 2, balance: 1) with { Title = Turned, RowWords = [new RowWords(2, "a\u2067b")] };

    /// <summary>A maker is never locked out of a pattern: what was stored before the rule is read, edited and made into a piece.</summary>
    [Fact]
    public void What_was_stored_with_such_words_opens_and_goes_on()
    {
        var bytes = PatternWriter.CanonicalBytes(Stored);
        Assert.IsType<ReadResult.Refused>(PatternReader.Read(bytes));
        Assert.Equal(Stored, Assert.IsType<ReadResult.Read>(PatternReader.ReadStored(bytes)).Document);
        Assert.Equal(Turned, Piece.Of(Stored).Document.Title);
        var done = Assert.IsType<EditResult.Done>(new SetWords(Notes: "New notes").Apply(Stored));
        Assert.Equal((Turned, "New notes"), (done.Document.Title, done.Document.Notes));
        Assert.IsType<EditResult.Done>(new InsertRows(1, 1).Apply(Stored));
        Assert.Equal("Harbour lights", Assert.IsType<EditResult.Done>(new SetWords(Title: "Harbour lights").Apply(Stored)).Document.Title);
    }

    [Fact]
    public void An_edit_that_brings_such_words_in_is_refused()
    {
        Refused("/title", new SetWords(Title: "Other \u202Esthgil"));
        Refused("/notes", new SetWords(Notes: "one\ntwo \u2066three"));
        Refused("/licence", new SetWords(Licence: "\u202A"));
        Refused("/rowWords/1/text", new SetRowWords(3, "\u202Dthree"));
        Refused("/videos/0/caption", new SetVideos([new Video("https://films.example/1", "film\u2069", null)]));
        Refused("/photos/0/caption", new SetPhotos([new Photo(new string('a', 64), "\u2068photo", null)]));
        Refused("/rows/steps/0/name", new SetRowPlan(Stored.Rows with { Steps = [new EdgeStitch("twi\u202Bning", StitchYarn.Own, 1, Side.Left, 1), new ChartRows(1, 8, 1)] }));
        Refused("/rows/steps/0/steps/1/name", new SetRowPlan(Stored.Rows with { Steps = [new Repeat(2, [new ChartRows(1, 8, 1), new EdgeStitch("twi\u202Cning", StitchYarn.Own, 1, Side.Left, 1)])] }));
    }

    /// <summary>Joiners and marks that scripts need, new lines and tabs in notes.</summary>
    [Fact]
    public void What_scripts_and_notes_need_stays()
    {
        var document = Stored with { Title = "نی\u200Cمه ک\u200Dش \u200Fא\u200E \u061C", Notes = "One\n\ttwo", Licence = "a\tb", RowWords = [new RowWords(1, "1\t2\n3")] };
        Assert.Equal([], DocumentRules.Check(document));
        Assert.Equal([], NewWords.Check(document));
        Assert.Equal(document, Assert.IsType<ReadResult.Read>(PatternReader.Read(PatternWriter.CanonicalBytes(document))).Document);
    }

    [Fact]
    public void Every_character_that_turns_is_found_and_no_other()
    {
        var turning = Enumerable.Range(0x2000, 0x100).Where(value => TextCharacters.FirstTurning("a" + (char)value) is not null);
        Assert.Equal([.. Enumerable.Range(0x202A, 5), .. Enumerable.Range(0x2066, 4)], turning);
        Assert.Equal((4, "U+2066"), TextCharacters.FirstTurning("abc\u2066\u202E") is { } found ? (found.Position, found.Name) : default);
    }

    private static void Refused(string pointer, Edit edit)
    {
        var problem = Assert.Single(Assert.IsType<EditResult.Refused>(edit.Apply(Stored)).Problems);
        Assert.Equal((ProblemCodes.TextDirection, pointer), (problem.Code, problem.Pointer));
        BadDocumentTests.AssertReadable(problem);
    }
}
