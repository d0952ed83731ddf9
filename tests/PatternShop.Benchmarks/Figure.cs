namespace PatternShop.Benchmarks;

/// <summary>Something else than the time of a method, measured on the running program.</summary>
/// <param name="Class">What it belongs to, in words; as with measured cases.</param>
/// <param name="What">What was measured.</param>
/// <param name="Value">How much.</param>
/// <param name="Unit">Of what.</param>
/// <param name="Samples">From how many samples.</param>
/// <param name="Run">The run that measured it, by its number in the list of runs.</param>
internal sealed record Figure(string Class, string What, double Value, string Unit, int Samples, int Run = 0)
{
    /// <summary>The value that 95 of 100 samples do not exceed.</summary>
    public static double P95(IEnumerable<double> samples)
    {
        var sorted = samples.Order().ToList();
        return sorted[(int)Math.Ceiling(0.95 * sorted.Count) - 1];
    }
}
