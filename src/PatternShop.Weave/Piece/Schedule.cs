namespace PatternShop.Weave;

/// <summary>One line of the row-repeat schedule: what is woven next.</summary>
public abstract record ScheduleLine;

/// <summary>Rows that are woven once, from First to Last, both counted.</summary>
public sealed record RowsOnce(int First, int Last, BandKind Kind) : ScheduleLine;

/// <summary>Rows that are woven again and again, with the edge stitches that are worked among them.</summary>
/// <param name="Band">The rows.</param>
/// <param name="Stitches">The stitches of the printed times through.</param>
public sealed record RowsAgain(Band Band, Sequence<WovenStitch> Stitches) : ScheduleLine;

/// <summary>An edge stitch between rows, worked Times times in a row.</summary>
public sealed record StitchOnce(WovenStitch Stitch, int Times) : ScheduleLine;

/// <summary>The order of work of a piece in few lines.</summary>
public static class Schedule
{
    /// <summary>The lines in weaving order; every row and every edge stitch is in exactly one of them.</summary>
    public static Sequence<ScheduleLine> Of(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var lines = new List<ScheduleLine>();
        var stitch = 0;
        foreach (var band in piece.Bands)
        {
            if (band.Kind == BandKind.Repeated)
            {
                var step = piece.Rows[band.FirstRow - 1].Step;
                AddStitches(piece, lines, ref stitch, s => s.AfterRow < band.FirstRow && s.Step < step);
                var first = stitch;
                while (stitch < piece.Stitches.Count && piece.Stitches[stitch].Step == step)
                {
                    stitch++;
                }

                lines.Add(new RowsAgain(band, piece.Stitches.Skip(first).Take(stitch - first).Where(s => s.Time <= band.PrintedTimes).ToSequence()));
            }
            else
            {
                AddOnce(piece, lines, band, ref stitch);
            }
        }

        AddStitches(piece, lines, ref stitch, _ => true);
        return lines.ToSequence();
    }

    private static void AddOnce(Piece piece, List<ScheduleLine> lines, Band band, ref int stitch)
    {
        for (var first = band.FirstRow; first <= band.LastRow;)
        {
            var at = first;
            AddStitches(piece, lines, ref stitch, s => s.AfterRow < at);
            var last = stitch < piece.Stitches.Count ? Math.Min(band.LastRow, piece.Stitches[stitch].AfterRow) : band.LastRow;
            lines.Add(new RowsOnce(first, last, band.Kind));
            first = last + 1;
        }
    }

    private static void AddStitches(Piece piece, List<ScheduleLine> lines, ref int stitch, Func<WovenStitch, bool> belongs)
    {
        while (stitch < piece.Stitches.Count && belongs(piece.Stitches[stitch]))
        {
            var next = piece.Stitches[stitch++];
            if (lines.LastOrDefault() is StitchOnce last && Same(last, next))
            {
                lines[^1] = last with { Times = last.Times + 1 };
            }
            else
            {
                lines.Add(new StitchOnce(next, 1));
            }
        }
    }

    private static bool Same(StitchOnce line, WovenStitch next) =>
        line.Stitch.AfterRow == next.AfterRow && line.Stitch.Stitch == next.Stitch && line.Stitch.From == next.From;
}
