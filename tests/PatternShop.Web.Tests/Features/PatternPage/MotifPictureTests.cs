using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class MotifPictureTests
{
    [Fact]
    public void A_small_piece_goes_on_as_its_motif_and_repeated_rows_do()
    {
        var piece = Piece.Of(Charts.Document("xx./.xx/x.x", 2, offset: 1, steps: [new PlainRows(1, 1), new Repeat(2, [new ChartRows(1, 3, 1)])]));
        var cells = MotifPicture.Cells(piece);
        Assert.Equal((MotifPicture.Rows, MotifPicture.Ends), (cells.Rows, cells.Columns));
        for (var row = 0; row < cells.Rows; row++)
        {
            for (var end = 0; end < cells.Columns; end++)
            {
                Assert.Equal(piece.Document.Motif[(cells.Rows - 1 - row) % 3, (end + 1) % 3], cells[row, end]);
            }
        }
    }

    [Fact]
    public void Plain_rows_alternate_and_floating_ends_are_left_out()
    {
        var piece = Piece.Of(Charts.Document("xx.", 1, 0, 0, Charts.AlikeUnder, Side.Left, new Repeat(2, [new ChartRows(1, 1, 1), new PlainRows(1, 1)])));
        var rows = GridText.Write(MotifPicture.Cells(piece)).Reverse().Take(4);
        Assert.Equal(["xx.xx.xx.xx.xx.xx.xx.xx.", ".x.x.x.x.x.x.x.x.x.x.x.x", "xx.xx.xx.xx.xx.xx.xx.xx.", "x.x.x.x.x.x.x.x.x.x.x.x."], rows);
    }

    [Fact]
    public void Rows_that_are_woven_once_are_not_repeated()
    {
        var cells = MotifPicture.Cells(Piece.Of(Charts.Document("xx./.xx")));
        Assert.Equal(2, cells.Rows);
        Assert.Empty(Svg.Strange(MotifPicture.Svg(Hostile.Sample.Piece, "hostile")));
    }
}
