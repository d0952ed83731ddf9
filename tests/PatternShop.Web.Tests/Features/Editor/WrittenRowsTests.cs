using CsCheck;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class WrittenRowsTests
{
    private static readonly Wording Words = Wording.English;

    [Fact]
    public void Whatever_was_changed_rows_say_what_they_would_say_afresh() =>
        Gen.Select(EditGen.Many(1, 6), Gen.Enum<WrittenForm>().Array[7]).Sample(
            (made, forms) =>
            {
                var rows = new WrittenRows(Words);
                AssertWritten(rows, made.Document, forms[0]);
                var document = made.Document;
                foreach (var (edit, form) in made.Edits.Zip(forms.Skip(1)))
                {
                    if (edit.Apply(document) is EditResult.Done done)
                    {
                        document = done.Document;
                    }

                    AssertWritten(rows, document, form);
                }
            },
            iter: Effort.Of(60, 20_000));

    [Fact]
    public void What_a_stroke_did_not_change_keeps_its_text()
    {
        var document = Charts.Document(Charts.TenEndDiamond, repeats: 2, balance: 1, floating: Charts.AlikeOver);
        var rows = new WrittenRows(Words);
        var before = Take(rows, document, WrittenForm.Words);
        var after = Take(rows, document with { Motif = document.Motif.With(3, 2, !document.Motif[3, 2]) }, WrittenForm.Words);
        Assert.Equal([4], before.Zip(after).Where(pair => !ReferenceEquals(pair.First.Text, pair.Second.Text)).Select(pair => pair.First.Number));
    }

    [Fact]
    public void Where_there_is_much_to_read_parts_are_shorter()
    {
        var random = new Random(7);
        var motif = BitGrid.Create(200, 200, (_, _) => random.Next(2) == 0);
        var rows = new WrittenRows(Words);
        var piece = Piece.Of(Charts.Document(Charts.TenEndDiamond) with { Motif = motif, Rows = Charts.Document("x.", steps: [new ChartRows(1, 200, 1)]).Rows });
        rows.Take(piece, WrittenForm.Words);
        Assert.InRange(rows.RowsOf(1), 1, 100);
        var items = piece.PrintedRows().Select(number => piece.Reading(number).Writing.Length).ToList();
        Assert.InRange(items.Take(rows.RowsOf(1)).Sum(), 1, 2500);
        Assert.True(items.Take(rows.RowsOf(1) + 1).Sum() > 2500);
        Assert.True(rows.RowsOf(2) > rows.RowsOf(1));
    }

    private static void AssertWritten(WrittenRows rows, PatternDocument document, WrittenForm form)
    {
        var piece = Piece.Of(document);
        Assert.Equal(
            piece.PrintedRows().Select(piece.Reading).Select(reading => form switch
            {
                WrittenForm.Motif => (Words.MotifText(ByMotif.Of(piece, reading)), false),
                WrittenForm.Short => (Words.ShortText(reading.Writing), false),
                _ when reading.Writing.Depth == 0 => (Words.WritingText(reading.Writing), false),
                _ => ($"<span aria-hidden=\"true\">{Words.WritingText(reading.Writing)}</span><span>{Words.SpokenText(reading.Writing)}</span>", true),
            }),
            Take(rows, document, form).Select(row => (form == WrittenForm.Words ? row.Text.Replace('\u00A0', ' ') : row.Text, row.IsMarkup)));
    }

    // the piece is of the document, but it is not the one that is asked what it says
    private static List<WrittenRow> Take(WrittenRows rows, PatternDocument document, WrittenForm form)
    {
        var piece = Piece.Of(document);
        rows.Take(piece, form);
        Assert.True(rows.RowsOf(1) <= rows.Printed);
        List<WrittenRow> written = [.. rows.First(rows.Printed)];
        Assert.Equal(piece.PrintedRows(), written.Select(row => row.Number));
        Assert.False(piece.KeepsReadings);
        return written;
    }
}
