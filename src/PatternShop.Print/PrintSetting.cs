namespace PatternShop.Print;

/// <summary>How sheets are set: the lettering, the smallest cells, the ink. A fixed list.</summary>
public sealed record PrintSetting
{
    private PrintSetting(string name) => Name = name;

    /// <summary>For reading at arm's length.</summary>
    public static PrintSetting Standard { get; } = new("standard");

    /// <summary>No letter smaller than 18 points, no cell smaller than 6.35 mm, which is the same.</summary>
    public static PrintSetting LargePrint { get; } = new("large print");

    /// <summary>As standard, with light cells and without the picture of the cloth.</summary>
    public static PrintSetting InkSaving { get; } = new("ink-saving");

    /// <summary>Every setting.</summary>
    public static IReadOnlyList<PrintSetting> All { get; } = [Standard, LargePrint, InkSaving];

    /// <summary>What it is called.</summary>
    public string Name { get; }
}
