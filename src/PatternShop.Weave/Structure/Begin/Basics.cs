namespace PatternShop.Weave;

/// <summary>Which threads lie long.</summary>
public enum Floating
{
    /// <summary>The wefts pass several ends at once.</summary>
    Wefts,

    /// <summary>The ends pass several rows at once.</summary>
    Ends,
}

/// <summary>Plain weave and what is made of it by doubling threads.</summary>
public static class Basics
{
    private const int Most = 100;

    /// <summary>Plain weave, two ends by two rows; end 1 is under the weft in row 1.</summary>
    public static BitGrid Plain { get; } = GridText.Read("x.", ".x");

    /// <summary>Basket a/b: plain weave of a and b threads in turn, both ways; (a + b) ends by (a + b) rows.</summary>
    public static WeaveResult Basket(int a, int b) =>
        Check(a, b) ?? new WeaveResult.Made(BitGrid.Create(a + b, a + b, (row, end) => (row < a) == (end < a)));

    /// <summary>
    /// Rib a/b: plain weave in which one set of threads lies over a and under b of the other. With long wefts it is (a + b) ends by
    /// two rows, with long ends two ends by (a + b) rows.
    /// </summary>
    public static WeaveResult Rib(int a, int b, Floating floating) =>
        Check(a, b) ?? new WeaveResult.Made(floating == Floating.Wefts
            ? BitGrid.Create(2, a + b, (row, end) => (row == 0) == (end < a))
            : BitGrid.Create(a + b, 2, (row, end) => (row < a) == (end == 0)));

    private static WeaveResult? Check(int a, int b)
    {
        foreach (var (name, value) in new[] { ("a", a), ("b", b) })
        {
            if (value is < 1 or > Most)
            {
                return WeaveResult.Refuse("weave-count", name, $"{value} threads together are not possible.", $"Choose a number from 1 to {Most}.");
            }
        }

        return null;
    }
}
