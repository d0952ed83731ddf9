namespace PatternShop.Weave;

/// <summary>What must hold of a row plan.</summary>
internal sealed class RowPlanRules
{
    // enough to go past every bound, small enough that products of two stay exact
    private const long Plenty = 1_000_000;

    private readonly RuleProblems _problems;
    private readonly KnownSizes _sizes;
    private long _rows;
    private long _stitches;
    private int _steps;

    private RowPlanRules(RuleProblems problems, KnownSizes sizes)
    {
        _problems = problems;
        _sizes = sizes;
    }

    public static void Check(RuleProblems problems, RowPlan plan, KnownSizes sizes) => new RowPlanRules(problems, sizes).Check(plan);

    private void Check(RowPlan plan)
    {
        _problems.Require(
            plan.Wefts.Count is >= 1 and <= Bounds.Wefts,
            ProblemCodes.Wefts,
            "/rows/wefts",
            $"The row plan lists {Plain.Count(plan.Wefts.Count, "weft")}.",
            $"List 1 to {Plain.Number(Bounds.Wefts)} wefts.");
        for (var i = 0; i < plan.Steps.Count; i++)
        {
            Step(plan.Steps[i], $"/rows/steps/{Plain.Number(i)}");
        }

        Totals();
    }

    private void Totals()
    {
        const string steps = "/rows/steps";
        _problems.Require(
            _steps <= Bounds.Steps,
            ProblemCodes.StepCount,
            steps,
            $"The row plan has {Plain.Count(_steps, "step")}; at most {Plain.Number(Bounds.Steps)} are allowed.",
            "Join neighbouring steps, or use repeats.");
        _problems.Require(
            _rows > 0,
            ProblemCodes.NothingWoven,
            steps,
            "The row plan weaves no row.",
            "Add chart rows or plain rows.");
        _problems.Require(
            _rows <= Bounds.PieceRows,
            ProblemCodes.PieceRows,
            steps,
            $"The piece would have more than {Plain.Number(Bounds.PieceRows)} rows.",
            "Repeat fewer times, or weave fewer rows.");
        _problems.Require(
            _stitches <= Bounds.PieceStitches,
            ProblemCodes.PieceStitches,
            steps,
            $"The piece would have more than {Plain.Number(Bounds.PieceStitches)} edge stitches.",
            "Repeat fewer times, or use fewer stitches.");
    }

    private void Step(RowStep step, string pointer)
    {
        _steps++;
        if (step is not Repeat repeat)
        {
            Simple((SimpleStep)step, pointer, 1);
            return;
        }

        _problems.Require(
            repeat.Times >= 1,
            ProblemCodes.RepeatTimes,
            pointer + "/times",
            $"The steps would be woven {Plain.Count(repeat.Times, "time")}.",
            "Weave them once or more.");
        _problems.Require(
            repeat.Steps.Count > 0,
            ProblemCodes.RepeatEmpty,
            pointer + "/steps",
            "The repeat holds no steps.",
            "Put steps into it, or remove it.");
        for (var i = 0; i < repeat.Steps.Count; i++)
        {
            _steps++;
            Simple(repeat.Steps[i], $"{pointer}/steps/{Plain.Number(i)}", Math.Clamp(repeat.Times, 1, Plenty));
        }
    }

    private void Simple(SimpleStep step, string pointer, long times)
    {
        switch (step)
        {
            case ChartRows chart:
                Weft(chart.Weft, pointer);
                var exists = Row(chart.First, pointer + "/first") & Row(chart.Last, pointer + "/last");
                _rows += exists ? times * chart.Count : times;
                break;
            case PlainRows plain:
                Weft(plain.Weft, pointer);
                _problems.Require(
                    plain.Count >= 1,
                    ProblemCodes.PlainCount,
                    pointer + "/count",
                    $"The number of plain rows is {Plain.Number(plain.Count)}.",
                    "Weave one or more, or remove the step.");
                _rows += times * Math.Clamp(plain.Count, 1, Plenty);
                break;
            case EdgeStitch stitch:
                Stitch(stitch, pointer);
                _stitches += times;
                break;
        }
    }

    private bool Row(int row, string pointer)
    {
        var exists = row >= 1 && row <= (_sizes.MotifRows ?? Bounds.MotifRows);
        _problems.Require(
            exists,
            ProblemCodes.ChartRow,
            pointer,
            _sizes.MotifRows is { } rows ? $"There is no row {Plain.Number(row)}: the motif has {Plain.Count(rows, "row")}." : $"There is no row {Plain.Number(row)}.",
            "Choose a row of the motif; the first is 1.");
        return exists;
    }

    private void Weft(int weft, string pointer) => _problems.Require(
        weft >= 1 && weft <= (_sizes.Wefts ?? Bounds.Wefts),
        ProblemCodes.WeftUnknown,
        pointer + "/weft",
        _sizes.Wefts is { } wefts ? $"There is no weft {Plain.Number(weft)}: the row plan lists {Plain.Count(wefts, "weft")}." : $"There is no weft {Plain.Number(weft)}.",
        "Choose a weft that the row plan lists; the first is 1.");

    private void Stitch(EdgeStitch stitch, string pointer)
    {
        TextRules.Line(_problems, pointer + "/name", "The name of the stitch", stitch.Name, Bounds.StitchName);
        _problems.Require(
            stitch.Across is >= 1 and <= Bounds.Across,
            ProblemCodes.StitchAcross,
            pointer + "/across",
            $"The stitch would go across {Plain.Count(stitch.Across, "time")}.",
            $"Choose 1 to {Plain.Number(Bounds.Across)} times.");
        if (stitch.Yarn == StitchYarn.Working)
        {
            _problems.Require(
                stitch.From == Side.Left, ProblemCodes.StitchFrom, pointer + "/from", StitchWords.FromWhat, StitchWords.FromRemedy);
            Weft(stitch.Weft, pointer);
        }
        else
        {
            _problems.Require(
                stitch.Weft == 1, ProblemCodes.StitchWeft, pointer + "/weft", StitchWords.WeftWhat, StitchWords.WeftRemedy);
        }
    }
}

/// <summary>Why a stitch has a side or a weft only with one of the two yarns; so that equal stitches are equal documents.</summary>
internal static class StitchWords
{
    public const string FromWhat = "A stitch with the working weft begins where that weft is, so it has no side of its own.";
    public const string FromRemedy = "Leave \"from\" out, or give the stitch its own yarn.";
    public const string WeftWhat = "A stitch with its own yarn uses no weft.";
    public const string WeftRemedy = "Leave \"weft\" out, or make the stitch with the working weft.";
}
