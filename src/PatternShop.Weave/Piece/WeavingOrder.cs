namespace PatternShop.Weave;

/// <summary>The weaving order of a piece as it unrolls from the row plan: rows, edge stitches and the readings that rows need.</summary>
internal sealed class WeavingOrder
{
    private readonly RowPlan _plan;
    private readonly FloatingSelvedges? _floating;
    private readonly Side[] _side;
    private readonly int[] _rowsOfWeft;
    private readonly List<WovenRow> _rows = [];
    private readonly List<WovenStitch> _stitches = [];
    private readonly Dictionary<ReadingKey, int> _index = [];
    private readonly List<ReadingKey> _keys = [];
    private Stroke? _nextPlain;

    private WeavingOrder(PatternDocument document)
    {
        _plan = document.Rows;
        _floating = document.Width.Floating;
        _rowsOfWeft = new int[_plan.Wefts.Count];
        _side = [.. _plan.Wefts.Select((weft, i) => SideBeforeFirstRow(weft.Start, i + 1))];
    }

    public List<WovenRow> Rows => _rows;

    public List<WovenStitch> Stitches => _stitches;

    public List<ReadingKey> Keys => _keys;

    public static WeavingOrder Unroll(PatternDocument document)
    {
        var order = new WeavingOrder(document);
        for (var at = 0; at < document.Rows.Steps.Count; at++)
        {
            if (document.Rows.Steps[at] is Repeat repeat)
            {
                for (var time = 1; time <= repeat.Times; time++)
                {
                    foreach (var inner in repeat.Steps)
                    {
                        order.Weave(inner, at, time);
                    }
                }
            }
            else
            {
                order.Weave((SimpleStep)document.Rows.Steps[at], at, null);
            }
        }

        return order;
    }

    // The first row of a weft starts where the maker says; stitches that are worked with it before that row begin where that leads there.
    private Side SideBeforeFirstRow(Side start, int weft)
    {
        var crossings = 0;
        foreach (var (step, times) in _plan.Steps.SelectMany(WithTimes))
        {
            if (step is EdgeStitch { Yarn: StitchYarn.Working } stitch && stitch.Weft == weft)
            {
                crossings += stitch.Across * times;
            }
            else if ((step is ChartRows chart && chart.Weft == weft) || (step is PlainRows plain && plain.Weft == weft))
            {
                return crossings % 2 == 0 ? start : start.Other();
            }
        }

        return start;
    }

    // A repeat of stitches only is worked through all its times before anything later; one with a row of the weft reaches that row the first time.
    private static IEnumerable<(SimpleStep Step, int Times)> WithTimes(RowStep step)
    {
        if (step is not Repeat repeat)
        {
            return [((SimpleStep)step, 1)];
        }

        var once = repeat.Steps.Select(inner => (inner, 1));
        return Enumerable.Repeat(once, Math.Min(repeat.Times, 2 + (repeat.Times % 2))).SelectMany(all => all);
    }

    private void Weave(SimpleStep step, int at, int? time)
    {
        switch (step)
        {
            case ChartRows chart:
                var stride = chart.First <= chart.Last ? 1 : -1;
                for (var i = 0; i < chart.Count; i++)
                {
                    AddRow(new RowSource(RowKind.Chart, chart.First - 1 + (i * stride)), chart.Weft, at, time);
                }

                break;
            case PlainRows plain:
                for (var i = 0; i < plain.Count; i++)
                {
                    AddRow(null, plain.Weft, at, time);
                }

                break;
            case EdgeStitch stitch:
                AddStitch(stitch, at, time);
                break;
            default:
                throw new InvalidOperationException($"No rule for {step.GetType().Name}.");
        }
    }

    private void AddRow(RowSource? chart, int weft, int step, int? time)
    {
        var from = _side[weft - 1];
        var (left, right) = FloatingAt(from, _rowsOfWeft[weft - 1]);
        var key = new ReadingKey(chart ?? NextPlain(left), from, left, right);
        if (!_index.TryGetValue(key, out var reading))
        {
            reading = _keys.Count;
            _index.Add(key, reading);
            _keys.Add(key);
        }

        _rows.Add(new WovenRow(_rows.Count + 1, key.Source, weft, step, time, reading, from));
        _side[weft - 1] = from.Other();
        _rowsOfWeft[weft - 1]++;
    }

    private void AddStitch(EdgeStitch stitch, int step, int? time)
    {
        var from = stitch.Yarn == StitchYarn.Own ? stitch.From : _side[stitch.Weft - 1];
        var woven = new WovenStitch(_rows.Count, step, time, stitch, from);
        _stitches.Add(woven);
        if (stitch.Yarn == StitchYarn.Working)
        {
            _side[stitch.Weft - 1] = woven.To;
        }
    }

    private (Stroke? Left, Stroke? Right) FloatingAt(Side from, int rowOfWeft)
    {
        if (_floating is not { } floating)
        {
            return (null, null);
        }

        if (floating.Edges == EdgeWay.Alike)
        {
            var both = rowOfWeft % 2 == 0 ? floating.First : floating.First.Other();
            return (both, both);
        }

        return from == Side.Left ? (floating.First, floating.First.Other()) : (floating.First.Other(), floating.First);
    }

    // Plain rows alternate among themselves whatever lies between; the first is opposite to the left floating end of its row.
    private RowSource NextPlain(Stroke? leftFloating)
    {
        var firstEnd = _nextPlain ?? leftFloating?.Other() ?? _plan.FirstPlain;
        _nextPlain = firstEnd.Other();
        return new RowSource(RowKind.Plain, firstEnd == Stroke.Over ? 1 : 0);
    }
}
