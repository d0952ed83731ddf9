using System.Reflection;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Print.Tests;

public sealed class RoomTests
{
    [Fact]
    public void Print_knows_neither_the_store_nor_the_web() => Assert.Empty(Rooms.Faults("PatternShop.Print", References()));

    [Fact]
    public void The_store_would_be_seen() =>
        Assert.Equal(["PatternShop.Print must not know PatternShop.Store"], Rooms.Faults("PatternShop.Print", [.. References(), "PatternShop.Store"]));

    private static IEnumerable<string> References() =>
        Assembly.Load("PatternShop.Print").GetReferencedAssemblies().Select(name => name.Name!);
}
