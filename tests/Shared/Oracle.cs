using PatternShop.Weave;

namespace PatternShop.Tests.Shared;

/// <summary>One row of the weaving order as the definitions give it.</summary>
/// <param name="Number">From 1.</param>
/// <param name="ChartRow">The motif's row from 1; null for a plain row.</param>
/// <param name="Weft">The weft, from 1.</param>
/// <param name="Step">The step of the row plan, from 0.</param>
/// <param name="Time">Time through the repeat, from 1; null outside.</param>
/// <param name="From">The side at which the weft enters.</param>
/// <param name="Over">Every end from the left, floating ones included; true where the weft is over.</param>
/// <param name="Runs">The runs in the direction of travel.</param>
public sealed record OracleRow(int Number, int? ChartRow, int Weft, int Step, int? Time, Side From, IReadOnlyList<bool> Over, IReadOnlyList<(bool Over, int Count)> Runs);

/// <summary>One edge stitch as the definitions give it.</summary>
public sealed record OracleStitch(int AfterRow, int Step, int? Time, EdgeStitch Stitch, Side From);

/// <summary>
/// The whole piece worked out a second time from the raw fields of a document and the rules of the design, without a
/// call into the engine: first a list of everything that is done, then one pass for each weft, then the cells.
/// </summary>
public static class Oracle
{
    private sealed class Deed
    {
        public int ChartRow;
        public int Weft;
        public int Step;
        public int? Time;
        public EdgeStitch? Stitch;
        public bool IsRow;
        public bool FromLeft;
        public bool LeftFloatingOver;
        public bool RightFloatingOver;
    }

    /// <summary>The rows in weaving order.</summary>
    public static IReadOnlyList<OracleRow> Rows(PatternDocument document)
    {
        var rows = Deeds(document).Where(deed => deed.IsRow).ToList();
        var firstPlain = rows.Find(row => row.ChartRow == 0);
        var plainEnd1Over = false;
        if (firstPlain is not null)
        {
            plainEnd1Over = document.Width.Floating is null ? document.Rows.FirstPlain == Stroke.Over : !firstPlain.LeftFloatingOver;
        }

        var result = new List<OracleRow>();
        foreach (var row in rows)
        {
            var cells = PatternCells(document, row.ChartRow, plainEnd1Over);
            if (row.ChartRow == 0)
            {
                plainEnd1Over = !plainEnd1Over;
            }

            if (document.Width.Floating is not null)
            {
                cells.Insert(0, row.LeftFloatingOver);
                cells.Add(row.RightFloatingOver);
            }

            var side = row.FromLeft ? Side.Left : Side.Right;
            result.Add(new OracleRow(result.Count + 1, row.ChartRow == 0 ? null : row.ChartRow, row.Weft, row.Step, row.Time, side, cells, RunsOf(cells, row.FromLeft)));
        }

        return result;
    }

    /// <summary>The edge stitches in the order in which they are worked.</summary>
    public static IReadOnlyList<OracleStitch> Stitches(PatternDocument document)
    {
        var result = new List<OracleStitch>();
        var rows = 0;
        foreach (var deed in Deeds(document))
        {
            if (deed.Stitch is null)
            {
                rows++;
                continue;
            }

            var side = deed.Stitch.Yarn == StitchYarn.Own ? deed.Stitch.From : deed.FromLeft ? Side.Left : Side.Right;
            result.Add(new OracleStitch(rows, deed.Step, deed.Time, deed.Stitch, side));
        }

        return result;
    }

    /// <summary>
    /// The side at which each weft lies, by its number from 1: the first for no row woven, the last for all of them. The stitches that stand
    /// before the next row are worked by then. A weft with which nothing was done so far is missing.
    /// </summary>
    public static IReadOnlyList<IReadOnlyDictionary<int, Side>> Sides(PatternDocument document)
    {
        var result = new List<IReadOnlyDictionary<int, Side>>();
        var lies = new Dictionary<int, Side>();
        foreach (var deed in Deeds(document))
        {
            if (deed.IsRow)
            {
                result.Add(new Dictionary<int, Side>(lies));
            }

            if (deed.Weft > 0)
            {
                var endsAsItBegan = deed.Stitch is { } stitch && stitch.Across % 2 == 0;
                lies[deed.Weft] = deed.FromLeft == endsAsItBegan ? Side.Left : Side.Right;
            }
        }

        result.Add(lies);
        return result;
    }

    private static List<Deed> Deeds(PatternDocument document)
    {
        var deeds = new List<Deed>();
        for (var at = 0; at < document.Rows.Steps.Count; at++)
        {
            var step = document.Rows.Steps[at];
            if (step is Repeat repeat)
            {
                for (var time = 1; time <= repeat.Times; time++)
                {
                    foreach (var inner in repeat.Steps)
                    {
                        deeds.AddRange(DeedsOf(inner, at, time));
                    }
                }
            }
            else
            {
                deeds.AddRange(DeedsOf(step, at, null));
            }
        }

        for (var weft = 1; weft <= document.Rows.Wefts.Count; weft++)
        {
            Travel(deeds.Where(deed => deed.Weft == weft).ToList(), document.Rows.Wefts[weft - 1].Start == Side.Left);
            FloatingEnds(deeds.Where(deed => deed.Weft == weft && deed.IsRow).ToList(), document.Width.Floating);
        }

        return deeds;
    }

    private static List<Deed> DeedsOf(RowStep step, int at, int? time)
    {
        var deeds = new List<Deed>();
        if (step is PlainRows plain)
        {
            for (var i = 0; i < plain.Count; i++)
            {
                deeds.Add(new Deed { IsRow = true, Weft = plain.Weft, Step = at, Time = time });
            }
        }
        else if (step is ChartRows chart)
        {
            for (var row = chart.First; ; row += chart.First <= chart.Last ? 1 : -1)
            {
                deeds.Add(new Deed { IsRow = true, ChartRow = row, Weft = chart.Weft, Step = at, Time = time });
                if (row == chart.Last)
                {
                    break;
                }
            }
        }
        else if (step is EdgeStitch stitch)
        {
            deeds.Add(new Deed { Stitch = stitch, Weft = stitch.Yarn == StitchYarn.Working ? stitch.Weft : 0, Step = at, Time = time });
        }

        return deeds;
    }

    // The first row starts at the chosen side; from there forwards and backwards through everything done with this weft:
    // a row crosses once, a stitch as often as it says.
    private static void Travel(List<Deed> ofWeft, bool startsLeft)
    {
        var anchor = ofWeft.FindIndex(deed => deed.IsRow);
        anchor = anchor < 0 ? 0 : anchor;
        for (var at = 0; at < ofWeft.Count; at++)
        {
            var crossings = 0;
            for (var between = Math.Min(at, anchor); between < Math.Max(at, anchor); between++)
            {
                crossings += ofWeft[between].Stitch?.Across ?? 1;
            }

            ofWeft[at].FromLeft = crossings % 2 == 0 ? startsLeft : !startsLeft;
        }
    }

    private static void FloatingEnds(List<Deed> rowsOfWeft, FloatingSelvedges? floating)
    {
        if (floating is null)
        {
            return;
        }

        var firstOver = floating.First == Stroke.Over;
        for (var n = 0; n < rowsOfWeft.Count; n++)
        {
            var row = rowsOfWeft[n];
            var entered = floating.Edges == EdgeWay.Entering || n % 2 == 0 ? firstOver : !firstOver;
            var left = floating.Edges == EdgeWay.Entering ? !entered : entered;
            row.LeftFloatingOver = row.FromLeft ? entered : left;
            row.RightFloatingOver = row.FromLeft ? left : entered;
        }
    }

    private static List<bool> PatternCells(PatternDocument document, int chartRow, bool plainEnd1Over)
    {
        var cells = new List<bool>();
        var n = document.Motif.Columns;
        for (var j = 0; j < (n * document.Width.Repeats) + document.Width.Balance; j++)
        {
            cells.Add(chartRow == 0 ? plainEnd1Over == (j % 2 == 0) : document.Motif[chartRow - 1, (j + document.Width.Offset) % n]);
        }

        return cells;
    }

    private static List<(bool Over, int Count)> RunsOf(List<bool> cells, bool fromLeft)
    {
        var runs = new List<(bool Over, int Count)>();
        for (var met = 0; met < cells.Count; met++)
        {
            var over = cells[fromLeft ? met : cells.Count - 1 - met];
            if (runs.Count > 0 && runs[^1].Over == over)
            {
                runs[^1] = (over, runs[^1].Count + 1);
            }
            else
            {
                runs.Add((over, 1));
            }
        }

        return runs;
    }
}
