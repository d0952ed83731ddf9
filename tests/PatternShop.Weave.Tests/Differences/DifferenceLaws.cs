using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class DifferenceLaws
{
    [Fact]
    public void Applying_the_difference_gives_the_new_document() =>
        Gen.Select(DocumentGen.Documents, DocumentGen.Documents).Sample((old, @new) =>
        {
            var difference = DocumentDifference.Between(old, @new);
            Assert.Equal(@new, difference.Apply(old));
            Assert.Equal(old.Equals(@new), difference.IsNone);
        });

    [Fact]
    public void Words_videos_and_photos_that_changed_are_named_with_both_readings()
    {
        var old = Charts.Document(Charts.TenEndDiamond) with
        {
            RowWords = [new RowWords(2, "Beat gently")],
            Photos = [new Photo(new string('a', 64), "Sample", null), new Photo(new string('b', 64), "Edge", 3)],
        };
        var @new = old with
        {
            RowWords = [new RowWords(2, "Beat twice")],
            Videos = [new Video("https://films.example/", "The turn", 4)],
            Photos = [new Photo(new string('c', 64), "Sample", null), new Photo(new string('b', 64), "Edge", 3)],
        };
        Assert.Equal(
            [
                new FactChange("Maker's words for rows", "Chart row 2: Beat gently", "Chart row 2: Beat twice"),
                new FactChange("Maker's videos", "", "Chart row 4: The turn: https://films.example/"),
                new FactChange("Maker's photos", "Sample\nChart row 3: Edge", "Sample (another picture)\nChart row 3: Edge"),
            ],
            Wording.English.FactChanges(Piece.Of(old), Piece.Of(@new)));
        Assert.False(DocumentDifference.Between(old, @new).TouchesWeaving);
    }

    [Fact]
    public void Colours_that_changed_are_named_with_both_readings_and_touch_no_row()
    {
        var old = Charts.Document(Charts.TenEndDiamond) with { Cloth = ClothLook.Plain with { Warp = new YarnLook(new Thickness(12, ThicknessUnit.WrapsPerInch), "white") } };
        var @new = old with { Cloth = new ClothLook(new YarnLook(null, "sea"), [new YarnLook(new Thickness(2.5m, ThicknessUnit.Millimetres), "blue")], [new ColourRun(6, "blue"), new ColourRun(2, "white")], [], [new OwnColour("sea", new Rgb(1, 2, 255))]) };
        Assert.Equal(
            [new FactChange("Thickness and colours", "Warp: white, 12 wraps per inch", "Warp: sea\nWeft: blue, 2.5 mm\nEnds: 6 blue, 2 white, repeated\nOwn colours: sea #0102ff")],
            Wording.English.FactChanges(Piece.Of(old), Piece.Of(@new)));
        Assert.False(DocumentDifference.Between(old, @new).TouchesWeaving);
    }

    [Fact]
    public void Nothing_differs_from_itself() =>
        DocumentGen.Documents.Sample(document =>
        {
            Assert.True(DocumentDifference.Between(document, document).IsNone);
            Assert.False(PieceDifference.Between(Piece.Of(document), Piece.Of(document)).RowsDiffer);
        });

    [Fact]
    public void Another_motif_cannot_take_a_difference()
    {
        var difference = MotifDifference.Between(GridText.Read("x.", ".x"), GridText.Read("x.", ".x", "xx"));
        Assert.Throws<ArgumentException>(() => difference.Apply(GridText.Read("x.")));
        Assert.Throws<ArgumentException>(() => difference.Apply(GridText.Read("x.", ".x", "x.")));
    }

    [Fact]
    public void An_inserted_row_is_one_inserted_row()
    {
        var old = GridText.Read("xx..", ".xx.", "..xx", "x..x");
        var @new = GridText.Read("xx..", ".xx.", "x.x.", "..xx", "x..x");
        Assert.Equal(
            [new RowsKept(2), new RowInserted("x.x."), new RowsKept(2)],
            MotifDifference.Between(old, @new).Changes.ToArray());
        Assert.Equal(
            [new RowsKept(2), new RowsRemoved(1), new RowsKept(2)],
            MotifDifference.Between(@new, old).Changes.ToArray());
    }

    [Fact]
    public void A_changed_cell_is_one_changed_row() =>
        DocumentGen.Motifs(12, 12).SelectMany(motif => Gen.Select(Gen.Const(motif), Gen.Int[0, motif.Rows - 1], Gen.Int[0, motif.Columns - 1]))
            .Sample((motif, row, end) =>
            {
                var changed = motif.With(row, end, !motif[row, end]);
                var changes = MotifDifference.Between(motif, changed).Changes;
                Assert.Single(changes, change => change is not RowsKept);
                Assert.Equal(GridText.Write(changed)[row], Assert.IsType<RowChanged>(changes.Single(change => change is not RowsKept)).Cells);
            });

    [Fact]
    public void Every_row_of_both_orders_is_in_the_comparison_once_and_in_order() =>
        Gen.Select(DocumentGen.Documents, DocumentGen.Documents).Sample((old, @new) =>
        {
            var (a, b) = (Piece.Of(old), Piece.Of(@new));
            var rows = PieceDifference.Between(a, b).Rows;
            Assert.Equal(Enumerable.Range(1, a.Rows.Count), rows.Where(row => row.Old is not null).Select(row => row.Old!.Value));
            Assert.Equal(Enumerable.Range(1, b.Rows.Count), rows.Where(row => row.New is not null).Select(row => row.New!.Value));
            Assert.All(rows.Where(row => row.Fate == RowFate.Same), row =>
                Assert.Equal(a.Reading(row.Old!.Value).Runs, b.Reading(row.New!.Value).Runs));
        });
}
