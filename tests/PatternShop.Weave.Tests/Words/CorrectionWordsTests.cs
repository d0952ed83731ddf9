using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>What a version corrected, in a line: laid beside the one before it by hand.</summary>
public sealed class CorrectionWordsTests
{
    private static readonly PatternDocument Before = Charts.Document("x.x.x. / .x.x.x / .xx..x / x.x.x.");

    [Fact]
    public void A_changed_cell_names_its_row_and_what_else_changes_with_it() => Assert.Equal(
        "Row 3 reads otherwise. Otherwise now: floats.",
        Wording.English.CorrectedText(Piece.Of(Before), Piece.Of(Before with { Motif = Before.Motif.With(2, 4, true) })));

    // the row after it starts from the other side now, so it reads otherwise too
    [Fact]
    public void A_new_row_is_named_by_its_new_number()
    {
        var longer = Charts.Document("x.x.x. / .x.x.x / .xx..x / xxx... / x.x.x.");
        Assert.StartsWith("Row 5 reads otherwise; row 4 is new. Otherwise now: ", Wording.English.CorrectedText(Piece.Of(Before), Piece.Of(longer)), StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_but_words_leaves_every_row() => Assert.Equal(
        "Every row reads as before. Otherwise now: title.",
        Wording.English.CorrectedText(Piece.Of(Before), Piece.Of(Before with { Title = "Another" })));

    [Fact]
    public void The_same_document_changes_nothing() => Assert.Equal("Every row reads as before.", Wording.English.CorrectedText(Piece.Of(Before), Piece.Of(Before)));
}
