namespace PatternShop.Weave;

/// <summary>What a later version of a pattern decides otherwise than an earlier one; null where it decides the same.</summary>
public sealed record DocumentDifference(
    string? Title,
    string? Language,
    string? Licence,
    string? Notes,
    MotifDifference? Motif,
    WidthPlan? Width,
    RowPlan? Rows,
    Gauge? Gauge,
    GlyphStyle? Glyphs,
    Sequence<RowWords>? RowWords,
    Sequence<Video>? Videos,
    Sequence<Photo>? Photos,
    LimitsDifference? Limits,
    ClothLook? Cloth,
    AfterChart? AfterChart)
{
    /// <summary>Whether nothing differs.</summary>
    public bool IsNone => this == new DocumentDifference(null, null, null, null, null, null, null, null, null, null, null, null, null, null, null);

    /// <summary>Whether something differs that a weaver weaves by: cells, width or the order of rows.</summary>
    public bool TouchesWeaving => Motif is not null || Width is not null || Rows is not null;

    /// <summary>The difference that makes the new document of the old one.</summary>
    public static DocumentDifference Between(PatternDocument old, PatternDocument @new)
    {
        ArgumentNullException.ThrowIfNull(old);
        ArgumentNullException.ThrowIfNull(@new);
        return new DocumentDifference(
            Other(old.Title, @new.Title),
            Other(old.Language, @new.Language),
            Other(old.Licence, @new.Licence),
            Other(old.Notes, @new.Notes),
            old.Motif.Equals(@new.Motif) ? null : MotifDifference.Between(old.Motif, @new.Motif),
            Other(old.Width, @new.Width),
            Other(old.Rows, @new.Rows),
            Other(old.Gauge, @new.Gauge),
            old.Glyphs == @new.Glyphs ? null : @new.Glyphs,
            Other(old.RowWords, @new.RowWords),
            Other(old.Videos, @new.Videos),
            Other(old.Photos, @new.Photos),
            old.Limits == @new.Limits ? null : new LimitsDifference(@new.Limits),
            Other(old.Cloth, @new.Cloth),
            Other(old.AfterChart, @new.AfterChart));
    }

    /// <summary>The new document, made of the old one.</summary>
    public PatternDocument Apply(PatternDocument old)
    {
        ArgumentNullException.ThrowIfNull(old);
        return old with
        {
            Title = Title ?? old.Title,
            Language = Language ?? old.Language,
            Licence = Licence ?? old.Licence,
            Notes = Notes ?? old.Notes,
            Motif = Motif?.Apply(old.Motif) ?? old.Motif,
            Width = Width ?? old.Width,
            Rows = Rows ?? old.Rows,
            Gauge = Gauge ?? old.Gauge,
            Glyphs = Glyphs ?? old.Glyphs,
            RowWords = RowWords ?? old.RowWords,
            Videos = Videos ?? old.Videos,
            Photos = Photos ?? old.Photos,
            Limits = Limits is { } limits ? limits.Now : old.Limits,
            Cloth = Cloth ?? old.Cloth,
            AfterChart = AfterChart ?? old.AfterChart,
        };
    }

    private static T? Other<T>(T old, T @new)
        where T : class => old.Equals(@new) ? null : @new;
}

/// <summary>Limits that are others now.</summary>
/// <param name="Now">Those of the later version; null where it has none.</param>
public sealed record LimitsDifference(Limits? Now);
