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

        foreach (var outline in area.Outlines)
        {
            Outline(area.X, area.Y, outline);
        }

        Put("f\n"u8);
    }

    /// <summary>Lines through points.</summary>
    public void Stroke(StrokeMark stroke)
    {
        if (stroke.Lines.Count == 0)
        {
            return;
        }

        StrokeWith(stroke.Grey, stroke.Width * PointsPerMillimetre);
        foreach (var line in stroke.Lines)
        {
            if (stroke.Closed)
            {
                Outline(stroke.X, stroke.Y, line);
            }
            else
            {
                Line(stroke.X, stroke.Y, line);
            }
        }

        Put("S\n"u8);
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
        // an upright rectangle, from its top left corner clockwise
        if (spots.Count == 4 && spots[0].Y == spots[1].Y && spots[1].X == spots[2].X && spots[2].Y == spots[3].Y && spots[3].X == spots[0].X)
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

    // A number and a space; thousandths at the most, without zeros at the end.
    private void Number(double value)
    {
        var thousandths = (long)Math.Round(value * 1000);
        var room = _out.GetSpan(32);
        var at = 0;
        if (thousandths < 0)
        {
            room[at++] = (byte)'-';
            thousandths = -thousandths;
        }

        var (whole, rest) = Math.DivRem(thousandths, 1000);
        if (whole > 0 || rest == 0)
        {
            Utf8Formatter.TryFormat(whole, room[at..], out var written);
            at += written;
        }

        if (rest > 0)
        {
            room[at++] = (byte)'.';
            for (var part = 100; rest > 0; part /= 10)
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
