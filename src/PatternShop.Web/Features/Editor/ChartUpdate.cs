using System.Buffers.Binary;
using System.Text.Json.Serialization;
using PatternShop.Weave;

namespace PatternShop.Web;

/// <summary>What the server tells the script of a window. Rows and ends count from 0; the names are those of the script.</summary>
/// <param name="Revision">Where the pattern stands.</param>
/// <param name="Motif">The whole motif, where rows alone would not do.</param>
/// <param name="Rows">Rows of the motif that are other than the window thinks.</param>
/// <param name="Settled">What became of strokes of the window.</param>
/// <param name="Piece">The whole piece, when the plan changed.</param>
/// <param name="Bars">Whether cells are drawn as bars.</param>
internal sealed record ChartUpdate(
    long Revision,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] MotifCells? Motif,
    IReadOnlyList<RowCells> Rows,
    IReadOnlyList<SettledStroke> Settled,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] PieceIndex? Piece,
    bool Bars);

/// <summary>All cells of a motif, rows after one another, each packed into bytes (lowest bit leftmost), in base 64.</summary>
internal sealed record MotifCells(int Rows, int Ends, string Cells)
{
    public static MotifCells Of(BitGrid motif)
    {
        var bytes = new byte[motif.Rows * RowCells.BytesOf(motif)];
        for (var row = 0; row < motif.Rows; row++)
        {
            RowCells.Pack(motif, row, bytes.AsSpan(row * RowCells.BytesOf(motif)));
        }

        return new MotifCells(motif.Rows, motif.Columns, Convert.ToBase64String(bytes));
    }
}

/// <summary>One row of a motif, packed like <see cref="MotifCells"/>.</summary>
internal sealed record RowCells(int Row, string Cells)
{
    public static RowCells Of(BitGrid motif, int row)
    {
        var bytes = new byte[BytesOf(motif)];
        Pack(motif, row, bytes);
        return new RowCells(row, Convert.ToBase64String(bytes));
    }

    public static int BytesOf(BitGrid motif) => (motif.Columns + 7) / 8;

    public static void Pack(BitGrid motif, int row, Span<byte> into)
    {
        Span<byte> word = stackalloc byte[sizeof(ulong)];
        var words = motif.RowWords(row);
        for (var at = 0; at < BytesOf(motif); at++)
        {
            if (at % sizeof(ulong) == 0)
            {
                BinaryPrimitives.WriteUInt64LittleEndian(word, words[at / sizeof(ulong)]);
            }

            into[at] = word[at % sizeof(ulong)];
        }
    }
}

/// <summary>What became of a stroke, in the words of the script: saved, had, refused, early, unsaved or signedOut.</summary>
/// <param name="Words">Why it was refused.</param>
internal sealed record SettledStroke(string Client, long Sequence, string Outcome, string Words)
{
    public static SettledStroke Of(string client, long sequence, Acknowledgement acknowledgement) => acknowledgement switch
    {
        Acknowledgement.Saved => new(client, sequence, "saved", ""),
        Acknowledgement.HadAlready => new(client, sequence, "had", ""),
        Acknowledgement.Early => new(client, sequence, "early", ""),
        Acknowledgement.SignedOut => new(client, sequence, "signedOut", ""),
        Acknowledgement.Refused refused => new(client, sequence, "refused", string.Join(' ', refused.Problems.Select(problem => $"{problem.What} {problem.Remedy}"))),
        Acknowledgement.Gone => new(client, sequence, "refused", "The pattern was deleted."),
        _ => new(client, sequence, "unsaved", ""),
    };
}
