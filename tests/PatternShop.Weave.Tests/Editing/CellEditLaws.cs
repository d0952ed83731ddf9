using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>Blocks of cells that are changed, shifted and moved.</summary>
public sealed class CellEditLaws
{
    private static readonly CellTransform[] Kinds = Enum.GetValues<CellTransform>();

    private static readonly Gen<(PatternDocument Document, CellRectangle Box, CellTransform Kind)> Cases =
        from document in DocumentGen.Documents
        from box in Boxes(document.Motif)
        from kind in Gen.Int[0, Kinds.Length - 1].Select(at => Kinds[at])
        select (document, box, kind);

    [Fact]
    public void A_block_is_changed_as_the_grid_would_be_and_nothing_else_is() => Cases.Sample(
        c =>
        {
            var (document, box, kind) = c;
            var result = new TransformCells(kind, box).Apply(document);
            if (IsQuarter(kind) && box.Rows != box.Columns)
            {
                Assert.Equal(EditProblemCodes.BoxNotSquare, Assert.Single(Assert.IsType<EditResult.Refused>(result).Problems).Code);
                return;
            }

            var after = Assert.IsType<EditResult.Done>(result).Document;
            Assert.Equal(document, after with { Motif = document.Motif });
            Assert.Equal(Of(kind, Transforms.Cut(document.Motif, box)), Transforms.Cut(after.Motif, box));
            AssertOutside(document.Motif, after.Motif, (row, end) => box.Holds(row, end));
            var again = kind;
            for (var time = 1; time < (IsQuarter(kind) ? 4 : 2); time++)
            {
                after = ((EditResult.Done)new TransformCells(again, box).Apply(after)).Document;
            }

            Assert.Equal(document, after);
        },
        iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void The_whole_motif_may_change_its_size() => Cases.Sample(
        c =>
        {
            if (new TransformCells(c.Kind).Apply(c.Document) is EditResult.Done done)
            {
                Assert.Equal(Of(c.Kind, c.Document.Motif), done.Document.Motif);
                Assert.True(IsQuarter(c.Kind) || done.Document with { Motif = c.Document.Motif } == c.Document);
            }
        },
        iter: Effort.Of(500, 20_000));

    [Fact]
    public void What_is_moved_stands_elsewhere_and_under_is_left_behind() => (
        from document in DocumentGen.Documents
        from box in Boxes(document.Motif)
        from row in Gen.Int[0, document.Motif.Rows - box.Rows]
        from end in Gen.Int[0, document.Motif.Columns - box.Columns]
        select (document, box, row, end)).Sample(
        c =>
        {
            var (document, box, row, end) = c;
            var to = box with { Row = row, Column = end };
            var after = Assert.IsType<EditResult.Done>(new MoveCells(box, end - box.Column, row - box.Row).Apply(document)).Document;
            Assert.Equal(document, after with { Motif = document.Motif });
            Assert.Equal(Transforms.Cut(document.Motif, box), Transforms.Cut(after.Motif, to));
            AssertOutside(document.Motif, after.Motif, (r, e) => box.Holds(r, e) || to.Holds(r, e));
            for (var r = 0; r < box.Rows; r++)
            {
                for (var e = 0; e < box.Columns; e++)
                {
                    Assert.True(to.Holds(box.Row + r, box.Column + e) || !after.Motif[box.Row + r, box.Column + e]);
                }
            }
        },
        iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void What_is_shifted_there_and_back_is_as_it_was() => (
        from c in Cases
        from ends in Gen.Int[-20, 20]
        from rows in Gen.Int[-20, 20]
        from whole in Gen.Bool
        select (c.Document, Box: whole ? (CellRectangle?)null : c.Box, ends, rows)).Sample(
        c =>
        {
            var shifted = Assert.IsType<EditResult.Done>(new ShiftCells(c.ends, c.rows, c.Box).Apply(c.Document)).Document;
            Assert.Equal(c.Document.Motif.Count, shifted.Motif.Count);
            Assert.Equal(c.Document, Assert.IsType<EditResult.Done>(new ShiftCells(-c.ends, -c.rows, c.Box).Apply(shifted)).Document);
        },
        iter: Effort.Of(500, 20_000));

    private static bool IsQuarter(CellTransform kind) => kind is CellTransform.TurnFigure or CellTransform.TurnCloth;

    private static BitGrid Of(CellTransform kind, BitGrid grid) => kind switch
    {
        CellTransform.MirrorAcross => Transforms.MirrorAcross(grid),
        CellTransform.MirrorAlong => Transforms.MirrorAlong(grid),
        CellTransform.HalfTurn => Transforms.HalfTurn(grid),
        CellTransform.TurnFigure => Transforms.TurnFigure(grid),
        CellTransform.TurnCloth => Transforms.TurnCloth(grid),
        CellTransform.Swap => Transforms.Swap(grid),
        CellTransform.OtherSide => Transforms.OtherSide(grid),
        _ => throw new InvalidOperationException(),
    };

    private static Gen<CellRectangle> Boxes(BitGrid motif) =>
        from row in Gen.Int[0, motif.Rows - 1]
        from end in Gen.Int[0, motif.Columns - 1]
        from rows in Gen.Int[1, motif.Rows - row]
        from ends in Gen.Int[1, motif.Columns - end]
        select new CellRectangle(row, end, rows, ends);

    private static void AssertOutside(BitGrid before, BitGrid after, Func<int, int, bool> inside)
    {
        for (var row = 0; row < before.Rows; row++)
        {
            for (var end = 0; end < before.Columns; end++)
            {
                Assert.True(inside(row, end) || before[row, end] == after[row, end]);
            }
        }
    }
}
