namespace PatternShop.Weave;

/// <summary>What must hold of thicknesses and colours.</summary>
internal static class ClothRules
{
    private const string Unknown = "Choose a colour that has a name here, such as white, red or blue, or add it to your own colours.";

    public static void Check(RuleProblems problems, ClothLook cloth, KnownSizes sizes)
    {
        Own(problems, cloth.Own);
        Look(problems, "/cloth/warp", cloth.Warp, cloth);
        problems.Require(
            cloth.Wefts.Count <= (sizes.Wefts ?? Bounds.Wefts),
            ProblemCodes.ClothWefts,
            "/cloth/wefts",
            $"The cloth describes {Plain.Count(cloth.Wefts.Count, "weft")}, the row plan lists {Plain.Number(sizes.Wefts ?? 0)}.",
            "Describe no more wefts than there are.");
        // of more than there can be, the rest is not judged: every colour is looked for among all
        foreach (var (at, look) in cloth.Wefts.Take(Bounds.Wefts).Index())
        {
            Look(problems, $"/cloth/wefts/{Plain.Number(at)}", look, cloth);
        }

        Order(problems, "/cloth/ends", cloth.Ends, cloth);
        Order(problems, "/cloth/rows", cloth.Rows, cloth);
    }

    private static void Own(RuleProblems problems, Sequence<OwnColour> own)
    {
        problems.Require(
            own.Count <= Bounds.OwnColours,
            ProblemCodes.ColourCount,
            "/cloth/colours",
            $"There are {Plain.Count(own.Count, "colour")} of your own; at most {Plain.Number(Bounds.OwnColours)} are allowed.",
            "Take some away.");
        var met = new HashSet<string>(StringComparer.Ordinal);
        foreach (var (at, colour) in own.Take(Bounds.OwnColours).Index())
        {
            var pointer = $"/cloth/colours/{Plain.Number(at)}/name";
            problems.Require(
                NamedColours.CanBeName(colour.Name),
                ProblemCodes.ColourName,
                pointer,
                $"{Plain.Quote(colour.Name)} cannot be the name of a colour.",
                $"Begin with a letter; use letters, digits, spaces and hyphens, at most {Plain.Number(Bounds.ColourName)} characters.");
            problems.Require(
                met.Add(colour.Name) && NamedColours.Find(colour.Name) is null,
                ProblemCodes.ColourTwice,
                pointer,
                $"{Plain.Quote(colour.Name)} is the name of a colour already.",
                "Give this colour another name.");
        }
    }

    private static void Look(RuleProblems problems, string pointer, YarnLook look, ClothLook cloth)
    {
        if (look.Thickness is { Amount: var amount })
        {
            problems.Require(
                amount is > 0 and <= Bounds.Thickness,
                ProblemCodes.Thickness,
                pointer + "/thickness/amount",
                $"The thickness is {Plain.Number(amount)}.",
                $"Choose an amount above 0, at most {Plain.Number(Bounds.Thickness)}.");
            DocumentRules.Places(problems, pointer + "/thickness/amount", "thickness", amount);
        }

        if (look.Colour is { } colour)
        {
            Known(problems, pointer + "/colour", colour, cloth);
        }
    }

    private static void Order(RuleProblems problems, string pointer, Sequence<ColourRun> order, ClothLook cloth)
    {
        foreach (var (at, run) in order.Index())
        {
            problems.Require(
                run.Count is >= 1 and <= Bounds.OrderThreads,
                ProblemCodes.ColourThreads,
                pointer,
                $"Part {Plain.Number(at + 1)} of the order has {Plain.Count(run.Count, "thread")}.",
                $"Write a count from 1 to {Plain.Number(Bounds.OrderThreads)}.");
        }

        foreach (var colour in order.Select(run => run.Colour).Distinct(StringComparer.Ordinal))
        {
            Known(problems, pointer, colour, cloth);
        }

        problems.Require(
            ColourOrder.Text(order).Length <= Bounds.OrderText,
            ProblemCodes.OrderLength,
            pointer,
            $"The order would be longer than {Plain.Number(Bounds.OrderText)} characters.",
            "Write one repeat of it: an order goes on by itself.");
    }

    private static void Known(RuleProblems problems, string pointer, string colour, ClothLook cloth) => problems.Require(
        cloth.Find(colour) is not null,
        ProblemCodes.ColourUnknown,
        pointer,
        $"There is no colour called {Plain.Quote(colour)}.",
        Unknown);
}
