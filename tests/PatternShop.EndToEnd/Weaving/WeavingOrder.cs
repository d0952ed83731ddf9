using System.Text.Json;

namespace PatternShop.EndToEnd;

/// <summary>
/// The rows of a piece in weaving order, worked out from what its maker decided (the "input" of a facts file) and the
/// definitions alone: every weft is followed by itself, then the rows are put side by side.
/// </summary>
internal sealed class WeavingOrder
{
    private readonly JsonElement _input;
    private readonly string[] _chart;
    private readonly List<Step> _steps = [];

    private WeavingOrder(JsonElement input)
    {
        _input = input;
        _chart = [.. input.GetProperty("chart").EnumerateArray().Select(row => row.GetString()!)];
        foreach (var step in input.GetProperty("rowPlan").EnumerateArray())
        {
            AddStep(step);
        }
    }

    private enum Kind
    {
        Chart,
        Plain,
        Stitch,
    }

    public static IReadOnlyList<WovenRow> Of(JsonElement input) => new WeavingOrder(input).Rows();

    private bool HasFloating => _input.GetProperty("floating").GetInt32() == 1;

    private void AddStep(JsonElement step)
    {
        int Number(string name) => step.GetProperty(name).GetInt32();
        switch (step.GetProperty("step").GetString())
        {
            case "repeat":
                for (var time = 0; time < Number("times"); time++)
                {
                    step.GetProperty("steps").EnumerateArray().ToList().ForEach(AddStep);
                }

                break;
            case "chart":
                var down = Number("first") > Number("last");
                _steps.AddRange(Enumerable.Range(0, Math.Abs(Number("last") - Number("first")) + 1)
                    .Select(i => new Step(Kind.Chart, Number("weft")) { ChartRow = Number("first") + (down ? -i : i) }));
                break;
            case "plain":
                _steps.AddRange(Enumerable.Range(0, Number("count")).Select(_ => new Step(Kind.Plain, Number("weft"))));
                break;
            default:
                var working = step.GetProperty("yarn").GetString() == "working";
                _steps.Add(new Step(Kind.Stitch, working ? Number("weft") : 0) { Crossings = Number("across") });
                break;
        }
    }

    private List<WovenRow> Rows()
    {
        foreach (var weft in _steps.Where(step => step.Weft > 0).GroupBy(step => step.Weft))
        {
            Follow([.. weft], _input.GetProperty("starts")[weft.Key - 1].GetString() == "left");
        }

        var rows = _steps.Where(step => step.Kind != Kind.Stitch).ToList();
        FillPlainRows([.. rows.Where(row => row.Kind == Kind.Plain)]);
        return [.. rows.Select((row, index) => new WovenRow(index + 1, row.FromLeft, RunsOf(row)))];
    }

    // Travel alternates with every crossing; the first row, wherever it comes, starts at the chosen side.
    private void Follow(List<Step> steps, bool startsLeft)
    {
        var crossed = 0;
        foreach (var step in steps)
        {
            step.FromLeft = crossed % 2 == 0;
            crossed += step.Crossings;
        }

        var rows = steps.Where(step => step.Kind != Kind.Stitch).ToList();
        var turned = rows.Count > 0 && rows[0].FromLeft != startsLeft;
        for (var number = 0; number < rows.Count; number++)
        {
            rows[number].FromLeft ^= turned;
            Edge(rows[number], number);
        }
    }

    private void Edge(Step row, int numberOfWeft)
    {
        if (!HasFloating)
        {
            return;
        }

        var first = _input.GetProperty("firstEdge").GetString() == "over";
        var alike = _input.GetProperty("edges").GetString() == "alike";
        var (met, left) = alike ? (first ^ (numberOfWeft % 2 == 1), first ^ (numberOfWeft % 2 == 1)) : (first, !first);
        (row.LeftOver, row.RightOver) = row.FromLeft ? (met, left) : (left, met);
    }

    private void FillPlainRows(List<Step> rows)
    {
        for (var number = 0; number < rows.Count; number++)
        {
            var first = HasFloating ? !rows[0].LeftOver : _input.GetProperty("firstPlain").GetString() == "over";
            rows[number].FirstEndOver = first ^ (number % 2 == 1);
        }
    }

    private IReadOnlyList<Run> RunsOf(Step row)
    {
        int Number(string name) => _input.GetProperty(name).GetInt32();
        var ends = (_chart[0].Length * Number("repeats")) + Number("balance");
        var cells = Enumerable.Range(0, ends).Select(end => row.Kind == Kind.Plain
            ? row.FirstEndOver ^ (end % 2 == 1)
            : _chart[row.ChartRow - 1][(end + Number("offset")) % _chart[0].Length] == 'x');
        var whole = HasFloating ? cells.Prepend(row.LeftOver).Append(row.RightOver) : cells;
        return WovenRow.Join((row.FromLeft ? whole : whole.Reverse()).Select(over => new Run(over, 1)));
    }

    private sealed class Step(Kind kind, int weft)
    {
        public Kind Kind => kind;

        public int Weft => weft;

        public int ChartRow { get; init; }

        public int Crossings { get; init; } = 1;

        public bool FromLeft { get; set; }

        public bool LeftOver { get; set; }

        public bool RightOver { get; set; }

        public bool FirstEndOver { get; set; }
    }
}
