using System.Globalization;
using CsCheck;

namespace PatternShop.Tests.Shared;

/// <summary>
/// Tries a law on the same generated cases in every run. For laws that also count what was among their cases: what is rare would now and then
/// be missing from cases that differ from run to run.
/// </summary>
public static class FixedCases
{
    /// <summary>What all fixed cases begin from. PATTERNSHOP_SEED sets another number, for a search among other cases; what is counted then is up to chance.</summary>
    public static int Seed { get; } = int.TryParse(Environment.GetEnvironmentVariable("PATTERNSHOP_SEED"), CultureInfo.InvariantCulture, out var seed) ? seed : 20_261_126;

    /// <summary>The seed of one fixed case, from 0, as CsCheck writes it.</summary>
    public static string SeedOf(int at) => new PCG((uint)at, (ulong)Seed).ToString();

    /// <summary>Tries a law on the first so many fixed cases, several at once. A failure names the seed of its case.</summary>
    /// <exception cref="AggregateException">The law fails for some of them.</exception>
    public static void SampleFixed<T>(this Gen<T> cases, Action<T> law, int count) =>
        Parallel.For(0, count, at => cases.Sample(law, seed: SeedOf(at), iter: 1, threads: 1));

    public static void SampleFixed<T1, T2>(this Gen<(T1, T2)> cases, Action<T1, T2> law, int count) =>
        cases.SampleFixed(both => law(both.Item1, both.Item2), count);
}
