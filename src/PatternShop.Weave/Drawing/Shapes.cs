namespace PatternShop.Weave;

/// <summary>The few tones that charts are made of; all of them survive a photocopier.</summary>
public enum Shade
{
    /// <summary>Paper.</summary>
    White,

    /// <summary>Guide lines.</summary>
    Light,

    /// <summary>Brackets and secondary numbers.</summary>
    Middle,

    /// <summary>Over cells.</summary>
    Dark,

    /// <summary>Text, frames and under lines.</summary>
    Black,
}

/// <summary>Which point of a text stands at its position.</summary>
public enum TextAnchor
{
    Start,
    Middle,
    End,
}

/// <summary>A plain shape. All measures in millimetres, x to the right and y downwards from the top left corner.</summary>
public abstract record Shape;

/// <summary>A filled rectangle.</summary>
public sealed record Box(double X, double Y, double Width, double Height, Shade Shade) : Shape;

/// <summary>A straight line with flat ends.</summary>
public sealed record Line(double X1, double Y1, double X2, double Y2, double Thickness, Shade Shade) : Shape;

/// <summary>A stretch of thread: a filled rectangle around the line from (X1, Y1) to (X2, Y2), upright or level, Thickness across.</summary>
/// <param name="Colour">The colour of the yarn, which goes before the shade; null for the shade.</param>
public sealed record Strip(double X1, double Y1, double X2, double Y2, double Thickness, Shade Shade, Rgb? Colour) : Shape
{
    /// <summary>The colour on a screen: that of the yarn, or a tone of undyed yarn for the shade.</summary>
    public Rgb OnScreen => Colour ?? Shade switch
    {
        Shade.White => new(0xFB, 0xF8, 0xF2),
        Shade.Light => new(0xDD, 0xD2, 0xBF),
        Shade.Middle => new(0x6A, 0x5B, 0x4C),
        Shade.Dark => new(0x3A, 0x31, 0x29),
        _ => new(0x26, 0x22, 0x1D),
    };
}

/// <summary>A filled triangle.</summary>
public sealed record Triangle(double X1, double Y1, double X2, double Y2, double X3, double Y3, Shade Shade) : Shape;

/// <summary>A text on one line; Y is its base line, Size the height of its em.</summary>
public sealed record Label(double X, double Y, double Size, string Text, TextAnchor Anchor, bool Bold, Shade Shade) : Shape;

/// <summary>A drawing: its size and its shapes, painted in order.</summary>
public sealed record Drawing(double Width, double Height, Sequence<Shape> Shapes);
