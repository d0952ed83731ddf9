using CsCheck;
using PatternShop.Weave;

namespace PatternShop.Tests.Shared;

/// <summary>Makes edits of a document: most fit, some do not.</summary>
public static class EditGen
{
    /// <summary>Edits of every kind.</summary>
    public static Gen<Edit> Of(PatternDocument document) => Gen.Frequency(
        (4, Strokes(document.Motif.Rows, document.Motif.Columns).Select(edit => (Edit)edit)),
        (2, Sizes.Select(edit => (Edit)edit)),
        (1, Strokes(document.Motif.Rows, document.Motif.Columns + 1).Select(edit => (Edit)edit)),
        (2, DocumentGen.Widths(document.Motif.Columns).Select(width => (Edit)new SetWidth(width))),
        (1, DocumentGen.Widths(document.Motif.Columns).Select(width => (Edit)new SetFloating(width.Floating))),
        (2, DocumentGen.RowPlans(document.Motif.Rows + 1).Select(rows => (Edit)new SetRowPlan(rows))),
        (1, Gen.Select(DocumentGen.RowPlans(document.Motif.Rows + 1), Gen.Int[0, 3], (rows, number) => (Edit)new OrderRows(number < 2 ? OrderWay.Close : OrderWay.Shorten, number, rows))),
        (1, Edges(document.Rows.Wefts.Count)),
        (1, Edges(document.Rows.Wefts.Count + 1).Select(edges => (Edit)new Mend(MendKind.Edges, 0, edges))),
        (2, Own(document.Motif.Rows)),
        (5, Shapes(document.Motif.Rows, document.Motif.Columns)),
        (2, DocumentGen.Documents.SelectMany(OfOther)));

    private static Gen<Edit> Edges(int wefts) =>
        from width in DocumentGen.Widths(1)
        from lefts in Gen.Bool.Array[wefts]
        select (Edit)new SetEdges(width.Floating, lefts.Select(left => new Weft(left ? Side.Left : Side.Right)).ToSequence());

    /// <summary>A document and edits that are made one after another.</summary>
    public static Gen<(PatternDocument Document, Edit[] Edits)> Many(int least, int most) =>
        from document in DocumentGen.Documents
        from edits in Of(document).Array[least, most]
        select (document, edits);

    /// <summary>Strokes over a motif of one size: any cells, at least one.</summary>
    public static Gen<SetCells> Strokes(int rows, int ends) =>
        from chosen in Gen.Bool.Array[rows * ends]
        from first in Gen.Int[0, (rows * ends) - 1]
        from over in Gen.Bool.Array[rows * ends]
        select new SetCells(
            BitGrid.Create(rows, ends, (row, end) => chosen[(row * ends) + end] || (row * ends) + end == first),
            BitGrid.Create(rows, ends, (row, end) => over[(row * ends) + end]));

    public static Gen<ResizeMotif> Sizes { get; } = Gen.Select(
        Gen.Int[0, 14], Gen.Int[0, 14], Gen.Bool, Gen.Bool, (rows, ends, left, bottom) => new ResizeMotif(rows, ends)
        {
            EndsAt = left ? Side.Left : Side.Right,
            RowsAt = bottom ? RowEdge.Bottom : RowEdge.Top,
        });

    // one more than there is: some do not fit
    private static Gen<Edit> Shapes(int rows, int ends) =>
        from row in Gen.Int[1, rows + 1]
        from end in Gen.Int[1, ends + 1]
        from moreRows in Gen.Int[0, 3]
        from moreEnds in Gen.Int[0, 3]
        from kind in Gen.Int[0, 6]
        from which in Gen.Int[0, 8]
        select Shape(which, row, end, moreRows, moreEnds, (CellTransform)kind);

    private static Edit Shape(int which, int row, int end, int rows, int ends, CellTransform kind)
    {
        CellRectangle? box = rows == 0 ? null : new CellRectangle(row - 1, end - 1, rows, Math.Max(1, ends));
        return which switch
        {
            0 => new InsertRows(row, rows),
            1 => new RemoveRows(row, rows),
            2 => new InsertEnds(end, ends),
            3 => new RemoveEnds(end, ends),
            4 => new TransformCells(kind, box),
            5 => new ShiftCells(ends - 1, rows - 1, box),
            6 => new MoveCells(box ?? new CellRectangle(0, 0, 1, 1), 1 - ends, 1 - rows),
            7 => new ReplaceMotif(BitGrid.Create(rows + 1, ends + 1, (r, e) => (r + e) % 2 == 0)),
            _ => SetCells.Covering(row + rows, end + ends, new CellRectangle(0, 0, row, end), Basics.Plain),
        };
    }

    // a row more than there is: some do not fit
    private static Gen<Edit> Own(int motifRows) => Gen.Frequency(
        (2, Gen.Select(Gen.Frequency((3, Gen.Int[1, motifRows]), (1, Gen.Const(motifRows + 1))), Gen.OneOf("", " ", "Beat gently", "The edge\nagain"), (row, text) => (Edit)new SetRowWords(row, text))),
        (1, DocumentGen.Videos(motifRows + 1).Select(videos => (Edit)new SetVideos(videos))),
        (1, DocumentGen.Photos(motifRows + 1).Select(photos => (Edit)new SetPhotos(photos))),
        (1, DocumentGen.AnyLimits.Select(limits => (Edit)new SetLimits(limits))),
        (1, Gen.Select(Gen.OneOf(SheetPart.MakingUp, SheetPart.Corrections, SheetPart.Notes), Gen.Bool, (part, printed) => (Edit)new SetSheetPart(part, printed))),
        (1, DocumentGen.Cloths(3).Select(cloth => (Edit)new SetCloth(cloth))));

    private static Gen<Edit> OfOther(PatternDocument other)
    {
        Edit[] edits =
        [
            new SetWords(Title: other.Title),
            new SetWords(Notes: other.Notes, Licence: other.Licence),
            new SetWords(Title: ""),
            new SetWords(Language: other.Language),
            new SetGauge(other.Gauge),
            new SetGauge(other.Gauge with { Sett = other.Gauge.Sett with { Amount = 0 } }),
            new SetGlyphs(other.Glyphs),
        ];
        return Gen.Int[0, edits.Length - 1].Select(at => edits[at]);
    }
}
