using System.Buffers;
using System.Buffers.Text;
using PatternShop.Weave;

namespace PatternShop.Print;

/// <summary>
/// What is painted on a page, as the operators of ISO 32000-1, 8 and 9. Lengths come in millimetres from the top left corner and are written
/// in points from the bottom left one, to a thousandth. What is set already is not set again.
/// </summary>
internal sealed class PageContent
{
    private const double PointsPerMillimetre = 72 / 25.4;

    // Letters without a bold font are outlined by this part of their size; TextPiece leaves as much room after each.
    private const double Thickening = 0.02;

    // From so many lines on it is worth while to write them alike.
    private const int Many = 8;

    private readonly ArrayBufferWriter<byte> _out = new(1 << 16);
    private double _height;
    private double _fill;
    private double _stroke;
    private double _width;
    private bool _thickened;
    private (string Name, double Points) _font;

    /// <summary>What was painted since the page began.</summary>
    public ReadOnlySpan<byte> Bytes => _out.WrittenSpan;

    /// <summary>Begins an empty page.</summary>
    /// <param name="height">Height of the paper in millimetres.</param>
    public void Clear(double height)
    {
        _out.Clear();
        (_height, _fill, _stroke, _width, _thickened, _font) = (height, 0, 0, PointsPerMillimetre, false, ("", 0));
        // a setting of the device is no setting
        Number(_width);
        Put("w\n"u8);
    }

    public void BeginDecoration() => Put("/Artifact BMC\n"u8);

    public void BeginMarked(string name, int number)
    {
        Put("/"u8);
        Put(name);
        Put("<</MCID "u8);
        Integer(number);
        Put(">>BDC\n"u8);
    }

    public void EndMarked() => Put("EMC\n"u8);

    /// <summary>Closed outlines, filled together.</summary>
    public void Fill(AreaMark area)
    {
        if (area.Outlines.Count == 0)
        {
            return;
        }

        if (area.Colour is { } colour)
        {
            FillWith(colour);
        }
        else
        {
            FillWith(area.Grey);
        }

        if (CellRows.Of(area) is { } rows)
        {
            FillRows(area, rows);
            return;
        }

        foreach (var outline in area.Outlines)
        {
            Outline(area.X, area.Y, outline);
        }

        Put("f\n"u8);
    }

    // In units of a cell, each row from its own place: short numbers, and rows alike are written alike, which packs well.
    private void FillRows(AreaMark area, CellRows rows)
    {
        var unit = rows.Unit * PointsPerMillimetre;
        Put("q\n"u8);
        Precise(unit);
        Put("0 0 -"u8);
        Precise(unit);
        Precise((area.X + rows.Left) * PointsPerMillimetre);
        Precise((_height - area.Y - rows.Top) * PointsPerMillimetre);
        Put("cm\n"u8);
        var top = rows.Top;
        foreach (var outline in area.Outlines)
        {
            var (first, last) = (outline[0], outline[2]);
            if (Math.Abs(first.Y - top) > CellRows.Exactness)
            {
                Put("f\n"u8);
                Move(0, (first.Y - top) / rows.Unit);
                top = first.Y;
            }

            Number((first.X - rows.Left) / rows.Unit);
            Put("0 "u8);
            Number((last.X - first.X) / rows.Unit);
            Number((last.Y - first.Y) / rows.Unit);
            Put("re\n"u8);
        }

        Put("f\nQ\n"u8);
    }

    // Many lines that are as long and as far from each other: each from the place of the one before, so that all are written alike.
    private void StrokeLike(StrokeMark stroke, int first, int count)
    {
        var from = stroke.Lines[first][0];
        Put("q\n"u8);
        Move((stroke.X + from.X) * PointsPerMillimetre, (_height - stroke.Y - from.Y) * PointsPerMillimetre);
        for (var i = first; i < first + count; i++)
        {
            var line = stroke.Lines[i];
            if (i > first)
            {
                Move((line[0].X - stroke.Lines[i - 1][0].X) * PointsPerMillimetre, (stroke.Lines[i - 1][0].Y - line[0].Y) * PointsPerMillimetre);
            }

            Put("0 0 m\n"u8);
            Number((line[1].X - line[0].X) * PointsPerMillimetre);
            Number((line[0].Y - line[1].Y) * PointsPerMillimetre);
            Put("l S\n"u8);
        }

        Put("Q\n"u8);
    }

    // How many lines from one on go as far in the same direction.
    private static int Alike(StrokeMark stroke, int first)
    {
        var count = 0;
        while (first + count < stroke.Lines.Count && stroke.Lines[first + count] is { Count: 2 } line && SameWay(stroke.Lines[first], line))
        {
            count++;
        }

        return count;

        static bool SameWay(Sequence<Spot> a, Sequence<Spot> b) =>
            Math.Abs(a[1].X - a[0].X - b[1].X + b[0].X) < CellRows.Exactness && Math.Abs(a[1].Y - a[0].Y - b[1].Y + b[0].Y) < CellRows.Exactness;
    }

    /// <summary>Lines through points.</summary>
    public void Stroke(StrokeMark stroke)
    {
        if (stroke.Lines.Count == 0)
        {
            return;
        }

        StrokeWith(stroke.Grey, stroke.Width * PointsPerMillimetre);
        var plain = false;
        for (var i = 0; i < stroke.Lines.Count; i++)
        {
            if (stroke.Closed)
            {
                Outline(stroke.X, stroke.Y, stroke.Lines[i]);
            }
            else if (!plain && Alike(stroke, i) is var alike and >= Many)
            {
                StrokeLike(stroke, i, alike);
                i += alike - 1;
                continue;
            }
            else
            {
                Line(stroke.X, stroke.Y, stroke.Lines[i]);
            }

            // a path that is begun is painted before anything moves
            plain = true;
        }

        Put(plain ? "S\n"u8 : ""u8);
    }

    /// <summary>Words in a font that the page calls by a name.</summary>
    public void Text(TextMark text, string font)
    {
        var face = text.Piece.Face ?? throw new InvalidOperationException("A piece without a font is drawn, not written.");
        FillWith(text.Style.Grey);
        Put("BT\n"u8);
        if (_font != (font, text.Style.Points))
        {
            Put("/"u8);
            Put(font);
            Put(" "u8);
            Number(text.Style.Points);
            Put("Tf\n"u8);
            _font = (font, text.Style.Points);
        }

        Thicken(text.Piece.Thickened, text.Style);
        Number(text.X * PointsPerMillimetre);
        Number((_height - text.Y) * PointsPerMillimetre);
        Put("Td\n<"u8);
        foreach (var character in text.Piece.Text.EnumerateRunes())
        {
            Glyph(face.Font.Glyphs[character.Value]);
        }

        Put(">Tj\nET\n"u8);
    }

    private void Thicken(bool thickened, TextStyle style)
    {
        if (thickened)
        {
            StrokeWith(style.Grey, style.Points * Thickening);
            Number(style.Points * Thickening);
            Put("Tc 2 Tr\n"u8);
        }
        else if (_thickened)
        {
            Put("0 Tc 0 Tr\n"u8);
        }

        _thickened = thickened;
    }

    private void FillWith(double grey)
    {
        if (grey != _fill)
        {
            Number(_fill = grey);
            Put("g\n"u8);
        }
    }

    // no grey is like a colour: the next one is set anew
    private void FillWith(Rgb colour)
    {
        Number(colour.Red / 255d);
        Number(colour.Green / 255d);
        Number(colour.Blue / 255d);
        Put("rg\n"u8);
        _fill = double.NaN;
    }

    private void StrokeWith(double grey, double width)
    {
        if (grey != _stroke)
        {
            Number(_stroke = grey);
            Put("G\n"u8);
        }

        if (width != _width)
        {
            Number(_width = width);
            Put("w\n"u8);
        }
    }

    private void Outline(double x, double y, Sequence<Spot> spots)
    {
        if (CellRows.IsUpright(spots))
        {
            Number((x + spots[0].X) * PointsPerMillimetre);
            Number((_height - y - spots[2].Y) * PointsPerMillimetre);
            Number((spots[1].X - spots[0].X) * PointsPerMillimetre);
            Number((spots[2].Y - spots[0].Y) * PointsPerMillimetre);
            Put("re\n"u8);
            return;
        }

        Line(x, y, spots);
        Put("h\n"u8);
    }

    private void Line(double x, double y, Sequence<Spot> spots)
    {
        for (var i = 0; i < spots.Count; i++)
        {
            Number((x + spots[i].X) * PointsPerMillimetre);
            Number((_height - y - spots[i].Y) * PointsPerMillimetre);
            Put(i == 0 ? "m\n"u8 : "l\n"u8);
        }
    }

    private void Move(double x, double y)
    {
        Put("1 0 0 1 "u8);
        Precise(x);
        Precise(y);
        Put("cm\n"u8);
    }

    // A number and a space; thousandths at the most, without zeros at the end.
    private void Number(double value) => Number(value, 1000);

    // What is added up many times is written to a millionth.
    private void Precise(double value) => Number(value, 1_000_000);

    private void Number(double value, int parts)
    {
        var all = (long)Math.Round(value * parts);
        var room = _out.GetSpan(40);
        var at = 0;
        if (all < 0)
        {
            room[at++] = (byte)'-';
            all = -all;
        }

        var (whole, rest) = Math.DivRem(all, parts);
        if (whole > 0 || rest == 0)
        {
            Utf8Formatter.TryFormat(whole, room[at..], out var written);
            at += written;
        }

        if (rest > 0)
        {
            room[at++] = (byte)'.';
            for (var part = parts / 10; rest > 0; part /= 10)
            {
                (var digit, rest) = Math.DivRem(rest, part);
                room[at++] = (byte)('0' + digit);
            }
        }

        room[at++] = (byte)' ';
        _out.Advance(at);
    }

    private void Integer(int value)
    {
        Utf8Formatter.TryFormat(value, _out.GetSpan(16), out var written);
        _out.Advance(written);
    }

    private void Glyph(ushort glyph)
    {
        Utf8Formatter.TryFormat(glyph, _out.GetSpan(8), out var written, new StandardFormat('X', 4));
        _out.Advance(written);
    }

    private void Put(ReadOnlySpan<byte> bytes) => _out.Write(bytes);

    private void Put(string text) => _out.Advance(System.Text.Encoding.ASCII.GetBytes(text, _out.GetSpan(text.Length)));
}
