namespace PatternShop.Weave;

/// <summary>Makes the row plan from its tree.</summary>
internal sealed class RowPlanBinder(FileProblems problems)
{
    private static readonly Sequence<Weft> OneWeft = [new Weft(Side.Left)];

    // stands for a step that could not be read: it weaves something and exists in every motif
    private static readonly PlainRows NeutralStep = new(1, 1);

    /// <summary>The plan, and the number of wefts or null where it could not be told. An absent plan weaves every chart row once.</summary>
    public (RowPlan Plan, int? Wefts) Bind(JsonObject? json, bool given, int? motifRows)
    {
        if (json is null)
        {
            return (new RowPlan(OneWeft, Stroke.Under, given ? [NeutralStep] : EveryRow(motifRows)), given ? null : 1);
        }

        var members = new MemberReader(json, problems, "wefts", "firstPlain", "steps");
        var wefts = members.Has("wefts") ? Wefts(members) : OneWeft;
        var plan = new RowPlan(
            wefts ?? OneWeft,
            members.Word<Stroke>("firstPlain", FormWords.Strokes, Stroke.Under) ?? Stroke.Under,
            members.Has("steps") ? Steps(members) : EveryRow(motifRows));
        return (plan, wefts?.Count);
    }

    private static Sequence<RowStep> EveryRow(int? motifRows) => [motifRows is { } rows ? new ChartRows(1, rows, 1) : NeutralStep];

    private Sequence<Weft>? Wefts(MemberReader plan)
    {
        if (plan.Array("wefts", required: true) is not { } json)
        {
            return null;
        }

        return json.Items
            .Select(item => plan.Typed<JsonObject>(item, "weft", "an object in braces"))
            .Select(item => new Weft(item is null ? Side.Left : Start(item)))
            .ToSequence();
    }

    private Side Start(JsonObject weft) =>
        new MemberReader(weft, problems, "start").Word<Side>("start", FormWords.Sides, Side.Left) ?? Side.Left;

    private Sequence<RowStep> Steps(MemberReader plan)
    {
        if (plan.Array("steps", required: true) is not { } json)
        {
            return [NeutralStep];
        }

        return json.Items.Select(item => Step(plan, item, inRepeat: false)).ToSequence();
    }

    private RowStep Step(MemberReader parent, JsonValue value, bool inRepeat)
    {
        if (parent.Typed<JsonObject>(value, "step", "an object in braces") is not { } json)
        {
            return NeutralStep;
        }

        var kind = FormWords.Steps.Read((json["step"] as JsonText)?.Value ?? "");
        return kind switch
        {
            StepKind.Chart => Chart(new MemberReader(json, problems, "step", "first", "last", "weft")),
            StepKind.Plain => Plain(new MemberReader(json, problems, "step", "count", "weft")),
            StepKind.Stitch => Stitch(new MemberReader(json, problems, "step", "name", "yarn", "across", "from", "weft"), json),
            StepKind.Repeat when !inRepeat => Repeat(new MemberReader(json, problems, "step", "times", "steps")),
            StepKind.Repeat => Nested(json),
            _ => Unknown(json),
        };
    }

    private static ChartRows Chart(MemberReader members) =>
        new(members.Whole("first", 1, null), members.Whole("last", 1, null), members.Whole("weft", 1, 1));

    private static PlainRows Plain(MemberReader members) => new(members.Whole("count", 1, null), members.Whole("weft", 1, 1));

    private EdgeStitch Stitch(MemberReader members, JsonObject json)
    {
        var yarn = members.Word<StitchYarn>("yarn", FormWords.Yarns, null);
        var side = members.Word<Side>("from", FormWords.Sides, Side.Left) ?? Side.Left;
        var weft = members.Whole("weft", 1, 1);
        if (yarn == StitchYarn.Working)
        {
            Refuse(json["from"], ProblemCodes.StitchFrom, StitchWords.FromWhat, StitchWords.FromRemedy);
            side = Side.Left;
        }
        else
        {
            Refuse(yarn is null ? null : json["weft"], ProblemCodes.StitchWeft, StitchWords.WeftWhat, StitchWords.WeftRemedy);
            weft = 1;
        }

        return new EdgeStitch(members.Text("name", null), yarn ?? StitchYarn.Own, members.Whole("across", 1, null), side, weft);
    }

    private void Refuse(JsonValue? member, string code, string what, string remedy)
    {
        if (member is not null)
        {
            problems.Add(code, member.Place, what, remedy);
        }
    }

    private Repeat Repeat(MemberReader members)
    {
        var times = members.Whole("times", 1, null);
        var steps = members.Array("steps", required: true)?.Items.Select(item => (SimpleStep)Step(members, item, inRepeat: true));
        return new Repeat(times, steps?.ToSequence() ?? [NeutralStep]);
    }

    private PlainRows Nested(JsonObject json)
    {
        problems.Add(
            ProblemCodes.NestedRepeat,
            json.Place,
            "A repeat stands inside a repeat.",
            "Write the inner steps out as often as they are woven.");
        return NeutralStep;
    }

    private PlainRows Unknown(JsonObject json)
    {
        new MemberReader(json, problems).Word<StepKind>("step", FormWords.Steps, null);
        return NeutralStep;
    }
}
