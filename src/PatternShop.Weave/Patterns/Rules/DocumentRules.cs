namespace PatternShop.Weave;

/// <summary>
/// What must hold of a pattern document besides its types: sizes, numbers in range, texts that can be read, rows and
/// wefts that exist. Nothing here judges the cloth.
/// </summary>
public static class DocumentRules
{
    /// <summary>Everything that is wrong, in the order of the document; empty for a good one. Lines and columns are 0.</summary>
    public static Sequence<Problem> Check(PatternDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return Check(document, new KnownSizes(document.Motif.Rows, document.Motif.Columns, document.Rows.Wefts.Count));
    }

    /// <summary>The same for a document some parts of which could not be read: what depends on an unknown size is not judged.</summary>
    internal static Sequence<Problem> Check(PatternDocument document, KnownSizes sizes)
    {
        var problems = new RuleProblems();
        TextRules.Line(problems, "/title", "The title", document.Title, Bounds.Title);
        TextRules.Language(problems, "/language", document.Language);
        TextRules.Block(problems, "/licence", "The licence", document.Licence, Bounds.Licence);
        TextRules.Block(problems, "/notes", "The notes", document.Notes, Bounds.Notes);
        MakersOwnRules.Check(problems, document, sizes);
        Motif(problems, sizes);
        Width(problems, document.Width, sizes);
        RowPlanRules.Check(problems, document.Rows, sizes);
        Amount(problems, "/gauge/sett/amount", "sett", document.Gauge.Sett.Amount);
        Amount(problems, "/gauge/rows/amount", "row density", document.Gauge.Rows.Amount);
        MakersOwnRules.Check(problems, document.Limits);
        ClothRules.Check(problems, document.Cloth, sizes);
        return problems.All();
    }

    private static void Motif(RuleProblems problems, KnownSizes sizes)
    {
        problems.Require(
            sizes.MotifRows is not > Bounds.MotifRows && sizes.MotifEnds is not > Bounds.MotifEnds,
            ProblemCodes.MotifSize,
            "/motif",
            $"The motif has {Size(sizes.MotifRows, "row")} of {Size(sizes.MotifEnds, "end")}; at most {Plain.Number(Bounds.MotifRows)} of {Plain.Number(Bounds.MotifEnds)} are allowed.",
            "Draw a smaller motif, and let the width and the row plan repeat it.");
    }

    private static string Size(int? size, string one) => size is { } known ? Plain.Count(known, one) : $"some {one}s";

    private static void Width(RuleProblems problems, WidthPlan width, KnownSizes sizes)
    {
        problems.Require(
            width.Repeats >= 1,
            ProblemCodes.Repeats,
            "/width/repeats",
            $"The motif would stand {Plain.Count(width.Repeats, "time")} across.",
            "Let it stand there once or more.");
        problems.Require(
            width.Offset >= 0 && (sizes.MotifEnds is not { } ends || width.Offset < Math.Max(ends, 1)),
            ProblemCodes.Offset,
            "/width/offset",
            $"The offset is {Plain.Number(width.Offset)}, the motif has {Size(sizes.MotifEnds, "end")}.",
            "Choose an offset from 0 to one less than the ends of the motif.");
        problems.Require(
            width.Balance >= 0,
            ProblemCodes.Balance,
            "/width/balance",
            $"The number of balance ends is {Plain.Number(width.Balance)}.",
            "Choose 0 or more.");
        PieceEnds(problems, width, sizes.MotifEnds ?? 1);
    }

    private static void PieceEnds(RuleProblems problems, WidthPlan width, int motifEnds)
    {
        var ends = ((long)Math.Max(width.Repeats, 0) * motifEnds) + Math.Max(width.Balance, 0);
        problems.Require(
            ends <= Bounds.PieceEnds,
            ProblemCodes.PieceEnds,
            "/width",
            $"The piece would have {Plain.Number(ends)} pattern ends; at most {Plain.Number(Bounds.PieceEnds)} are allowed.",
            "Repeat the motif fewer times across, or take fewer balance ends.");
    }

    private static void Amount(RuleProblems problems, string pointer, string label, decimal amount)
    {
        problems.Require(
            amount is > 0 and <= Bounds.Density,
            ProblemCodes.Density,
            pointer,
            $"The {label} is {Plain.Number(amount)}.",
            $"Choose an amount above 0, at most {Plain.Number(Bounds.Density)}.");
        Places(problems, pointer, label, amount);
    }

    internal static void Places(RuleProblems problems, string pointer, string label, decimal amount) => problems.Require(
        decimal.Round(amount, Bounds.DecimalPlaces) == amount,
        ProblemCodes.DecimalPlaces,
        pointer,
        $"The {label} {Plain.Number(amount)} has more than {Plain.Number(Bounds.DecimalPlaces)} decimal places.",
        $"Round it to {Plain.Number(Bounds.DecimalPlaces)} decimal places.");
}

/// <summary>Sizes that other parts of a document are judged by; null where they could not be read.</summary>
internal sealed record KnownSizes(int? MotifRows, int? MotifEnds, int? Wefts);
