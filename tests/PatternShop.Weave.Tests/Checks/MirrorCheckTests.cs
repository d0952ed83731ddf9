using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class MirrorCheckTests
{
    // Whole piece 6 of the values computed outside this project: xxx.. / .x.xx mirrors with 0 balance ends at offset 4, 1 at 1, 2 at 3, 3 at 0, 4 at 2.
    [Theory]
    [InlineData(0, 3)]
    [InlineData(1, 1)]
    [InlineData(2, 4)]
    [InlineData(3, 2)]
    public void Balance_ends_are_judged_and_the_right_number_is_offered_first(int offset, int balance)
    {
        PatternDocument With(int ends) => Charts.Document("xxx../.x.xx", repeats: 2, offset: offset, balance: ends, floating: Charts.AlikeUnder);
        Assert.Empty(Found.In<NotMirrored>(With(balance)));
        Assert.Equal(Weight.Caution, Assert.Single(Found.In<NotMirrored>(With(balance + 1))).Weight);
        var remedy = Found.FirstRemedy<NotMirrored>(With(balance + 1));
        Assert.Equal(With(balance), Found.After(With(balance + 1), remedy.Edit));
    }

    [Fact]
    public void Nobody_who_did_not_ask_is_told()
    {
        Assert.Empty(Found.In<NotMirrored>(Charts.Document("xxx../.x.xx", repeats: 2)));
        Assert.Empty(Found.In<NotMirrored>(Charts.Document("xx.x../.x.xx.", repeats: 2, balance: 1))); // cannot mirror at all
    }

    [Fact]
    public void What_is_found_is_not_mirrored_and_what_is_mirrored_is_not_found() => Law.OfDocuments(document =>
    {
        var found = Found.In<NotMirrored>(document).Any();
        Assert.False(found && (document.Width.Balance == 0 || !DocumentTraits.IsAsymmetric(document)));
        var canMirror = Enumerable.Range(0, document.Motif.Columns).Any(balance => !DocumentTraits.IsAsymmetric(document with { Width = document.Width with { Balance = balance } }));
        var woven = Oracle.Rows(document).Any(row => row.ChartRow is not null) && Weave.Checks.Of(Piece.Of(document)) is not [NothingDrawn];
        Assert.Equal(found, woven && canMirror && document.Width.Balance > 0 && DocumentTraits.IsAsymmetric(document));
    });
}
