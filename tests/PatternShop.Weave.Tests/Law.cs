using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>Tries a law on generated documents and fails when a kind of document was hardly among them.</summary>
internal static class Law
{
    /// <summary>Checks a law on documents; every kind that matters is at least one case in twenty.</summary>
    public static void OfDocuments(Action<PatternDocument> law, int small = 1_000, int full = 50_000) =>
        OfDocuments(DocumentGen.Documents, law, small, full);

    public static void OfDocuments(Gen<PatternDocument> documents, Action<PatternDocument> law, int small, int full)
    {
        var met = new ConcurrentDictionary<string, int>(StringComparer.Ordinal);
        var cases = 0;
        documents.Sample(
            document =>
            {
                Interlocked.Increment(ref cases);
                foreach (var kind in DocumentTraits.All.Where(kind => kind.Value(document)))
                {
                    met.AddOrUpdate(kind.Key, 1, (_, count) => count + 1);
                }

                law(document);
            },
            iter: Effort.Of(small, full));
        AssertShares(DocumentTraits.All.Keys, met, cases);
    }

    /// <summary>Fails for every kind that is less than one case in twenty.</summary>
    public static void AssertShares(IEnumerable<string> kinds, IReadOnlyDictionary<string, int> met, int cases) =>
        Assert.All(kinds, kind => Assert.True(met.GetValueOrDefault(kind) * 20 >= cases, $"{kind}: {met.GetValueOrDefault(kind)} of {cases} cases"));

    /// <summary>Some generated document on which a check fails: shows that the check can.</summary>
    public static void CanFail(Action<PatternDocument> check, int within = 200)
    {
        var failures = 0;
        DocumentGen.Documents.Sample(
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
            iter: within);
        Assert.NotEqual(0, failures);
    }
}
