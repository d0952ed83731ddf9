using CsCheck;

namespace PatternShop.Tests.Shared;

/// <summary>
/// Tries a law on the same generated cases in every run. For laws that also count what was among their cases: what is rare would now and then
/// be missing from cases that differ from run to run.
/// </summary>
public static class FixedCases
{
    private const ulong Seed = 20_26;

    /// <summary>Tries a law on the first so many of the fixed cases, several at once. A failure names the seed of its case, for <c>Sample</c> to shrink.</summary>
    /// <exception cref="AggregateException">The law fails for some of them.</exception>
    public static void SampleFixed<T>(this Gen<T> cases, Action<T> law, int count) =>
        Parallel.For(0, count, at => cases.Sample(law, seed: new PCG((uint)at, Seed).ToString(), iter: 1, threads: 1));

    public static void SampleFixed<T1, T2>(this Gen<(T1 First, T2 Second)> cases, Action<T1, T2> law, int count) =>
        cases.SampleFixed(both => law(both.First, both.Second), count);
}
