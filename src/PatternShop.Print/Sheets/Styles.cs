namespace PatternShop.Print;

/// <summary>The few ways in which words are set on sheets.</summary>
internal sealed record Styles(
    TextStyle Title,
    TextStyle Heading,
    TextStyle Subheading,
    TextStyle Body,
    TextStyle Strong,
    TextStyle Quiet,
    TextStyle Begin,
    TextStyle Directions,
    TextStyle RowNumber,
    TextStyle Tick,
    TextStyle Footer)
{
    public static Styles Standard { get; } = new(
        Title: new(25, true, Leading: 1.15),
        Heading: new(15, true, Leading: 1.25),
        Subheading: new(12, true),
        Body: new(11),
        Strong: new(11, true),
        Quiet: new(10, false, 0.3),
        Begin: new(13, true, Leading: 1.3),
        Directions: new(13, Leading: 1.4),
        RowNumber: new(13, true, Leading: 1.4),
        Tick: new(8.5, false, 0.4),
        Footer: new(9, false, 0.3, 1.25));

    /// <summary>Where rows stand in two columns.</summary>
    public static Styles Narrow { get; } = Standard with
    {
        Title = new(23, true, Leading: 1.1),
        Heading = new(13.5, true, Leading: 1.2),
        Body = new(10.5, Leading: 1.28),
        Strong = new(10.5, true, Leading: 1.28),
        Quiet = new(9.5, false, 0.3, 1.25),
        Begin = new(12.5, true, Leading: 1.25),
        Directions = new(12, Leading: 1.28),
        RowNumber = new(12, true, Leading: 1.28),
    };

    /// <summary>Where even two columns are long.</summary>
    public static Styles Small { get; } = Narrow with
    {
        Directions = new(11, Leading: 1.25),
        RowNumber = new(11, true, Leading: 1.25),
    };

    /// <summary>The smallest size of written rows, in points: letters of 2.4 mm, which are read at arm's length.</summary>
    public const double Floor = 10;

    /// <summary>The smallest in which anybody has to weave.</summary>
    public static Styles Smallest { get; } = new(
        Title: new(20, true, Leading: 1.1),
        Heading: new(12.5, true, Leading: 1.2),
        Subheading: new(11, true, Leading: 1.2),
        Body: new(9.5, Leading: 1.24),
        Strong: new(9.5, true, Leading: 1.24),
        Quiet: new(8.5, false, 0.3, 1.2),
        Begin: new(12, true, Leading: 1.2),
        Directions: new(Floor, Leading: 1.2),
        RowNumber: new(Floor, true, Leading: 1.2),
        Tick: new(7.5, false, 0.4),
        Footer: new(9, false, 0.3, 1.25));

    /// <summary>Where rows stand in the short form.</summary>
    public static Styles InShort { get; } = Smallest with { Title = new(18, true, Leading: 1.1), Heading = new(11.5, true, Leading: 1.2), Begin = new(11.5, true, Leading: 1.2) };

    /// <summary>No size below 18 points.</summary>
    public static Styles Large { get; } = new(
        Title: new(30, true, Leading: 1.15),
        Heading: new(22, true, Leading: 1.25),
        Subheading: new(19, true),
        Body: new(18, Leading: 1.3),
        Strong: new(18, true, Leading: 1.3),
        Quiet: new(18, false, 0.25, 1.3),
        Begin: new(20, true, Leading: 1.3),
        Directions: new(20, Leading: 1.35),
        RowNumber: new(20, true, Leading: 1.35),
        Tick: new(18, false, 0.3),
        Footer: new(18, false, 0.25, 1.2));
}
