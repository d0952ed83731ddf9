using PatternShop.Weave;

namespace PatternShop.Tests.Shared;

/// <summary>
/// Directions in a language that is none: its words have only the letters z, q, k and i. Whatever else turns up where it is passed in
/// came from elsewhere.
/// </summary>
public sealed class OtherWords() : Wording("zq")
{
    public override string Name(Stroke stroke) => stroke == Stroke.Over ? "ziq" : "kiz";

    public override string Name(Side side) => side == Side.Left ? "zik" : "qiz";

    public override string ShortName(Stroke stroke) => stroke == Stroke.Over ? "z" : "k";

    public override string ShortLegend => "z = ziq, k = kiz";

    public override string RunText(Run run) => $"{Number(run.Count)} {Name(run.Stroke)}";

    public override string Heading(Side from) => from == Side.Left ? "zik →" : "← qiz";

    public override string PlainHeading(Side from) => Name(from);

    public override string SpokenNumber(int value) => Number(value);

    public override string SpokenTimes(int count) => Number(count) + " ziz";

    public override string PartName(MotifPart part) => "qik";

    public override string PlaceForm => "zi {number} / {all}";

    public override string PlaceAgainForm => "zi {within} / {each} · {time} / {times} ({number} / {all})";

    public override string BracketForm => "{time} / {times}";

    public override string InnerBracketForm => ", {time} / {times}";

    public override string EndsForm => "qi: {run}";

    public override string TurnForm => "zik {number}, {from}";

    public override string DoneForm => "{all} kik.";

    public override string ReportRowForm => "kik {number}";

    public override string RowWordsMark => "kizi";

    public override string SourceName(WovenRow row) => "iz";

    public override string RowName(WovenRow row) => "zi";

    public override string WeftName(Piece piece, int weft) => "";

    public override string SameAs(Piece piece, int number) => piece.SameReadingBefore(number) is { } earlier ? $"qiq {Number(earlier)}" : "";

    public override string WrittenRow(Piece piece, int number) => $"{Number(number)} {DirectionsText(piece.Reading(number))}";

    protected override string SpokenBracket => "qiki {times}: ";

    protected override string SpokenInnerBracket => "qikik {times}: ";

    protected override string SpokenAfter => "; zizi ";

    protected override string SpokenInnerAfter => "; ziziz ";
}
