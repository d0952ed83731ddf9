using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class ScheduleLaws
{
    [Fact]
    public void Lines_unroll_to_every_row_and_stitch_exactly_once_in_order() =>
        Law.OfDocuments(document => Assert.Equal(Done(document), Unrolled(Schedule.Of(Piece.Of(document)))));

    [Fact]
    public void A_missing_or_doubled_line_would_be_seen()
    {
        Law.CanFail(document => Assert.Equal(Done(document), Unrolled(Schedule.Of(Piece.Of(document)).Skip(1))));
        Law.CanFail(document => Assert.Equal(Done(document), Unrolled(Schedule.Of(Piece.Of(document)).SelectMany(line => new[] { line, line }))));
    }

    [Fact]
    public void Stitches_of_one_kind_at_one_place_and_side_share_a_line()
    {
        var twining = new EdgeStitch("twining", StitchYarn.Own, 1, Side.Left, 1);
        var lines = Schedule.Of(Piece.Of(Charts.Document("xx.", steps: [new Repeat(3, [twining]), new ChartRows(1, 1, 1), twining])));
        Assert.Equal([typeof(StitchOnce), typeof(RowsOnce), typeof(StitchOnce)], lines.Select(line => line.GetType()));
        Assert.Equal([3, 1], lines.OfType<StitchOnce>().Select(line => line.Times));
    }

    private static List<string> Done(PatternDocument document)
    {
        var stitches = Oracle.Stitches(document);
        var done = stitches.Where(stitch => stitch.AfterRow == 0).Select(Text).ToList();
        foreach (var row in Oracle.Rows(document))
        {
            done.Add($"row {row.Number}");
            done.AddRange(stitches.Where(stitch => stitch.AfterRow == row.Number).Select(Text));
        }

        return done;
    }

    private static List<string> Unrolled(IEnumerable<ScheduleLine> lines)
    {
        var done = new List<string>();
        foreach (var line in lines)
        {
            switch (line)
            {
                case RowsOnce rows:
                    done.AddRange(Enumerable.Range(rows.First, rows.Last - rows.First + 1).Select(number => $"row {number}"));
                    break;
                case StitchOnce stitch:
                    done.AddRange(Enumerable.Repeat(Text(stitch.Stitch, 0), stitch.Times));
                    break;
                case RowsAgain again:
                    done.AddRange(Enumerable.Range(1, again.Band.Times).SelectMany(time => OneTime(again, time)));
                    break;
                default:
                    Assert.Fail(line.ToString());
                    break;
            }
        }

        return done;
    }

    private static IEnumerable<string> OneTime(RowsAgain again, int time)
    {
        var band = again.Band;
        var printed = band.PrintedTimes == 2 && time % 2 == 0 ? 2 : 1;
        var shift = (time - printed) * band.RowsEachTime;
        var stitches = again.Stitches.Where(stitch => stitch.Time == printed).ToList();
        for (var number = band.FirstRowOf(time) - 1; number < band.FirstRowOf(time + 1); number++)
        {
            if (number >= band.FirstRowOf(time))
            {
                yield return $"row {number}";
            }

            foreach (var stitch in stitches.Where(stitch => stitch.AfterRow + shift == number))
            {
                yield return Text(stitch, shift);
            }
        }
    }

    private static string Text(OracleStitch stitch) => $"{stitch.Stitch} after {stitch.AfterRow} from {stitch.From}";

    private static string Text(WovenStitch stitch, int shift) => $"{stitch.Stitch} after {stitch.AfterRow + shift} from {stitch.From}";
}
