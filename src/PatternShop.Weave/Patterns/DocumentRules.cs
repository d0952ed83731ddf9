namespace PatternShop.Weave;

/// <summary>What every pattern document keeps.</summary>
public static class DocumentRules
{
    /// <summary>The rules that a document breaks; empty when it breaks none.</summary>
    public static Sequence<Problem> Check(PatternDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return document.Width.Offset < document.Motif.Columns
            ? []
            : [new Problem("offset", "/width/offset", 0, 0, "The offset is not below the width of the motif.", "Choose a smaller offset.")];
    }
}
