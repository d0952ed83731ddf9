namespace PatternShop.Weave;

/// <summary>
/// Follows the sides at which the wefts of a piece lie while it is woven. Edge stitches between the last row woven and the next one count as
/// worked, because the next row starts where they have taken its weft.
/// </summary>
internal sealed class WeftSides(Piece piece)
{
    private readonly Side?[] _sides = new Side?[piece.Document.Rows.Wefts.Count];
    private int _rows;
    private int _stitches;

    /// <summary>Weaves on until so many rows are woven; it never goes back. All the way takes time in the order of all rows and stitches.</summary>
    /// <param name="woven">From 0 to the number of rows.</param>
    public void WeaveTo(int woven)
    {
        WorkStitches();
        while (_rows < woven)
        {
            var row = piece.Rows[_rows++];
            _sides[row.Weft - 1] = row.To;
            WorkStitches();
        }
    }

    /// <summary>The side at which a weft lies after the last row or stitch worked with it; null while nothing has been.</summary>
    /// <param name="weft">Number of the weft, from 1; the piece need not have one of that number.</param>
    public Side? Of(int weft) => weft <= _sides.Length ? _sides[weft - 1] : null;

    private void WorkStitches()
    {
        for (; _stitches < piece.Stitches.Count && piece.Stitches[_stitches].AfterRow == _rows; _stitches++)
        {
            if (piece.Stitches[_stitches] is { Stitch: { Yarn: StitchYarn.Working, Weft: var weft } } stitch)
            {
                _sides[weft - 1] = stitch.To;
            }
        }
    }
}
