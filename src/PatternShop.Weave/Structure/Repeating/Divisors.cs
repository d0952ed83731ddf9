namespace PatternShop.Weave;

/// <summary>Divisors of whole numbers.</summary>
internal static class Divisors
{
    /// <summary>The greatest number that divides both.</summary>
    public static int Greatest(int a, int b)
    {
        while (b != 0)
        {
            (a, b) = (b, a % b);
        }

        return a;
    }

    /// <summary>Every number that divides one above 0, ascending.</summary>
    public static IEnumerable<int> Of(int number) => Enumerable.Range(1, number).Where(divisor => number % divisor == 0);
}
