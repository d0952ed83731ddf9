namespace PatternShop.Weave;

/// <summary>What came of an edit.</summary>
public abstract record EditResult
{
    private EditResult()
    {
    }

    /// <summary>The edit was made.</summary>
    /// <param name="Document">The document after it; it keeps every rule.</param>
    /// <param name="Consequences">What changed besides what was asked for, in the order of the document.</param>
    public sealed record Done(PatternDocument Document, Sequence<Consequence> Consequences) : EditResult;

    /// <summary>The edit does not fit; the document stays as it was.</summary>
    /// <param name="Problems">Everything that is wrong; at least one.</param>
    public sealed record Refused(Sequence<Problem> Problems) : EditResult;
}

/// <summary>One change of a document, as a value: one step of undo. Its name is <see cref="Wording.EditName"/>.</summary>
public abstract record Edit
{
    private protected Edit()
    {
    }

    /// <summary>The document with the change made, or every reason why it cannot be.</summary>
    /// <param name="document">A document that keeps every rule.</param>
    public EditResult Apply(PatternDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        var result = Change(document);
        if (result is not EditResult.Done done)
        {
            return result;
        }

        done = done with { Document = WithoutLostWefts(done.Document) };
        var problems = DocumentRules.Check(done.Document).Concat(NewWords.Check(done.Document, before: document)).ToSequence();
        return problems.Count == 0 ? done : new EditResult.Refused(problems);
    }

    // A weft that the row plan no longer lists takes its thickness and colour with it, unless the edit is about them.
    private PatternDocument WithoutLostWefts(PatternDocument document)
    {
        var (cloth, wefts) = (document.Cloth, document.Rows.Wefts.Count);
        return this is SetCloth || cloth.Wefts.Count <= wefts
            ? document
            : document with { Cloth = cloth with { Wefts = cloth.Wefts.Take(wefts).ToSequence() } };
    }

    private protected abstract EditResult Change(PatternDocument document);

    private protected static EditResult Done(PatternDocument document) => new EditResult.Done(document, []);
}
