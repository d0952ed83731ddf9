using System.Text.Json;
using System.Text.Json.Serialization;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>Which cloth a reader weaves: the pattern, its version (0 for what is not issued) and the newest version that there is.</summary>
public sealed record WeaveCopy(string Pattern, int Version, int Newest)
{
    /// <summary>Where to look for whoever is in the middle of another version; null for what is not issued.</summary>
    public WeaveVersions? Versions { get; init; }

    /// <summary>Where readers report mistakes in it; null where they cannot.</summary>
    public string? Report { get; init; }

    /// <summary>What is asked about a row that was lost.</summary>
    public LostQuery Lost { get; init; } = LostQuery.None;
}

/// <summary>The versions of a pattern, for whoever moves from one to another; names in braces stand for numbers.</summary>
/// <param name="Newest">The newest one in words.</param>
/// <param name="Along">Where to weave along with version {number}.</param>
/// <param name="Moves">Where to look up the moves from version {from} to version {to}.</param>
public sealed record WeaveVersions(string Newest, string Along, string Moves);

/// <summary>
/// What the page hands to its script. Every distinct reading stands once; the rows of each band say which they read. A reading is
/// written as its side (l or r) and its items in the direction of travel: "ru1[o1u2]3o1" is, from the right, under 1, three times
/// over 1 and under 2, over 1; a bracket may stand in another.
/// </summary>
/// <param name="Pattern">The pattern's id, or the name of a sample.</param>
/// <param name="Version">The version; 0 for what is not issued.</param>
/// <param name="Newest">The newest version.</param>
/// <param name="Versions">Where to look for whoever is in the middle of another version; null for what is not issued.</param>
/// <param name="Ends">All ends, floating ones included.</param>
/// <param name="Floating">Floating ends a side.</param>
/// <param name="Rows">All rows of the piece.</param>
/// <param name="Readings">The distinct readings.</param>
/// <param name="Notes">What is said beside rows, each text once; the first is empty.</param>
/// <param name="Bands">Rows once through, times through, and for every printed row its reading and its note.</param>
/// <param name="StitchTexts">What is said of edge stitches, each text once.</param>
/// <param name="Stitches">Edge stitches in order: rows woven before, text, side (0 left, 1 right).</param>
/// <param name="Words">Words and forms.</param>
internal sealed record WeaveData(
    string Pattern,
    int Version,
    int Newest,
    WeaveVersions? Versions,
    int Ends,
    int Floating,
    int Rows,
    IReadOnlyList<string> Readings,
    IReadOnlyList<string> Notes,
    IReadOnlyList<WeaveBand> Bands,
    IReadOnlyList<string> StitchTexts,
    IReadOnlyList<int[]> Stitches,
    WeaveWords Words,
    MoveWords? MoveWords)
{
    /// <summary>The names of the wefts; left out where there is only one.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? Wefts { get; init; }

    /// <summary>What the maker says and shows at rows, each once; left out where they say nothing.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<WeaveOwn>? Own { get; init; }

    // its default escapes what could end a script element
    private static readonly JsonSerializerOptions Form = new(JsonSerializerDefaults.Web) { DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull };

    public static WeaveData Of(Piece piece, WeaveCopy copy, Wording wording)
    {
        var (readings, notes, wefts, stitchTexts) = (new Once(), new Once(), new Once(), new Once());
        notes.At("");
        var own = new List<WeaveOwn>();
        var bands = piece.Bands.Select(band =>
        {
            var numbers = Enumerable.Range(band.FirstRow, band.PrintedRows).ToList();
            return new WeaveBand(
                band.RowsEachTime,
                band.Times,
                [.. numbers.Select(number => readings.At(Short(piece.Reading(number))))],
                [.. numbers.Select(number => notes.At(wording.PlaceSource(piece, number)))])
            {
                Wefts = HasWefts(piece) ? [.. numbers.Select(number => wefts.At(wording.WeftName(piece, piece.Rows[number - 1].Weft)))] : null,
                Own = HasOwn(piece) ? [.. numbers.Select(number => OwnPlace(own, WeaveOwn.Of(piece.OwnAt(number))))] : null,
            };
        }).ToList();
        var stitches = piece.Stitches.Select(stitch => new[] { stitch.AfterRow, stitchTexts.At(wording.StitchText(piece, stitch)), stitch.From == Side.Left ? 0 : 1 }).ToList();
        return new WeaveData(
            copy.Pattern, copy.Version, copy.Newest, copy.Versions, piece.Ends, piece.FloatingPerSide, piece.Rows.Count,
            readings.Texts, notes.Texts, bands, stitchTexts.Texts, stitches,
            WeaveWords.Of(wording), copy.Versions is null ? null : Web.MoveWords.Of(wording))
        {
            Wefts = HasWefts(piece) ? wefts.Texts : null,
            Own = HasOwn(piece) ? own : null,
        };
    }

    private static bool HasWefts(Piece piece) => piece.UsedWefts.Count > 1;

    private static bool HasOwn(Piece piece) => piece.Document.RowWords.Count > 0 || piece.Document.Videos.Any(video => video.Row is not null);

    private static int OwnPlace(List<WeaveOwn> known, WeaveOwn own)
    {
        var place = known.IndexOf(own);
        if (place < 0)
        {
            place = known.Count;
            known.Add(own);
        }

        return place;
    }

    public string Json() => JsonSerializer.Serialize(this, Form);

    private static string Short(Reading reading) => (reading.Key.From == Side.Left ? "l" : "r") + string.Concat(reading.Writing.Items.Select(Short));

    private static string Short(WritingItem item) => item switch
    {
        RunItem run => Short(run.Run),
        BracketItem bracket => FormattableString.Invariant($"[{string.Concat(bracket.Items.Select(Short))}]{bracket.Times}"),
        _ => throw new InvalidOperationException(item.GetType().Name),
    };

    private static string Short(Run run) => FormattableString.Invariant($"{(run.Stroke == Stroke.Over ? 'o' : 'u')}{run.Count}");

    /// <summary>Texts in the order in which they first come, each once.</summary>
    private sealed class Once
    {
        private readonly Dictionary<string, int> _places = new(StringComparer.Ordinal);

        public List<string> Texts { get; } = [];

        public int At(string text)
        {
            if (!_places.TryGetValue(text, out var place))
            {
                place = _places[text] = Texts.Count;
                Texts.Add(text);
            }

            return place;
        }
    }
}

/// <summary>Rows that belong together: so many once through, so many times; for every printed row its reading and its note.</summary>
internal sealed record WeaveBand(int Each, int Times, IReadOnlyList<int> Readings, IReadOnlyList<int> Notes)
{
    /// <summary>For every printed row its weft, by its place in the list of names; left out where there is only one.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<int>? Wefts { get; init; }

    /// <summary>For every printed row what the maker says there, by its place in the list; left out where they say nothing anywhere.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<int>? Own { get; init; }
}

/// <summary>What the maker says and shows at a row.</summary>
internal sealed record WeaveOwn(string Text, Sequence<WeaveVideo> Videos)
{
    public static WeaveOwn Of(RowOwn own) => new(own.Words, own.Videos.Select(video => new WeaveVideo(video.Caption, video.Host, video.Address)).ToSequence());
}

/// <summary>A link to a video.</summary>
internal sealed record WeaveVideo(string Caption, string Host, string Address);

/// <summary>The words that the script puts together; names in braces stand for what it fills in.</summary>
internal sealed record WeaveWords(
    string Language, string Over, string Under, string FromLeft, string FromRight, string Place, string PlaceAgain, string Bracket, string InnerBracket, string Ends, string Turn, string Done, string Own,
    string Report)
{
    public static WeaveWords Of(Wording words) => new(
        words.Language, words.Name(Stroke.Over), words.Name(Stroke.Under), words.PlainHeading(Side.Left), words.PlainHeading(Side.Right),
        words.PlaceForm, words.PlaceAgainForm, words.BracketForm, words.InnerBracketForm, words.EndsForm, words.TurnForm, words.DoneForm, words.RowWordsMark,
        words.ReportRowForm);
}

/// <summary>The words for whoever is in the middle of an earlier version; names in braces stand for what the script fills in.</summary>
internal sealed record MoveWords(
    string Woven, string GoOn, string Done, string Side, string Left, string Right, string Middle, string Passed, string ToCome, string None,
    string Row, string Rows, string More, string IsNew, string IsGone, string Before, string Now, string Move, string Stay, string Anew)
{
    public static MoveWords Of(Wording words) => new(
        words.WovenOfForm, words.GoOnForm, words.DoneHereForm, words.SideForm, words.Name(Weave.Side.Left), words.Name(Weave.Side.Right), words.MiddleForm,
        words.PassedLabel, words.ToComeLabel, words.NoChangeText, words.ChangedRowForm, words.ChangedRowsForm, words.MoreRowsForm, words.IsNewText, words.IsGoneText,
        words.BeforeLabel, words.NowLabel, words.MoveForm, words.StayForm, words.AnewForm);
}
