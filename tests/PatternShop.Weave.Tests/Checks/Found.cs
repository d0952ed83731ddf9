using CsCheck;
using PatternShop.Tests.Shared;

namespace PatternShop.Weave.Tests;

/// <summary>Findings of documents, and what tells them apart, for tests of checks.</summary>
internal static class Found
{
    public static IReadOnlyList<T> In<T>(PatternDocument document)
        where T : Finding => [.. Weave.Checks.Of(Piece.Of(document)).OfType<T>()];

    /// <summary>The first remedy of the first finding of a kind.</summary>
    public static Remedy FirstRemedy<T>(PatternDocument document)
        where T : Finding => Remedies.Of(Piece.Of(document)).First(advice => advice.Finding is T).Remedies[0];

    public static PatternDocument After(PatternDocument document, Edit edit) => ((EditResult.Done)edit.Apply(document)).Document;

    /// <summary>What a finding is about, whatever its size: findings of one subject before and after an edit are the same one.</summary>
    public static (CheckKind Check, int Subject) Subject(Finding finding) => (finding.Check, finding switch
    {
        LooseThreads loose => loose.Within == AreaOf.Piece ? 2 : (int)loose.Kind,
        FloatingIdle idle => (int)idle.Side,
        TurnsNotWrapped turns => turns.Weft,
        SeamBreaks seam => seam.Step,
        FloatsTooLong floats => 1 + (int)floats.Kind,
        TimesUnlike unlike => unlike.Step,
        _ => 0,
    });

    /// <summary>Documents with repeats of up to 13 times: longer than what is looked at row by row.</summary>
    public static Gen<PatternDocument> LongDocuments { get; } =
        from document in DocumentGen.Documents
        from more in Gen.Int[0, 9]
        select document with
        {
            Rows = document.Rows with
            {
                Steps = document.Rows.Steps.Select(step => step is Repeat repeat ? repeat with { Times = repeat.Times + more } : step).ToSequence(),
            },
        };
}
