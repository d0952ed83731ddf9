namespace PatternShop.Weave;

/// <summary>Fills in the cells of every distinct reading over all ends of the piece.</summary>
internal static class ReadingCells
{
    public static BitGrid Fill(Piece piece)
    {
        var perRow = (piece.Ends + 63) >> 6;
        var words = new ulong[perRow * piece.Keys.Count];
        for (var reading = 0; reading < piece.Keys.Count; reading++)
        {
            var key = piece.Keys[reading];
            var row = words.AsSpan(reading * perRow, perRow);
            if (key.LeftFloating == Stroke.Over)
            {
                Set(row, 0);
            }

            if (key.RightFloating == Stroke.Over)
            {
                Set(row, piece.Ends - 1);
            }

            if (key.Source.Kind == RowKind.Plain)
            {
                FillPlain(piece, row, firstEndOver: key.Source.Index == 1);
            }
            else
            {
                FillChart(piece, row, key.Source.Index);
            }
        }

        return BitGrid.FromWords(piece.Keys.Count, piece.Ends, words);
    }

    private static void FillPlain(Piece piece, Span<ulong> row, bool firstEndOver)
    {
        for (var end = firstEndOver ? 0 : 1; end < piece.PatternEnds; end += 2)
        {
            Set(row, end + piece.FloatingPerSide);
        }
    }

    private static void FillChart(Piece piece, Span<ulong> row, int chartRow)
    {
        var motif = piece.Document.Motif;
        var source = motif.RowWords(chartRow);
        for (int end = 0, at = piece.Document.Width.Offset; end < piece.PatternEnds; end++)
        {
            if ((source[at >> 6] >> (at & 63) & 1) != 0)
            {
                Set(row, end + piece.FloatingPerSide);
            }

            at = at + 1 == motif.Columns ? 0 : at + 1;
        }
    }

    private static void Set(Span<ulong> row, int column) => row[column >> 6] |= 1UL << (column & 63);
}
