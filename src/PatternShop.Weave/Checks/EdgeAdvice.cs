namespace PatternShop.Weave;

/// <summary>One way of edges and start, with what it means for the piece.</summary>
/// <param name="Floating">How the floating selvedges go; null for none.</param>
/// <param name="Wefts">The sides at which the wefts start: as they are, or all the other way.</param>
/// <param name="Turns">Turns of the piece.</param>
/// <param name="NotWrapped">Those that nothing holds.</param>
/// <param name="Idle">Floating selvedges that are passed on one side in every row.</param>
/// <param name="EdgeFloat">Threads in the longest float that touches the outermost end of a side.</param>
/// <param name="Unlike">Repeated steps whose rows read otherwise every other time.</param>
/// <param name="Mirrored">Whether every row does the same from the left and from the right, floating selvedges included.</param>
/// <param name="Ends">Ends of the piece.</param>
/// <param name="IsPresent">Whether the document stands so.</param>
public sealed record EdgeOption(
    FloatingSelvedges? Floating,
    Sequence<Weft> Wefts,
    int Turns,
    int NotWrapped,
    int Idle,
    int EdgeFloat,
    int Unlike,
    bool Mirrored,
    int Ends,
    bool IsPresent)
{
    /// <summary>The edit that takes it.</summary>
    public SetEdges Edit => new(Floating, Wefts);

    /// <summary>Whether another way serves exactly as well.</summary>
    internal (int, int, int, int, bool, bool) Rank => (NotWrapped + Idle, Unlike, EdgeFloat, Mirrored ? 0 : 1, Floating is not null, !IsPresent);
}

/// <summary>Says which of the four ways of floating selvedges, or none, and which of the two starts serve best.</summary>
public static class EdgeAdvice
{
    private static readonly FloatingSelvedges?[] Ways =
    [
        new(EdgeWay.Alike, Stroke.Under), new(EdgeWay.Alike, Stroke.Over), new(EdgeWay.Entering, Stroke.Under), new(EdgeWay.Entering, Stroke.Over), null,
    ];

    /// <summary>
    /// All ten, the best first: every turn held and every floating end woven in, then repeated rows that read the same each time, then
    /// the shortest float at the edge, then left and right alike, then no ends more than needed, then as the document stands.
    /// </summary>
    public static Sequence<EdgeOption> Of(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var wefts = piece.Document.Rows.Wefts;
        return Of(piece, wefts, wefts.Select(weft => new Weft(weft.Start.Other())).ToSequence());
    }

    /// <summary>The same for some starts only.</summary>
    internal static Sequence<EdgeOption> Of(Piece piece, params Sequence<Weft>[] starts) =>
        (from start in starts
         from way in Ways
         select Option(piece, way, start))
        .OrderBy(option => option.Rank)
        .ToSequence();

    private static EdgeOption Option(Piece present, FloatingSelvedges? floating, Sequence<Weft> wefts)
    {
        var document = present.Document;
        var set = document with { Width = document.Width with { Floating = floating }, Rows = document.Rows with { Wefts = wefts } };
        var isPresent = set == document;
        var piece = isPresent ? present : Piece.Of(set);
        var turns = Turns.Of(piece).ToList();
        return new EdgeOption(
            floating,
            wefts,
            turns.Count,
            turns.Count(turn => !turn.Wrapped),
            IdleFloatingCheck.Of(piece).Count(),
            EdgeFloat(piece),
            RepeatsCheck.Of(piece).Count(),
            Mirroring.IsMirrored(piece),
            piece.Ends,
            isPresent);
    }

    private static int EdgeFloat(Piece piece)
    {
        var longest = Math.Max(AlongEdge(piece, 0), AlongEdge(piece, piece.Ends - 1));
        for (var reading = 0; reading < piece.Keys.Count; reading++)
        {
            longest = Math.Max(longest, Math.Max(FromEdge(piece, reading, 0, 1), FromEdge(piece, reading, piece.Ends - 1, -1)));
        }

        return longest;
    }

    // ends that a row passes on one side from the outermost inwards
    private static int FromEdge(Piece piece, int reading, int edge, int inwards)
    {
        var count = 1;
        while (count < piece.Ends && piece.Cells[reading, edge + (count * inwards)] == piece.Cells[reading, edge])
        {
            count++;
        }

        return count;
    }

    private static int AlongEdge(Piece piece, int column)
    {
        var (longest, stretch, over) = (0, 0, false);
        foreach (var row in piece.Rows)
        {
            var now = piece.Cells[row.Reading, column];
            stretch = now == over ? stretch + 1 : 1;
            over = now;
            longest = Math.Max(longest, stretch);
        }

        return longest;
    }
}
