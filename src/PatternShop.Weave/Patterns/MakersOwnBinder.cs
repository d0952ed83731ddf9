namespace PatternShop.Weave;

/// <summary>Makes the maker's own words, videos, photos and limits from their trees; each member may be left out.</summary>
internal sealed class MakersOwnBinder(FileProblems problems)
{
    // stand for what could not be read: they keep every rule
    private const string NeutralAddress = "https://a.b/";
    private const string NeutralText = "-";

    /// <summary>Up to the first entry whose row cannot be read: whether the rows go upwards is not known after it.</summary>
    public Sequence<RowWords> RowWords(MemberReader document) =>
        Items(document, "rowWords", "words", RowWords).TakeWhile(words => words is not null).Select(words => words!).ToSequence();

    public Sequence<Video> Videos(MemberReader document) => Items(document, "videos", "video", Video).ToSequence();

    public Sequence<Photo> Photos(MemberReader document) => Items(document, "photos", "photo", Photo).ToSequence();

    public Limits? Limits(MemberReader document)
    {
        if (document.Find("limits", required: false) is null or JsonWord { IsNull: true }
            || document.Object("limits", required: true) is not { } json)
        {
            return null;
        }

        var members = new MemberReader(json, problems, "threads", "length");
        return new Limits(
            members.Has("threads") ? members.Whole("threads") ?? 1 : null,
            members.Has("length") ? Length(members.Object("length", required: true)) : null);
    }

    private List<T> Items<T>(MemberReader document, string name, string one, Func<MemberReader, int, T> item)
    {
        var made = new List<T>();
        if (document.Has(name) && document.Array(name, required: true) is { } json)
        {
            foreach (var (index, value) in json.Items.Index())
            {
                var entry = document.Typed<JsonObject>(value, one, "an object in braces");
                made.Add(item(entry is null ? Blank(value) : Members(entry, name), index));
            }
        }

        return made;
    }

    private MemberReader Members(JsonObject entry, string name) => name switch
    {
        "rowWords" => new MemberReader(entry, problems, "row", "text"),
        "videos" => new MemberReader(entry, problems, "address", "caption", "row"),
        _ => new MemberReader(entry, problems, "hash", "caption", "row"),
    };

    // what is missing in something that is no object was said already
    private static MemberReader Blank(JsonValue value) => new(new JsonObject([], value.Place), new FileProblems());

    private static RowWords? RowWords(MemberReader members, int index)
    {
        var row = members.Whole("row");
        var text = members.Text("text", null);
        return row is { } number ? new RowWords(number, text) : null;
    }

    private static Video Video(MemberReader members, int index) => new(
        members.Find<JsonText>("address", required: true, "a text in quotation marks")?.Value ?? NeutralAddress,
        members.Find<JsonText>("caption", required: true, "a text in quotation marks")?.Value ?? NeutralText,
        Row(members));

    private static Photo Photo(MemberReader members, int index) => new(
        members.Find<JsonText>("hash", required: true, "a text in quotation marks")?.Value ?? Neutral(index),
        members.Find<JsonText>("caption", required: true, "a text in quotation marks")?.Value ?? NeutralText,
        Row(members));

    private static string Neutral(int index) => Plain.Number(index).PadLeft(64, '0');

    private static int? Row(MemberReader members) => members.Has("row") ? members.Whole("row") ?? 1 : null;

    private Length Length(JsonObject? json)
    {
        if (json is null)
        {
            return new Length(1, LengthUnit.Inch);
        }

        var members = new MemberReader(json, problems, "amount", "unit");
        return new Length(members.Amount(), members.Word<LengthUnit>("unit", FormWords.Lengths, null) ?? LengthUnit.Inch);
    }
}
