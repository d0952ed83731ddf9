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
}
