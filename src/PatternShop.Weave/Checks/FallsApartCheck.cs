namespace PatternShop.Weave;

/// <summary>Cloth that falls apart into layers though every thread interlaces.</summary>
/// <param name="Weight">A caution where plain rows are woven too, which may hold the layers together; else a fault.</param>
/// <param name="Layer">The threads that lift off.</param>
public sealed record LayersApart(Weight Weight, Layer Layer, Sequence<Area> Areas)
    : Finding(CheckKind.FallsApart, Weight, Layer.Rows.Count + Layer.Ends.Count, Areas)
{
    /// <summary>Threads of a kind that the layer names at most.</summary>
    public const int MostThreads = MostAreas;
}

/// <summary>
/// Judges the motif repeated without end, without floating selvedges and turns. A layer of rows alone or of ends alone is
/// left to <see cref="LooseThreadsCheck"/>.
/// </summary>
internal static class FallsApartCheck
{
    public static IEnumerable<Finding> Of(Piece piece)
    {
        var motif = piece.Document.Motif;
        if (WovenChart.Any(piece) && HangsTogether.LooseLayer(motif) is { } layer && IsLayer(layer, motif))
        {
            var areas = ThreadAreas.MotifRows(motif, layer.Rows).Take(Finding.MostAreas / 2).Concat(ThreadAreas.MotifEnds(motif, layer.Ends));
            yield return new LayersApart(WovenChart.HasPlain(piece) ? Weight.Caution : Weight.Fault, layer, areas.Bounded());
        }
    }

    // every thread of one kind and none of the other leaves threads of one kind alone as the rest
    private static bool IsLayer(Layer layer, BitGrid motif) =>
        layer.Rows.Count > 0 && layer.Ends.Count > 0
        && !(layer.Rows.Count == motif.Rows || layer.Ends.Count == motif.Columns);
}
