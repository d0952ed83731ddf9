using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class MirrorChoiceTests
{
    [Fact]
    public void The_figure_named_is_what_lies_in_the_middle_of_the_piece_and_mirrors() =>
        Gen.Select(DocumentGen.Motifs(5, 8), Gen.Int[1, 4]).Sample((motif, repeats) =>
        {
            foreach (var choice in Mirroring.Choices(motif, repeats))
            {
                Assert.Equal(choice.Figure, Transforms.MirrorAcross(choice.Figure));
                Assert.InRange(choice.Figure.Columns, motif.Columns, motif.Columns + 1);
                var piece = Piece.Of(Charts.Document(string.Join('/', GridText.Write(motif)), repeats, choice.Way.Offset, choice.Way.Balance));
                var ends = piece.PatternEnds;
                Assert.Equal(ends % 2 == 1, choice.Middle.IsOnThread);
                Assert.Equal(piece.MotifEnd((ends - 1) / 2), choice.Middle.Thread);
                if (repeats > 1)
                {
                    var first = (ends - choice.Figure.Columns) / 2;
                    Assert.Equal(choice.Figure, BitGrid.Create(motif.Rows, choice.Figure.Columns, (row, end) => piece.At(row + 1, first + end) == Stroke.Over));
                }
            }
        });

    [Fact]
    public void The_diamond_puts_one_of_two_figures_in_the_middle()
    {
        // "Whole pieces" 1: the fewest balance ends are 1, at offsets 0 and 5
        var choices = Mirroring.Choices(GridText.Read(Charts.TenEndDiamond.Split('/')), 3);
        Assert.Equal([new MirrorWay(0, 1), new MirrorWay(5, 1)], choices.Select(choice => choice.Way));
        Assert.Equal([new Middle(10), new Middle(0)], choices.Select(choice => choice.Middle));
        Assert.Equal(
            [
                "Begin with end 1 of the motif, 1 balance end (a multiple of 10, plus 1): end 6 is in the middle.",
                "Begin with end 6 of the motif, 1 balance end (a multiple of 10, plus 1): end 1 is in the middle.",
            ],
            choices.Select(choice => Wording.English.MirrorChoiceText(choice, 10)));
    }

    [Fact]
    public void Ways_to_mirror_of_the_sixth_whole_piece()
    {
        // "Whole pieces" 6: xxx.. / .x.xx mirrors with 0 balance ends at offset 4, 1 at 1, 2 at 3, 3 at 0, 4 at 2
        var motif = GridText.Read("xxx..", ".x.xx");
        Assert.Equal([new MirrorWay(0, 3), new MirrorWay(1, 1), new MirrorWay(2, 4), new MirrorWay(3, 2), new MirrorWay(4, 0)], Mirroring.EveryOffset(motif));
        Assert.Equal("Begin with end 5 of the motif, 0 balance ends (a multiple of 5): the middle is between ends 4 and 5.", Wording.English.MirrorChoiceText(Mirroring.Choices(motif, 2)[0], 5));
        Assert.Equal("Begin with end 5 of the motif, 0 balance ends (a multiple of 5): end 2 is in the middle.", Wording.English.MirrorChoiceText(Mirroring.Choices(motif, 1)[0], 5));
    }

    [Fact]
    public void Repeat_and_mirrors_are_said_in_words()
    {
        Assert.Equal("The smallest repeat is 4 ends by 4 rows; 1 row further up it is the same, 1 end to the right.", Wording.English.RepeatText(Symmetry.Of(GridText.Read("xx..", ".xx.", "..xx", "x..x"))));
        var diamond = Symmetry.Of(GridText.Read(Charts.TenEndDiamond.Split('/')));
        Assert.Equal("The smallest repeat is 10 ends by 10 rows.", Wording.English.RepeatText(diamond));
        Assert.Equal(
            "Left and right mirror on ends 1 and 6. Top and bottom mirror on rows 1 and 6. Half a turn leaves it the same, for one about the point on end 1 and on row 1.",
            Wording.English.MirrorsText(diamond));
        Assert.Equal("Left and right do not mirror. Top and bottom do not mirror. No half turn leaves it the same.", Wording.English.MirrorsText(Symmetry.Of(GridText.Read("xx.x..", "x.....", "......"))));
    }
}
