namespace PatternShop.Weave;

public partial class Wording
{
    public virtual string ByMotifTitle => "By the motif";

    /// <summary>What the rows by the motif are.</summary>
    public virtual string ByMotifLegend => "Each row in its parts, in the direction of travel; runs are split where a motif begins.";

    public virtual string InShortTitle => "In short";

    public virtual string InWordsTitle => "In words";

    /// <summary>Stands before the choice of how rows are written.</summary>
    public virtual string WrittenLabel => "Written";

    /// <summary>The name of a part of a row: "edge", "motif", "2 motifs", "balance".</summary>
    public virtual string PartName(MotifPart part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part.Kind switch
        {
            PartKind.Edge => "edge",
            PartKind.Balance => "balance",
            _ => part.Motifs == 1 ? "motif" : $"{Number(part.Motifs)} motifs",
        };
    }

    /// <summary>A row by the motif: "edge: under 1 · motif: [over 1, under 2] × 3 · balance: over 1 · edge: under 1".</summary>
    public string MotifText(ByMotif row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return string.Join(" · ", row.Parts.Select(part => $"{PartName(part)}: {PartText(part)}"));
    }

    /// <summary>What is woven in a part: the writing, in brackets where it is woven several times.</summary>
    public string PartText(MotifPart part)
    {
        ArgumentNullException.ThrowIfNull(part);
        return part.Times == 1 ? WritingText(part.Writing) : ItemText(new BracketItem(part.Writing.Items, part.Times));
    }
}
