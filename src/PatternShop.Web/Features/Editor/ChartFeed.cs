using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>A stroke that was answered, as the feed needs it.</summary>
internal sealed record AnsweredStroke(SettledStroke Settled, SetCells? Stroke);

/// <summary>Knows what the script of one window has, and says what it lacks. Updates must reach it in order.</summary>
internal sealed class ChartFeed(Wording wording)
{
    private BitGrid? _known;
    private (WidthPlan Width, RowPlan Rows, int MotifRows, int MotifEnds)? _plan;

    public Wording Wording { get; } = wording;

    /// <summary>The client that the window calls itself; its own strokes are in its picture before they are settled.</summary>
    public string Client { get; set; } = "";

    /// <summary>Everything, for a window that has nothing or may have missed something.</summary>
    public ChartUpdate Whole(PatternView view, IReadOnlyList<AnsweredStroke> answers)
    {
        (_known, _plan) = (null, null);
        return Next(view, answers);
    }

    /// <summary>What the window lacks of the present state when it has heard of the answers.</summary>
    public ChartUpdate Next(PatternView view, IReadOnlyList<AnsweredStroke> answers)
    {
        foreach (var answer in answers)
        {
            Echo(answer);
        }

        var motif = view.Document.Motif;
        var sameSize = (_known?.Rows, _known?.Columns) == (motif.Rows, motif.Columns);
        var rows = sameSize ? Differing(_known!, motif) : [];
        _known = motif;
        return new ChartUpdate(
            view.Revision,
            sameSize ? null : MotifCells.Of(motif),
            rows,
            [.. answers.Select(answer => answer.Settled)],
            Piece(view),
            view.Document.Glyphs == GlyphStyle.Bars);
    }

    // the window takes its own strokes as confirmed when it hears that they are saved
    private void Echo(AnsweredStroke answer)
    {
        if (answer is { Settled.Outcome: "saved", Stroke: { } stroke }
            && answer.Settled.Client == Client
            && (stroke.Cells.Rows, stroke.Cells.Columns) == (_known?.Rows, _known?.Columns))
        {
            _known = _known!.With(stroke.Cells, stroke.Over);
        }
    }

    private PieceIndex? Piece(PatternView view)
    {
        var document = view.Document;
        var plan = (document.Width, document.Rows, document.Motif.Rows, document.Motif.Columns);
        if (_plan == plan)
        {
            return null;
        }

        _plan = plan;
        return PieceIndex.Of(view.Piece, Wording);
    }

    private static List<RowCells> Differing(BitGrid known, BitGrid now)
    {
        var rows = new List<RowCells>();
        for (var row = 0; row < now.Rows; row++)
        {
            if (!known.RowWords(row).SequenceEqual(now.RowWords(row)))
            {
                rows.Add(RowCells.Of(now, row));
            }
        }

        return rows;
    }
}
