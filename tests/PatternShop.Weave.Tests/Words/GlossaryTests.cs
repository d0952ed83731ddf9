using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>The glossary says what the engine does.</summary>
public sealed class GlossaryTests
{
    [Fact]
    public void Brackets_are_as_deep_as_the_engine_writes_them()
    {
        var entry = File.ReadLines(Path.Combine(Checkout.Top, "src", "PatternShop.Weave", "GLOSSARY.md")).Single(line => line.StartsWith("| writing |", StringComparison.Ordinal));
        Assert.Contains(ShortestWriting.Levels switch { 1 => "brackets, one level deep", 2 => "brackets, at most two levels deep", var more => $"brackets, {more} levels deep" }, entry, StringComparison.Ordinal);

        // a row that is shortest with a bracket in a bracket
        Run[] twice = [new(Stroke.Under, 1), new(Stroke.Over, 1), new(Stroke.Under, 1), new(Stroke.Over, 1), new(Stroke.Under, 1), new(Stroke.Over, 3)];
        var writing = ShortestWriting.Of([.. twice, .. twice, .. twice], 9);
        Assert.Equal("[[u1o1]×2u1o3]×3", Charts.Short(writing));
    }
}
