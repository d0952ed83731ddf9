namespace PatternShop.Weave;

/// <summary>Makes a document from a tree of the current format, noting every member that cannot be read.</summary>
internal sealed class DocumentBinder(FileProblems problems)
{
    /// <summary>The document, with neutral values for what could not be read, and the sizes that are known.</summary>
    public (PatternDocument Document, KnownSizes Sizes) Bind(JsonObject root)
    {
        var members = new MemberReader(
            root, problems, "format", "title", "language", "licence", "notes", "rowWords", "videos", "photos", "motif", "width", "rows", "gauge", "limits", "cloth", "afterChart", "glyphs");
        var own = new MakersOwnBinder(problems);
        var (motif, motifRows, motifEnds) = new MotifBinder(problems).Bind(members);
        var (rows, wefts) = new RowPlanBinder(problems).Bind(members.Object("rows", required: false), members.Has("rows"), motifRows);
        var document = new PatternDocument(
            members.Text("title", null),
            members.Text("language", "en"),
            members.Text("licence", ""),
            members.Text("notes", ""),
            motif,
            Width(members.Object("width", required: true)),
            rows,
            Gauge(members.Object("gauge", required: true)),
            members.Word<GlyphStyle>("glyphs", FormWords.Glyphs, GlyphStyle.Cells) ?? GlyphStyle.Cells)
        {
            RowWords = own.RowWords(members),
            Videos = own.Videos(members),
            Photos = own.Photos(members),
            Limits = own.Limits(members),
            Cloth = new ClothBinder(problems).Bind(members),
            AfterChart = After(members.Object("afterChart", required: false)),
        };
        return (document, new KnownSizes(motifRows, motifEnds, wefts));
    }

    private AfterChart After(JsonObject? json)
    {
        if (json is null)
        {
            return AfterChart.All;
        }

        var members = new MemberReader(json, problems, "makingUp", "corrections", "notes");
        return new AfterChart(members.YesOrNo("makingUp", true), members.YesOrNo("corrections", true), members.YesOrNo("notes", true));
    }

    private WidthPlan Width(JsonObject? json)
    {
        if (json is null)
        {
            return new WidthPlan(1, 0, 0, null);
        }

        var members = new MemberReader(json, problems, "repeats", "offset", "balance", "floating");
        return new WidthPlan(
            members.Whole("repeats", 1, null),
            members.Whole("offset", 0, 0),
            members.Whole("balance", 0, 0),
            Floating(members));
    }

    private FloatingSelvedges? Floating(MemberReader width)
    {
        if (width.Find("floating", required: false) is null or JsonWord { IsNull: true }
            || width.Object("floating", required: true) is not { } json)
        {
            return null;
        }

        var members = new MemberReader(json, problems, "edges", "first");
        return new FloatingSelvedges(
            members.Word<EdgeWay>("edges", FormWords.Edges, null) ?? EdgeWay.Alike,
            members.Word<Stroke>("first", FormWords.Strokes, null) ?? Stroke.Under);
    }

    private Gauge Gauge(JsonObject? json)
    {
        if (json is null)
        {
            return new Gauge(Neutral, Neutral);
        }

        var members = new MemberReader(json, problems, "sett", "rows");
        return new Gauge(Density(members, "sett"), Density(members, "rows"));
    }

    private static Density Neutral { get; } = new(1, DensityUnit.PerInch);

    private Density Density(MemberReader gauge, string name)
    {
        if (gauge.Object(name, required: true) is not { } json)
        {
            return Neutral;
        }

        var members = new MemberReader(json, problems, "amount", "unit");
        return new Density(
            members.Amount(),
            members.Word<DensityUnit>("unit", FormWords.Units, null) ?? DensityUnit.PerInch);
    }
}
