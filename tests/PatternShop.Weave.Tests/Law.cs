using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>Tries a law on generated documents of every kind that matters.</summary>
internal static class Law
{
    // So often a generator is asked again for a kind of which chance gave too few.
    private const int MostDraws = 10;

    /// <summary>Checks a law on documents that differ from run to run; every kind that matters is at least one case in twenty.</summary>
    public static void OfDocuments(Action<PatternDocument> law, int small = 1_000, int full = 50_000) =>
        OfDocuments(DocumentGen.Documents, law, small, full);

    public static void OfDocuments(Gen<PatternDocument> documents, Action<PatternDocument> law, int small, int full)
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var cases = Effort.Of(small, full);
        documents.Sample(document => Try(law, document, met), iter: cases);
        foreach (var (kind, belongs) in DocumentTraits.All)
        {
            for (var draw = 0; draw < MostDraws && IsShort(kind, met, cases); draw++)
            {
                documents.Sample(document => _ = !belongs(document) || Try(law, document, met), iter: cases);
            }
        }

        AssertShares(DocumentTraits.All.Keys, met, cases);
    }

    /// <summary>The same on documents that are the same in every run, for a law that counts what it met.</summary>
    public static void OfFixedDocuments(Action<PatternDocument> law, int small = 1_000, int full = 50_000)
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var cases = Effort.Of(small, full);
        DocumentGen.Documents.SampleFixed(document => _ = Try(law, document, met), cases);
        AssertShares(DocumentTraits.All.Keys, met, cases);
    }

    /// <summary>Fails for every kind that is less than one case in twenty.</summary>
    public static void AssertShares(IEnumerable<string> kinds, IReadOnlyDictionary<string, int> met, int cases) =>
        Assert.All(kinds, kind => Assert.False(IsShort(kind, met, cases), $"{kind}: {met.GetValueOrDefault(kind)} of {cases} cases"));

    /// <summary>Some generated document on which a check fails: shows that the check can. The documents are the same in every run.</summary>
    public static void CanFail(Action<PatternDocument> check, int within = 200)
    {
        var failures = 0;
        DocumentGen.Documents.SampleFixed(
            document =>
            {
                try
                {
                    check(document);
                }
                catch (Xunit.Sdk.XunitException)
                {
                    Interlocked.Increment(ref failures);
                }
            },
            within);
        Assert.NotEqual(0, failures);
    }

    private static bool Try(Action<PatternDocument> law, PatternDocument document, ConcurrentDictionary<string, int> met)
    {
        foreach (var (kind, belongs) in DocumentTraits.All)
        {
            _ = belongs(document) && met.AddOrUpdate(kind, 1, (_, count) => count + 1) > 0;
        }

        law(document);
        return true;
    }

    private static bool IsShort(string kind, IReadOnlyDictionary<string, int> met, int cases) => met.GetValueOrDefault(kind) * 20 < cases;
}
