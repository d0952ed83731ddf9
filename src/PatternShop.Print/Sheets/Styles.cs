namespace PatternShop.Print;

/// <summary>The few ways in which words are set on sheets.</summary>
internal static class Styles
{
    public static TextStyle Title { get; } = new(25, true, Leading: 1.15);

    public static TextStyle Heading { get; } = new(15, true, Leading: 1.25);

    public static TextStyle Subheading { get; } = new(12, true);

    public static TextStyle Body { get; } = new(11);

    public static TextStyle Strong { get; } = new(11, true);

    public static TextStyle Quiet { get; } = new(10.5, false, 0.35);

    public static TextStyle Directions { get; } = new(13, Leading: 1.4);

    public static TextStyle RowNumber { get; } = new(13, true, Leading: 1.4);

    public static TextStyle Footer { get; } = new(9, false, 0.35);
}
