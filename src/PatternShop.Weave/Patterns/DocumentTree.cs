namespace PatternShop.Weave;

/// <summary>A pattern document as a tree of JSON, every member written, in the order in which people read it.</summary>
internal static class DocumentTree
{
    /// <summary>The format that is written; older ones are read through <see cref="FormatUpgrades"/>.</summary>
    public const int Format = 4;

    public static JsonObject Of(PatternDocument document) => Object(
    [
        ("format", Number(Format)),
        ("title", Text(document.Title)),
        ("language", Text(document.Language)),
        ("licence", Text(document.Licence)),
        ("notes", Text(document.Notes)),
        ("rowWords", Array(document.RowWords, words => Object(("row", Number(words.Row)), ("text", Text(words.Text))))),
        ("videos", Array(document.Videos, Video)),
        ("photos", Array(document.Photos, Photo)),
        ("motif", Array(GridText.Write(document.Motif), Text)),
        ("width", Width(document.Width)),
        ("rows", Rows(document.Rows)),
        ("gauge", Object(("sett", Density(document.Gauge.Sett)), ("rows", Density(document.Gauge.Rows)))),
        ("limits", document.Limits is { } limits ? Limits(limits) : Null),
        ("cloth", document.Cloth == ClothLook.Plain ? Null : Cloth(document.Cloth)),
        // documents that say nothing of it keep the bytes that they had before there was a choice
        .. Unless(document.AfterChart == AfterChart.All, "afterChart", () => After(document.AfterChart)),
        ("glyphs", Word(FormWords.Glyphs, document.Glyphs)),
    ]);

    private static JsonObject After(AfterChart after) => Object(
    [
        .. Unless(after.MakingUp, "makingUp", () => False),
        .. Unless(after.Corrections, "corrections", () => False),
        .. Unless(after.Notes, "notes", () => False),
    ]);

    private static JsonObject Cloth(ClothLook cloth) => Object(
    [
        .. Unless(cloth.Own.Count == 0, "colours", () => Array(cloth.Own, own => Object(("name", Text(own.Name)), ("value", Text(own.Value.Text))))),
        .. Unless(cloth.Warp == YarnLook.Plain, "warp", () => Look(cloth.Warp)),
        .. Unless(cloth.Wefts.Count == 0, "wefts", () => Array(cloth.Wefts, Look)),
        .. Unless(cloth.Ends.Count == 0, "ends", () => Text(ColourOrder.Text(cloth.Ends))),
        .. Unless(cloth.Rows.Count == 0, "rows", () => Text(ColourOrder.Text(cloth.Rows))),
    ]);

    private static JsonObject Look(YarnLook look) => Object(
    [
        .. Unless(look.Thickness is null, "thickness", () => Object(("amount", Text(Plain.Number(look.Thickness!.Amount))), ("unit", Word(FormWords.Thicknesses, look.Thickness.Unit)))),
        .. Unless(look.Colour is null, "colour", () => Text(look.Colour!)),
    ]);

    private static (string, JsonValue)[] Unless(bool leftOut, string name, Func<JsonValue> value) => leftOut ? [] : [(name, value())];

    private static JsonObject Video(Video video) => Object([("address", Text(video.Address)), ("caption", Text(video.Caption)), .. Row(video.Row)]);

    private static JsonObject Photo(Photo photo) => Object([("hash", Text(photo.Hash)), ("caption", Text(photo.Caption)), .. Row(photo.Row)]);

    private static (string, JsonValue)[] Row(int? row) => row is { } number ? [("row", Number(number))] : [];

    private static JsonObject Limits(Limits limits) => Object(
    [
        .. limits.Threads is { } threads ? [("threads", Number(threads))] : System.Array.Empty<(string, JsonValue)>(),
        .. limits.Length is { } length ? [("length", Object(("amount", Text(Plain.Number(length.Amount))), ("unit", Word(FormWords.Lengths, length.Unit))))] : System.Array.Empty<(string, JsonValue)>(),
    ]);

    private static JsonObject Width(WidthPlan width) => Object(
        ("repeats", Number(width.Repeats)),
        ("offset", Number(width.Offset)),
        ("balance", Number(width.Balance)),
        ("floating", width.Floating is { } floating ? Floating(floating) : Null));

    private static JsonObject Floating(FloatingSelvedges floating) => Object(
        ("edges", Word(FormWords.Edges, floating.Edges)),
        ("first", Word(FormWords.Strokes, floating.First)));

    private static JsonObject Rows(RowPlan rows) => Object(
        ("wefts", Array(rows.Wefts, weft => Object(("start", Word(FormWords.Sides, weft.Start))))),
        ("firstPlain", Word(FormWords.Strokes, rows.FirstPlain)),
        ("steps", Array(rows.Steps, Step)));

    private static JsonObject Step(RowStep step) => step switch
    {
        ChartRows chart => Step(StepKind.Chart, ("first", Number(chart.First)), ("last", Number(chart.Last)), ("weft", Number(chart.Weft))),
        PlainRows plain => Step(StepKind.Plain, ("count", Number(plain.Count)), ("weft", Number(plain.Weft))),
        Repeat repeat => Step(StepKind.Repeat, ("times", Number(repeat.Times)), ("steps", Array(repeat.Steps, Step))),
        EdgeStitch stitch => Step(StepKind.Stitch, Stitch(stitch)),
        _ => throw new ArgumentOutOfRangeException(nameof(step), step, "Has no file form."),
    };

    // a member without a meaning is written only where a document breaks the rules, so that its bytes still tell it from others
    private static (string, JsonValue)[] Stitch(EdgeStitch stitch)
    {
        var own = stitch.Yarn == StitchYarn.Own;
        return
        [
            ("name", Text(stitch.Name)),
            ("yarn", Word(FormWords.Yarns, stitch.Yarn)),
            ("across", Number(stitch.Across)),
            .. own || stitch.From != Side.Left ? [("from", Word(FormWords.Sides, stitch.From))] : System.Array.Empty<(string, JsonValue)>(),
            .. !own || stitch.Weft != 1 ? [("weft", Number(stitch.Weft))] : System.Array.Empty<(string, JsonValue)>(),
        ];
    }

    private static JsonObject Density(Density density) => Object(
        ("amount", Text(Plain.Number(density.Amount))),
        ("unit", Word(FormWords.Units, density.Unit)));

    private static JsonObject Step(StepKind kind, params ReadOnlySpan<(string, JsonValue)> members) =>
        Object([("step", Word(FormWords.Steps, kind)), .. members]);

    private static JsonObject Object(params ReadOnlySpan<(string Name, JsonValue Value)> members)
    {
        var made = new JsonMember[members.Length];
        for (var i = 0; i < made.Length; i++)
        {
            made[i] = new JsonMember(members[i].Name, 0, members[i].Value);
        }

        return new JsonObject(made.ToSequence(), JsonPlace.None);
    }

    private static JsonArray Array<T>(Sequence<T> items, Func<T, JsonValue> write) => new(items.Select(write).ToSequence(), JsonPlace.None);

    private static JsonWord False => new(JsonWord.False, JsonPlace.None);

    private static JsonWord Null => new(JsonWord.Null, JsonPlace.None);

    private static JsonText Text(string value) => new(value, JsonPlace.None);

    private static JsonText Word<T>(WordTable<T> words, T value)
        where T : struct, Enum => Text(words.Of(value));

    private static JsonNumber Number(int value) => new(Plain.Number(value), JsonPlace.None);
}
