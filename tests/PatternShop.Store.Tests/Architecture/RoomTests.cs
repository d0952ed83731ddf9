using System.Reflection;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Store.Tests;

public sealed class RoomTests
{
    [Fact]
    public void The_store_knows_neither_print_nor_the_web() => Assert.Empty(Rooms.Faults("PatternShop.Store", References()));

    [Fact]
    public void Print_would_be_seen() =>
        Assert.Equal(["PatternShop.Store must not know PatternShop.Print"], Rooms.Faults("PatternShop.Store", [.. References(), "PatternShop.Print"]));

    private static IEnumerable<string> References() =>
        Assembly.Load("PatternShop.Store").GetReferencedAssemblies().Select(name => name.Name!);
}
