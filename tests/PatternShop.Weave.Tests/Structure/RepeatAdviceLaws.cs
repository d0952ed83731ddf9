using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class RepeatAdviceLaws
{
    [Fact]
    public void What_is_proposed_keeps_its_word_and_is_proposed_once()
    {
        var (mirrors, closing, shorter) = (0, 0, 0);
        Law.OfFixedDocuments(
            document =>
            {
                var piece = Piece.Of(document);
                var advice = RepeatAdvice.Of(piece);
                foreach (var option in advice.Mirrors.Where(option => !option.IsPresent))
                {
                    var after = After(document, option.Edit);
                    Assert.True(Mirroring.IsMirrored(after.Motif, after.Width));
                    Assert.NotEqual(document, after);
                    Interlocked.Increment(ref mirrors);
                }

                if (advice.Closing is { } close)
                {
                    var after = Piece.Of(After(document, close));
                    Assert.True(Mirrors(after, close.Number));
                    Assert.Null(RepeatAdvice.Of(after).Closing);
                    Interlocked.Increment(ref closing);
                }

                if (advice.Shorter is { } fold)
                {
                    var after = After(document, fold);
                    Assert.Equal(RowFolding.Unroll(document.Rows.Steps), RowFolding.Unroll(after.Rows.Steps));
                    Assert.True(RowFolding.Items(after.Rows.Steps) < RowFolding.Items(document.Rows.Steps));
                    Assert.Null(RepeatAdvice.Of(Piece.Of(after)).Shorter);
                    Interlocked.Increment(ref shorter);
                }
            },
            400,
            10_000);
        Assert.True(mirrors > 20 && closing > 5 && shorter > 20, $"{mirrors} mirrors, {closing} closings, {shorter} shorter plans");
    }

    [Theory]
    [InlineData("", "(chart rows 1–10) 3 times, chart row 1")]
    [InlineData("1-4", "(chart rows 1–10) 3 times, chart row 1")] // replaced: they go on as the repeated rows would
    [InlineData("plain", "(chart rows 1–10) 3 times, chart row 1, 4 plain rows")] // kept: they are the maker's own
    [InlineData("1-1", null)]
    [InlineData("1-1 plain", null)]
    public void The_diamond_closes_with_one_row_whatever_stands_behind_it(string behind, string? expected)
    {
        // common practice, no source: rows 1-10 as often as wished, then row 1
        RowStep[] after = behind switch
        {
            "" => [],
            "plain" => [new PlainRows(4, 1)],
            "1-1 plain" => [new ChartRows(1, 1, 1), new PlainRows(4, 1)],
            _ => [new ChartRows(1, behind[2] - '0', 1)],
        };
        var piece = Piece.Of(Charts.Document(Charts.TenEndDiamond, repeats: 3, steps: [new Repeat(3, [new ChartRows(1, 10, 1)]), .. after]));
        var closing = RepeatAdvice.Of(piece).Closing;
        Assert.Equal(expected, closing is null ? null : Wording.English.StepsText(closing.Rows.Steps));
    }

    [Fact]
    public void Beginnings_that_look_the_same_are_one_proposal()
    {
        // the motif holds the diamond twice: offsets 0, 5, 10 and 15 mirror with one balance end and give two pictures
        var twice = string.Join('/', Charts.TenEndDiamond.Split('/').Select(row => row + row));
        var advice = RepeatAdvice.Of(Piece.Of(Charts.Document(twice, repeats: 2, offset: 15, balance: 1)));
        Assert.Equal([(0, false), (15, true)], advice.Mirrors.Select(option => (option.Choice.Way.Offset, option.IsPresent)));
        Assert.Equal(2, advice.Alike);
        Assert.Empty(RepeatAdvice.Of(Piece.Of(Charts.Document("..../...."))).Mirrors);
    }

    private static PatternDocument After(PatternDocument document, Edit edit) => Assert.IsType<EditResult.Done>(edit.Apply(document)).Document;

    // The repeated rows and so many after them, read upwards and downwards at every pattern end.
    private static bool Mirrors(Piece piece, int closing)
    {
        var band = piece.Bands.Single(band => band.Kind == BandKind.Repeated);
        var rows = Enumerable.Range(band.FirstRow - 1, band.Rows + closing)
            .Select(row => string.Concat(Enumerable.Range(piece.FloatingPerSide, piece.PatternEnds).Select(end => piece.Cells[piece.Rows[row].Reading, end] ? 'x' : '.')))
            .ToList();
        return rows.SequenceEqual(Enumerable.Reverse(rows));
    }
}
