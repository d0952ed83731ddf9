namespace PatternShop.Weave;

/// <summary>Makes thicknesses and colours from their tree; each member may be left out.</summary>
internal sealed class ClothBinder(FileProblems problems)
{
    public ClothLook Bind(MemberReader document)
    {
        if (document.Find("cloth", required: false) is null or JsonWord { IsNull: true }
            || document.Object("cloth", required: true) is not { } json)
        {
            return ClothLook.Plain;
        }

        var members = new MemberReader(json, problems, "colours", "warp", "wefts", "ends", "rows");
        var own = Own(members);
        return new ClothLook(
            members.Has("warp") ? Look(members.Object("warp", required: true)) : YarnLook.Plain,
            Items(members, "wefts").Select(item => Look(members.Typed<JsonObject>(item, "weft", "an object in braces"))).ToSequence(),
            Order(members, "ends"),
            Order(members, "rows"),
            own);
    }

    private static Sequence<JsonValue> Items(MemberReader members, string name) =>
        members.Has(name) ? members.Array(name, required: true)?.Items ?? [] : [];

    private Sequence<OwnColour> Own(MemberReader cloth) => Items(cloth, "colours")
        .Index()
        .Select(item => cloth.Typed<JsonObject>(item.Item, "colour", "an object in braces") is { } json ? Own(json, item.Index) : Neutral(item.Index))
        .ToSequence();

    private OwnColour Own(JsonObject json, int index)
    {
        var members = new MemberReader(json, problems, "name", "value");
        var name = members.Find<JsonText>("name", required: true, "a text in quotation marks");
        var value = members.Find<JsonText>("value", required: true, "a text in quotation marks");
        var shown = value is null ? default(Rgb) : Rgb.Read(value.Value);
        if (shown is null)
        {
            problems.Add(
                ProblemCodes.ColourValue,
                value!.Place,
                $"{Plain.Quote(value.Value)} does not say how the colour is shown.",
                "Write # and six digits of 0–9 and a–f, two each for red, green and blue, such as \"#3a6b7e\".");
        }

        return new OwnColour(name is null ? Neutral(index).Name : NamedColours.Written(name.Value), shown ?? default);
    }

    // keeps every rule, and no name that is written
    private static OwnColour Neutral(int index) => new($"colour {Plain.Number(index)}", default);

    private YarnLook Look(JsonObject? json)
    {
        if (json is null)
        {
            return YarnLook.Plain;
        }

        var members = new MemberReader(json, problems, "thickness", "colour");
        return new YarnLook(
            members.Has("thickness") ? Thickness(members.Object("thickness", required: true)) : null,
            members.Has("colour") && members.Find<JsonText>("colour", required: true, "a text in quotation marks") is { } colour ? NamedColours.Written(colour.Value) : null);
    }

    private Thickness? Thickness(JsonObject? json)
    {
        if (json is null)
        {
            return null;
        }

        var members = new MemberReader(json, problems, "amount", "unit");
        return new Thickness(members.Amount(), members.Word<ThicknessUnit>("unit", FormWords.Thicknesses, null) ?? ThicknessUnit.Millimetres);
    }

    private Sequence<ColourRun> Order(MemberReader cloth, string name)
    {
        if (!cloth.Has(name) || cloth.Find<JsonText>(name, required: true, "a text in quotation marks") is not { } text)
        {
            return [];
        }

        var order = ColourOrder.Read(text.Value);
        if (order.What is { } what)
        {
            problems.Add(ProblemCodes.ColourOrder, text.Place, what, order.Remedy);
        }

        return order.Runs;
    }
}
