using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>Rows and ends that come and go, and what follows them.</summary>
public sealed class ThreadEditLaws
{
    private static readonly Gen<(PatternDocument Document, int At, int Count)> Rows = Places(document => document.Motif.Rows);
    private static readonly Gen<(PatternDocument Document, int At, int Count)> Ends = Places(document => document.Motif.Columns);

    [Fact]
    public void Rows_put_in_and_taken_out_again_leave_the_document_as_it_was() => Rows.Sample(
        c =>
        {
            var with = Made(new InsertRows(c.At, c.Count), c.Document).Document;
            Assert.Equal(c.Document.Motif.Rows + c.Count, with.Motif.Rows);
            Assert.Equal(c.Document, Made(new RemoveRows(c.At, c.Count), with).Document);
        },
        iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void Ends_put_in_and_taken_out_again_leave_the_document_as_it_was() => Ends.Sample(
        c =>
        {
            var with = Made(new InsertEnds(c.At, c.Count), c.Document).Document;
            Assert.Equal(c.Document, Made(new RemoveEnds(c.At, c.Count), with).Document);
        },
        iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void New_rows_are_under_and_the_others_are_woven_in_the_same_order() => Rows.Sample(
        c =>
        {
            var (document, at, count) = c;
            var done = Made(new InsertRows(at, count), document);
            var after = done.Document;
            for (var row = 1; row <= after.Motif.Rows; row++)
            {
                for (var end = 0; end < after.Motif.Columns; end++)
                {
                    Assert.Equal(Old(row, at, count) is { } old && document.Motif[old - 1, end], after.Motif[row - 1, end]);
                }
            }

            Assert.Equal(
                Oracle.Rows(document).Select(row => row.ChartRow),
                Oracle.Rows(after).Where(row => row.ChartRow is not { } number || Old(number, at, count) is not null).Select(row => row.ChartRow is { } number ? Old(number, at, count) : null));
            var woven = Oracle.Rows(after).Any(row => row.ChartRow >= at && row.ChartRow < at + count);
            Assert.Equal(!woven, done.Consequences.Contains(new RowsNotWoven(at, at + count - 1)));
            Assert.Equal(document.RowWords.Select(words => words.Text), after.RowWords.Select(words => words.Text));
            Assert.All(after.RowWords, words => Assert.Contains(document.RowWords, old => old.Row == Old(words.Row, at, count) && old.Text == words.Text));
        },
        iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void Rows_that_are_left_are_woven_in_the_same_order_and_what_changed_is_said() => Stretches(document => document.Motif.Rows).Sample(
        c =>
        {
            var (document, first, count) = c;
            var done = Made(new RemoveRows(first, count), document);
            int? New(int row) => row < first ? row : row < first + count ? null : row - count;
            var left = Oracle.Rows(document).Where(row => row.ChartRow is not { } number || New(number) is not null).Select(row => row.ChartRow is { } number ? New(number) : null).ToList();
            Assert.Equal(left.Count == 0, done.Consequences.OfType<PlanBegunAnew>().Any());
            if (left.Count > 0)
            {
                Assert.Equal(left, Oracle.Rows(done.Document).Select(row => row.ChartRow));
            }

            foreach (var (at, step) in document.Rows.Steps.Index().Where(step => step.Item is ChartRows rows && rows.Count < document.Motif.Rows))
            {
                var rows = (ChartRows)step;
                var touched = Math.Max(rows.First, rows.Last) >= first;
                Assert.Equal(touched, done.Consequences.Any(consequence => consequence is StepCut cut && cut.Step == at + 1 || consequence is StepRenumbered same && same.Step == at + 1));
            }

            Assert.All(done.Consequences, consequence => Assert.NotEqual("", Wording.English.ConsequenceText(consequence)));
        },
        iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void The_pattern_goes_on_beginning_at_the_same_end() => Stretches(document => document.Motif.Columns).Sample(
        c =>
        {
            var (document, first, count) = c;
            var (offset, after) = (document.Width.Offset, Made(new RemoveEnds(first, count), document).Document);
            Assert.Equal(document.Motif.Columns - count, after.Motif.Columns);
            for (var end = 1; end <= after.Motif.Columns; end++)
            {
                var old = end < first ? end : end + count;
                for (var row = 0; row < after.Motif.Rows; row++)
                {
                    Assert.Equal(document.Motif[row, old - 1], after.Motif[row, end - 1]);
                }

                Assert.True(old != offset + 1 || offset == 0 || after.Width.Offset == end - 1);
            }

            Assert.InRange(after.Width.Offset, 0, after.Motif.Columns - 1);
        },
        iter: Effort.Of(1_000, 50_000));

    [Fact]
    public void A_motif_that_grows_at_any_side_and_shrinks_there_again_is_the_same_document() => DocumentGen.Documents.SelectMany(
        _ => Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Bool, Gen.Bool),
        (document, more) => (Document: document, More: more)).Sample(
        c =>
        {
            var (moreRows, moreEnds, left, bottom) = c.More;
            var motif = c.Document.Motif;
            var (ends, rows) = (left ? Side.Left : Side.Right, bottom ? RowEdge.Bottom : RowEdge.Top);
            var grown = Made(new ResizeMotif(motif.Rows + moreRows, motif.Columns + moreEnds) { EndsAt = ends, RowsAt = rows }, c.Document).Document;
            var part = new CellRectangle(bottom ? moreRows : 0, left ? moreEnds : 0, motif.Rows, motif.Columns);
            Assert.Equal(motif, Transforms.Cut(grown.Motif, part));
            Assert.Equal(motif.Count, grown.Motif.Count);
            Assert.Equal(c.Document, Made(new ResizeMotif(motif.Rows, motif.Columns) { EndsAt = ends, RowsAt = rows }, grown).Document);
        },
        iter: Effort.Of(1_000, 50_000));

    // the number that a row had before others came in; null for one of those
    private static int? Old(int row, int at, int count) => row < at ? row : row < at + count ? null : row - count;

    private static Gen<(PatternDocument Document, int At, int Count)> Places(Func<PatternDocument, int> threads) =>
        from document in DocumentGen.Documents
        from at in Gen.Int[1, threads(document) + 1]
        from count in Gen.Int[1, 3]
        select (document, at, count);

    private static Gen<(PatternDocument Document, int First, int Count)> Stretches(Func<PatternDocument, int> threads) =>
        from document in DocumentGen.Documents.Where(document => threads(document) > 1)
        from first in Gen.Int[1, threads(document)]
        from count in Gen.Int[1, Math.Min(threads(document) - first + 1, threads(document) - 1)]
        select (document, first, count);

    private static EditResult.Done Made(Edit edit, PatternDocument document) => Assert.IsType<EditResult.Done>(edit.Apply(document));
}
