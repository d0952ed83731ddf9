using System.Collections.Concurrent;
using CsCheck;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>The tools of the laws can themselves fail.</summary>
public sealed class LawTests
{
    [Fact]
    public void A_kind_that_is_less_than_one_case_in_twenty_fails()
    {
        var met = new Dictionary<string, int>(StringComparer.Ordinal) { ["enough"] = 5, ["few"] = 4 };
        Law.AssertShares(["enough"], met, 100);
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => Law.AssertShares(["enough", "few"], met, 100));
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => Law.AssertShares(["never"], met, 100));
    }

    [Fact]
    public void A_broken_law_fails_and_a_law_that_always_holds_cannot_show_that_it_can() =>
        Assert.All(
            new Action[] { () => Law.OfDocuments(document => Assert.Equal(0, document.Width.Offset), 200, 200), () => Law.CanFail(document => Assert.NotNull(document)) },
            wrong => Assert.ThrowsAny<Exception>(wrong));

    /// <summary>Where chance gives too few documents of a kind, the law is tried on more of them; where there are none, it fails.</summary>
    [Fact]
    public void A_kind_that_chance_made_rare_is_made_up_for()
    {
        var without = DocumentGen.Documents.Select(document => document with { Videos = [] });
        var seen = 0;
        Law.OfDocuments(
            Gen.Frequency((1, DocumentGen.Documents.Where(document => document.Videos.Count > 0)), (60, without)),
            document => Interlocked.Add(ref seen, Math.Sign(document.Videos.Count)),
            400,
            400);
        Assert.True(seen >= 20, $"{seen} of 400");
        Assert.ThrowsAny<Xunit.Sdk.XunitException>(() => Law.OfDocuments(without, _ => { }, 100, 100));
    }

    [Fact]
    public void Fixed_cases_are_the_same_again_and_a_law_that_fails_for_one_of_them_fails()
    {
        var (once, again) = (new ConcurrentBag<PatternDocument>(), new ConcurrentBag<PatternDocument>());
        DocumentGen.Documents.SampleFixed(once.Add, 50);
        DocumentGen.Documents.SampleFixed(again.Add, 50);
        Assert.Equal(once.ToHashSet(), again.ToHashSet());
        Assert.Equal(50, once.Distinct().Count());
        var one = once.First();
        Assert.ThrowsAny<AggregateException>(() => DocumentGen.Documents.SampleFixed(document => Assert.NotEqual(one, document), 50));
    }
}
