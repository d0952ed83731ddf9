using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>The ways to begin that the list names.</summary>
internal enum WeaveWay
{
    Plain,
    Basket,
    RibOfWefts,
    RibOfEnds,
    Twill,
    BrokenTwill,
    Point,
    Herringbone,
    Diamond,
    Satin,
    WrittenRows,
    Cells,
}

/// <summary>A weave to begin from, with all that can be chosen of it; a way uses only some.</summary>
/// <param name="Way">Which weave.</param>
/// <param name="First">Threads together, of a basket or a rib.</param>
/// <param name="Second">The threads after them.</param>
/// <param name="Numbers">Over and under in turn, of a twill.</param>
/// <param name="Step">Ends by which a twill moves on in each row.</param>
/// <param name="Rises">The side to which its diagonals rise.</param>
/// <param name="Turn">How a diamond turns.</param>
/// <param name="Ends">Ends of a satin.</param>
/// <param name="Move">Ends from one binding point to the next.</param>
/// <param name="Face">Which threads make its face.</param>
internal sealed record BegunWeave(
    WeaveWay Way = WeaveWay.Plain,
    int First = 2,
    int Second = 2,
    string Numbers = "2/2",
    int Step = 1,
    Side Rises = Side.Right,
    PointWay Turn = PointWay.Shared,
    int Ends = 5,
    int Move = 2,
    SatinFace Face = SatinFace.Warp)
{
    /// <summary>Text that was written elsewhere.</summary>
    public BegunText Text { get; init; } = new();

    public bool HasText => Way is WeaveWay.WrittenRows or WeaveWay.Cells;

    public bool HasThreads => Way is WeaveWay.Basket or WeaveWay.RibOfWefts or WeaveWay.RibOfEnds;

    public bool HasNumbers => Way is WeaveWay.Twill or WeaveWay.BrokenTwill or WeaveWay.Point or WeaveWay.Herringbone or WeaveWay.Diamond;

    public bool HasTurn => Way is WeaveWay.Point or WeaveWay.Diamond;

    public WeaveResult Make() => Way switch
    {
        WeaveWay.Plain => new WeaveResult.Made(Basics.Plain),
        WeaveWay.Basket => Basics.Basket(First, Second),
        WeaveWay.RibOfWefts => Basics.Rib(First, Second, Floating.Wefts),
        WeaveWay.RibOfEnds => Basics.Rib(First, Second, Floating.Ends),
        WeaveWay.Satin => Satins.Regular(Ends, Move, Face),
        WeaveWay.WrittenRows => Text.MakeRows(),
        WeaveWay.Cells => Text.MakeCells(),
        _ => Twills.Regular(Numbers, Step, Rises) is WeaveResult.Made twill ? new WeaveResult.Made(Of(twill.Motif)) : Twills.Regular(Numbers, Step, Rises),
    };

    private BitGrid Of(BitGrid twill) => Way switch
    {
        WeaveWay.BrokenTwill => Twills.Broken(twill),
        WeaveWay.Point => Twills.Point(twill, Turn),
        WeaveWay.Herringbone => Twills.Herringbone(twill),
        WeaveWay.Diamond => Twills.Diamond(twill, Turn),
        _ => twill,
    };
}
