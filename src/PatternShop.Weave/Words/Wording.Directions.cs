namespace PatternShop.Weave;

public partial class Wording
{
    public virtual string Name(Stroke stroke) => stroke == Stroke.Over ? "over" : "under";

    public virtual string Name(Side side) => side == Side.Left ? "left" : "right";

    /// <summary>A run: "under 2".</summary>
    public virtual string RunText(Run run) => $"{Name(run.Stroke)} {Number(run.Count)}";

    /// <summary>The heading of directions: "from the left →" or "← from the right".</summary>
    public virtual string Heading(Side from) => from == Side.Left ? "from the left →" : "← from the right";

    /// <summary>The heading without its arrow.</summary>
    public virtual string PlainHeading(Side from) => $"from the {Name(from)}";

    /// <summary>A writing: "under 1, [over 1, under 2] × 3, over 1". A bracket inside another is round: "[(over 1, under 1) × 2, over 2] × 3".</summary>
    public virtual string WritingText(Writing writing)
    {
        ArgumentNullException.ThrowIfNull(writing);
        return string.Join(", ", writing.Items.Select(ItemText));
    }

    /// <summary>One item of a writing.</summary>
    public virtual string ItemText(WritingItem item) => item switch
    {
        RunItem run => RunText(run.Run),
        BracketItem bracket => $"[{string.Join(", ", bracket.Items.Select(InnerText))}] {TimesText(bracket)}",
        _ => throw new InvalidOperationException(),
    };

    /// <summary>How often a bracket is woven: "× 3".</summary>
    public virtual string TimesText(BracketItem bracket)
    {
        ArgumentNullException.ThrowIfNull(bracket);
        return $"× {Number(bracket.Times)}";
    }

    /// <summary>An item inside a bracket: a bracket there is round.</summary>
    public string InnerText(WritingItem item) => item is BracketItem inner
        ? $"({string.Join(", ", inner.Items.Select(InnerText))}) {TimesText(inner)}"
        : ItemText(item);

    /// <summary>The directions of a reading, headed by the side from which it is woven.</summary>
    public virtual string DirectionsText(Reading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return $"{Heading(reading.Key.From)}: {WritingText(reading.Writing)}";
    }

    /// <summary>What a row is: "row 3, chart row 3" or "row 18, plain".</summary>
    public virtual string RowName(WovenRow row) => $"row {Number(row.Number)}, {SourceName(row)}";

    /// <summary>Where a row's cells come from: "chart row 3" or "plain".</summary>
    public virtual string SourceName(WovenRow row) => row.ChartRow is { } chartRow ? $"chart row {Number(chartRow)}" : "plain";

    /// <summary>The weft of a row where there are several: "weft 2"; empty for the only one.</summary>
    public virtual string WeftName(Piece piece, int weft)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return piece.UsedWefts.Count == 1 ? "" : $"weft {Number(weft)}";
    }

    /// <summary>Which earlier printed row reads the same in the same travel: "same as row 1"; empty when none does.</summary>
    public virtual string SameAs(Piece piece, int number)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return piece.SameReadingBefore(number) is { } earlier ? $"same as row {Number(earlier)}" : "";
    }

    /// <summary>A whole written row: "Row 2 (chart row 2), from the left →: over 3, under 2".</summary>
    public virtual string WrittenRow(Piece piece, int number)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var notes = RowNotes(piece, number);
        return $"Row {Number(number)}{(notes.Length > 0 ? $" ({notes})" : "")} {DirectionsText(piece.Reading(number))}";
    }

    /// <summary>What stands beside a row's number: its chart row where that differs from the number, "plain", its weft where there are several, an equal row before it.</summary>
    public virtual string RowNotes(Piece piece, int number)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var row = piece.Rows[number - 1];
        var parts = new[]
        {
            row.ChartRow == number ? "" : SourceName(row),
            WeftName(piece, row.Weft),
            SameAs(piece, number),
        };
        return string.Join(", ", parts.Where(part => part.Length > 0));
    }
}
