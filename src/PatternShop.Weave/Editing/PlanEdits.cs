namespace PatternShop.Weave;

/// <summary>Changes some of the maker's own words; null leaves one as it is.</summary>
public sealed record SetWords(string? Title = null, string? Notes = null, string? Licence = null, string? Language = null) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with
    {
        Title = Title ?? document.Title,
        Notes = Notes ?? document.Notes,
        Licence = Licence ?? document.Licence,
        Language = Language ?? document.Language,
    });
}

/// <summary>Changes how the motif becomes the width.</summary>
public sealed record SetWidth(WidthPlan Width) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with { Width = Width });
}

/// <summary>Changes the floating selvedges only; null takes them away.</summary>
public sealed record SetFloating(FloatingSelvedges? Floating) : Edit
{
    private protected override EditResult Change(PatternDocument document) =>
        Done(document with { Width = document.Width with { Floating = Floating } });
}

/// <summary>Changes the order in which rows are woven, the wefts and where they start.</summary>
public sealed record SetRowPlan(RowPlan Rows) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with { Rows = Rows });
}

/// <summary>Changes sett and row density.</summary>
public sealed record SetGauge(Gauge Gauge) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with { Gauge = Gauge });
}

/// <summary>Changes how the chart is drawn.</summary>
public sealed record SetGlyphs(GlyphStyle Glyphs) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with { Glyphs = Glyphs });
}

/// <summary>Changes how the floating selvedges go and at which sides the wefts start, which belong together.</summary>
/// <param name="Floating">The floating selvedges; null for none.</param>
/// <param name="Wefts">The wefts with the sides at which they start; as many as there are.</param>
public sealed record SetEdges(FloatingSelvedges? Floating, Sequence<Weft> Wefts) : Edit
{
    private protected override EditResult Change(PatternDocument document) => Done(document with
    {
        Width = document.Width with { Floating = Floating },
        Rows = document.Rows with { Wefts = Wefts },
    });
}
