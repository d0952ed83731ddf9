using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>What holds of every edit.</summary>
public sealed class EditLaws
{
    private static readonly Gen<(PatternDocument Document, Edit Edit)> Cases =
        DocumentGen.Documents.SelectMany(EditGen.Of, (document, edit) => (document, edit));

    [Fact]
    public void An_edit_leaves_a_document_that_keeps_every_rule_or_says_why_not()
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        Cases.SampleFixed(
            (document, edit) =>
            {
                var result = edit.Apply(document);
                met.AddOrUpdate($"{edit.GetType().Name} {result.GetType().Name}", 1, (_, count) => count + 1);
                if (result is EditResult.Done done)
                {
                    Assert.Empty(DocumentRules.Check(done.Document));
                    _ = Piece.Of(done.Document);
                }
                else
                {
                    Assert.NotEmpty(((EditResult.Refused)result).Problems);
                }
            },
            Effort.Of(20_000, 100_000));
        string[] kinds =
        [
            "SetCells Done", "SetCells Refused", "ResizeMotif Done", "ResizeMotif Refused", "SetRowPlan Done", "SetRowPlan Refused",
            "SetWords Done", "SetWords Refused", "SetWidth Done", "SetFloating Done", "SetGauge Done", "SetGauge Refused", "SetGlyphs Done",
            "SetRowWords Done", "SetRowWords Refused", "SetVideos Done", "SetVideos Refused", "SetPhotos Done", "SetPhotos Refused", "SetLimits Done",
            "SetSheetPart Done", "SetCloth Done", "SetCloth Refused",
            "InsertRows Done", "InsertRows Refused", "RemoveRows Done", "RemoveRows Refused", "InsertEnds Done", "InsertEnds Refused", "RemoveEnds Done", "RemoveEnds Refused",
            "TransformCells Done", "TransformCells Refused", "ShiftCells Done", "ShiftCells Refused", "MoveCells Done", "MoveCells Refused", "ReplaceMotif Done",
        ];
        Assert.All(kinds, kind => Assert.True(met.GetValueOrDefault(kind) > 0, kind));
    }

    [Fact]
    public void Every_edit_has_a_name() => Cases.Sample(
        (_, edit) => Assert.Matches("^(draw|cover|put down|change|make|put in|take out|write|weave|mirror|half turn|quarter turn|swap|other side|shift|move|begin|use|start|print|leave out) .+", Wording.English.EditName(edit)),
        iter: Effort.Of(500, 5_000));

    [Fact]
    public void Strokes_set_their_cells_and_no_other() => Strokes((document, stroke) =>
    {
        var after = Assert.IsType<EditResult.Done>(stroke.Apply(document)).Document;
        Assert.Equal(document with { Motif = after.Motif }, after);
        for (var row = 0; row < document.Motif.Rows; row++)
        {
            for (var end = 0; end < document.Motif.Columns; end++)
            {
                Assert.Equal(stroke.Cells[row, end] ? stroke.Over[row, end] : document.Motif[row, end], after.Motif[row, end]);
            }
        }
    });

    [Fact]
    public void A_stroke_made_twice_is_the_stroke_made_once() => Strokes((document, stroke) =>
    {
        var once = ((EditResult.Done)stroke.Apply(document)).Document;
        Assert.Equal(once, ((EditResult.Done)stroke.Apply(once)).Document);
    });

    [Fact]
    public void A_motif_that_grows_and_shrinks_again_is_the_same_document() => DocumentGen.Documents.SelectMany(
        _ => Gen.Select(Gen.Int[0, 5], Gen.Int[0, 5]),
        (document, more) => (Document: document, More: more)).Sample(
        c =>
        {
            var (rows, ends) = (c.Document.Motif.Rows, c.Document.Motif.Columns);
            var grown = Assert.IsType<EditResult.Done>(new ResizeMotif(rows + c.More.Item1, ends + c.More.Item2).Apply(c.Document));
            var back = Assert.IsType<EditResult.Done>(new ResizeMotif(rows, ends).Apply(grown.Document));
            Assert.All(grown.Consequences, consequence => Assert.IsType<RowsNotWoven>(consequence));
            Assert.Empty(back.Consequences);
            Assert.Equal(c.Document, back.Document);
        },
        iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void A_smaller_motif_keeps_its_cells_and_weaves_what_is_left_in_the_same_order() => DocumentGen.Documents.SelectMany(
        document => Gen.Select(Gen.Int[1, document.Motif.Rows], Gen.Int[1, document.Motif.Columns]),
        (document, size) => (Document: document, Size: size)).Sample(
        c =>
        {
            var (rows, ends) = c.Size;
            var done = Assert.IsType<EditResult.Done>(new ResizeMotif(rows, ends).Apply(c.Document));
            AssertKept(c.Document.Motif, done.Document.Motif, rows, ends);
            var left = Oracle.Rows(c.Document).Select(row => row.ChartRow).Where(row => row is null || row <= rows).ToList();
            var anew = done.Consequences.OfType<PlanBegunAnew>().Any();
            Assert.Equal(left.Count == 0, anew);
            Assert.Equal(anew ? Enumerable.Range(1, rows).Select(row => (int?)row) : left, Oracle.Rows(done.Document).Select(row => row.ChartRow));
        },
        iter: Effort.Of(1_000, 50_000));

    /// <summary>Nothing that the maker wrote goes without being said.</summary>
    [Fact]
    public void What_was_bound_to_a_row_that_goes_is_said_and_the_rest_stays() => DocumentGen.Documents.SelectMany(
        document => Gen.Int[1, document.Motif.Rows],
        (document, rows) => (Document: document, Rows: rows)).Sample(
        c =>
        {
            var (before, rows) = c;
            var done = Assert.IsType<EditResult.Done>(new ResizeMotif(rows, before.Motif.Columns).Apply(before));
            var cut = done.Consequences.OfType<RowWordsCut>().Select(cut => cut.Words);
            Assert.Equal(before.RowWords, done.Document.RowWords.Concat(cut).OrderBy(words => words.Row));
            Assert.All(cut, words => Assert.True(words.Row > rows));
            Assert.Equal(before.Videos.Select(video => video.Row > rows ? video with { Row = null } : video), done.Document.Videos);
            Assert.Equal(before.Photos.Select(photo => photo.Row > rows ? photo with { Row = null } : photo), done.Document.Photos);
            Assert.Equal(before.Videos.Where(video => video.Row > rows), done.Consequences.OfType<VideoMoved>().Select(moved => moved.Video));
            Assert.Equal(before.Photos.Where(photo => photo.Row > rows), done.Consequences.OfType<PhotoMoved>().Select(moved => moved.Photo));
            Assert.All(done.Consequences, consequence => Assert.NotEqual("", Wording.English.ConsequenceText(consequence)));
        },
        iter: Effort.Of(1_000, 50_000));

    private static void AssertKept(BitGrid before, BitGrid after, int rows, int ends)
    {
        Assert.Equal((rows, ends), (after.Rows, after.Columns));
        for (var row = 0; row < rows; row++)
        {
            for (var end = 0; end < ends; end++)
            {
                Assert.Equal(before[row, end], after[row, end]);
            }
        }
    }

    private static void Strokes(Action<PatternDocument, SetCells> law) => DocumentGen.Documents
        .SelectMany(document => EditGen.Strokes(document.Motif.Rows, document.Motif.Columns), (document, stroke) => (document, stroke))
        .Sample(law, iter: Effort.Of(500, 20_000));
}
