using System.Globalization;

namespace PatternShop.Weave;

/// <summary>Makes a document from a tree of the current format, noting every member that cannot be read.</summary>
internal sealed class DocumentBinder(FileProblems problems)
{
    /// <summary>The document, with neutral values for what could not be read, and the sizes that are known.</summary>
    public (PatternDocument Document, KnownSizes Sizes) Bind(JsonObject root)
    {
        var members = new MemberReader(
            root, problems, "format", "title", "language", "licence", "notes", "motif", "width", "rows", "gauge", "glyphs");
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
            members.Word<GlyphStyle>("glyphs", FormWords.Glyphs, GlyphStyle.Cells) ?? GlyphStyle.Cells);
        return (document, new KnownSizes(motifRows, motifEnds, wefts));
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
        var amount = members.Find<JsonText>("amount", required: true, "a number in quotation marks, such as \"4.5\"");
        return new Density(
            amount is null ? 1 : Amount(amount),
            members.Word<DensityUnit>("unit", FormWords.Units, null) ?? DensityUnit.PerInch);
    }

    private decimal Amount(JsonText json)
    {
        var text = json.Value;
        var fits = text.Length <= 24
            && decimal.TryParse(text, NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _);
        var formed = fits && char.IsAsciiDigit(text[^1]) && (char.IsAsciiDigit(text[0]) || (text[0] == '-' && char.IsAsciiDigit(text[1])));
        if (!formed)
        {
            problems.Add(
                ProblemCodes.NotDecimal, json.Place, $"{Plain.Quote(text)} is not a number that can be used.", "Write digits, with a point for decimals, such as \"4.5\".");
            return 1;
        }

        return decimal.Parse(text, CultureInfo.InvariantCulture);
    }
}
