namespace PatternShop.Weave;

public partial class Wording
{
    /// <summary>The warp count with its arithmetic: "2 × 10 = 20, + 1 balance end, + 2 floating selvedges = 23 ends".</summary>
    public string WarpArithmetic(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var (motif, width) = (piece.Document.Motif.Columns, piece.Document.Width);
        var parts = new List<string> { $"{Number(width.Repeats)} × {Number(motif)} = {Number(width.Repeats * motif)}" };
        AddExtras(parts, piece, "+ ");
        return parts.Count == 1 ? $"{parts[0]} {(piece.Ends == 1 ? "end" : "ends")}" : $"{string.Join(", ", parts)} = {Count(piece.Ends, "end", "ends")}";
    }

    /// <summary>The counting rule for ends: "a multiple of 10, plus 1, plus 2 floating selvedges".</summary>
    public string EndsRule(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var parts = new List<string> { $"a multiple of {Number(piece.Document.Motif.Columns)}" };
        if (piece.Document.Width.Balance > 0)
        {
            parts.Add($"plus {Number(piece.Document.Width.Balance)}");
        }

        if (piece.FloatingPerSide > 0)
        {
            parts.Add("plus 2 floating selvedges");
        }

        return string.Join(", ", parts);
    }

    /// <summary>The counting rule for rows: "a multiple of 10, plus 2 closing rows"; the plain count where rows are repeated not at all or in several groups.</summary>
    public string RowsRule(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var repeated = piece.Bands.Where(band => band.Kind == BandKind.Repeated).ToList();
        if (repeated.Count != 1)
        {
            return Rows(piece.Rows.Count);
        }

        var before = piece.Bands.Where(band => band.Kind == BandKind.Once).Sum(band => band.Rows);
        var closing = piece.Bands.Where(band => band.Kind == BandKind.Closing).Sum(band => band.Rows);
        return string.Join(", ", new[]
        {
            $"a multiple of {Number(repeated[0].RowsEachTime)}",
            before > 0 ? $"plus {Count(before, "row", "rows")} before" : "",
            closing > 0 ? $"plus {Count(closing, "closing row", "closing rows")}" : "",
        }.Where(part => part.Length > 0));
    }

    /// <summary>The row count with its arithmetic: "2 × 10 + 2 closing rows = 22 rows".</summary>
    public string RowArithmetic(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var parts = piece.Bands.Select(band => band.Kind switch
        {
            BandKind.Repeated => $"{Number(band.Times)} × {Number(band.RowsEachTime)}",
            BandKind.Closing => Count(band.Rows, "closing row", "closing rows"),
            _ => Rows(band.Rows),
        }).ToList();
        return parts.Count == 1 && piece.Bands[0].Kind != BandKind.Repeated
            ? parts[0]
            : $"{string.Join(" + ", parts)} = {Rows(piece.Rows.Count)}";
    }

    /// <summary>Sett and width on the loom.</summary>
    public string WidthText(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return $"{DensityOf("ends", piece.Document.Gauge.Sett)}; width on the loom {LengthBoth(piece.WidthOnLoom())}";
    }

    /// <summary>Row count, row density and woven length.</summary>
    public string LengthText(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return $"{RowArithmetic(piece)}; {DensityOf("rows", piece.Document.Gauge.Rows)}; woven length {LengthBoth(piece.WovenLength())}";
    }

    /// <summary>Where the pattern begins: empty for offset 0.</summary>
    public string OffsetText(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var offset = piece.Document.Width.Offset;
        return offset == 0 ? "" : $"The first pattern end is end {Number(offset + 1)} of the motif.";
    }

    /// <summary>How the floating selvedges go, in a sentence.</summary>
    public string EdgesText(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        if (piece.Document.Width.Floating is not { } floating)
        {
            return "No floating selvedges.";
        }

        var first = Name(floating.First);
        var other = Name(floating.First.Other());
        var each = piece.UsedWefts.Count == 1 ? "" : " Each weft keeps its own count.";
        return floating.Edges == EdgeWay.Alike
            ? $"Floating selvedges (F): go {first} both in the first row, {other} both in the next, and so on in turn.{each}"
            : $"Floating selvedges (F): go {first} the one you enter by and {other} the one you leave by, in every row.";
    }

    /// <summary>Where the first row starts, and where every other weft does: "Row 1, at the bottom of the chart, starts at the right."</summary>
    public string StartText(Piece piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        var others = piece.Rows.DistinctBy(row => row.Weft).Skip(1)
            .Select(row => $" Weft {Number(row.Weft)} starts in row {Number(row.Number)}, at the {Name(row.From)}.");
        return $"Row 1, at the bottom of the chart, starts at the {Name(piece.Rows[0].From)}.{string.Concat(others)}";
    }

    private void AddExtras(List<string> parts, Piece piece, string sign)
    {
        if (piece.Document.Width.Balance > 0)
        {
            parts.Add(sign + Count(piece.Document.Width.Balance, "balance end", "balance ends"));
        }

        if (piece.FloatingPerSide > 0)
        {
            parts.Add(sign + "2 floating selvedges");
        }
    }
}
