using System.Collections.Immutable;
using Xunit;

namespace PatternShop.Weave.Tests;

public sealed class ImmutabilityTests
{
    [Fact]
    public void Nothing_in_the_engine_changes_after_it_was_made_and_records_compare_by_value()
    {
        var types = ImmutabilityGuard.TypesToGuard(typeof(PatternDocument).Assembly);
        Assert.Contains(typeof(PatternDocument), types);
        Assert.Contains(typeof(Sequence<>), types);
        Assert.Empty(types.SelectMany(ImmutabilityGuard.Faults));
    }

    [Theory]
    [InlineData(typeof(WithSetter), "Amount can be set")]
    [InlineData(typeof(WithHiddenSetter), "Amount>k__BackingField can be assigned")]
    [InlineData(typeof(WithField), "Amount can be assigned")]
    [InlineData(typeof(WithPrivateField), "_amount can be assigned")]
    [InlineData(typeof(WithStaticField), "Amount can be assigned")]
    [InlineData(typeof(WithCapturedParameter), "can be assigned")]
    [InlineData(typeof(WithArray), "get_Rows gives out String[]")]
    [InlineData(typeof(WithArrayInside), "get_Rows gives out Sequence`1")]
    [InlineData(typeof(WithSharedArray), "Bytes gives out Byte[]")]
    [InlineData(typeof(WithList), "Rows gives out List`1")]
    [InlineData(typeof(WithReadOnlyFace), "get_Rows gives out IReadOnlyList`1")]
    [InlineData(typeof(WithOutArray), "Split gives out Int32[]&")]
    [InlineData(typeof(WithSpan), "Words gives out Span`1")]
    [InlineData(typeof(WithImmutableArray), "compares by reference (ImmutableArray`1)")]
    [InlineData(typeof(WithNestedImmutableArray), "compares by reference (Sequence`1)")]
    [InlineData(typeof(WithPlainClass), "compares by reference (WithoutFault)")]
    [InlineData(typeof(Unsealed), "neither sealed nor abstract")]
    public void The_guard_sees_what_is_wrong(Type type, string fault) =>
        Assert.Contains(ImmutabilityGuard.Faults(type), found => found.Contains(fault, StringComparison.Ordinal));

    [Theory]
    [InlineData(typeof(WithoutFault))]
    [InlineData(typeof(GoodRecord))]
    [InlineData(typeof(GoodBase))]
    [InlineData(typeof(GoodStruct))]
    [InlineData(typeof(MakesArrays))]
    [InlineData(typeof(Side))]
    public void The_guard_lets_pass_what_is_right(Type type) => Assert.Empty(ImmutabilityGuard.Faults(type));

    [Fact]
    public void Types_in_private_fields_are_guarded_too() =>
        Assert.Contains(typeof(WithPrivateField), ImmutabilityGuard.TypesToGuard(typeof(ImmutabilityTests).Assembly));

#pragma warning disable CA1051, CA1819, CA2211, CA1002, MA0069, CA1805, IDE0044, MA0016, CA1812, IDE0052, CA1852, CS0649, MA0143 // the faults are the point
    public sealed class HoldsPrivateField
    {
        private readonly WithPrivateField? _held = null;

        public bool Holds => _held is not null;
    }

    internal sealed class WithSetter
    {
        public int Amount { get; set; }
    }

    internal sealed class WithHiddenSetter
    {
        public int Amount { get; private set; }

        public void Grow() => Amount++;
    }

    internal sealed class WithField
    {
        public int Amount;
    }

    internal sealed class WithPrivateField
    {
        private int _amount;

        public int Next() => ++_amount;
    }

    internal static class WithStaticField
    {
        public static int Amount;
    }

    internal sealed class WithCapturedParameter(int amount)
    {
        public int Next() => ++amount;
    }

    internal sealed class WithArray
    {
        public string[] Rows { get; } = [];
    }

    internal sealed record WithArrayInside(Sequence<int[]> Rows);

    internal static class WithSharedArray
    {
        private static readonly byte[] Shared = [1];

        public static byte[] Bytes() => Shared;
    }

    internal sealed class WithList
    {
        public readonly List<int> Rows = [];
    }

    internal sealed class WithReadOnlyFace
    {
        public IReadOnlyList<int> Rows { get; } = [];
    }

    internal static class WithOutArray
    {
        public static void Split(out int[] parts) => parts = [];
    }

    internal static class WithSpan
    {
        public static Span<int> Words() => default;
    }

    internal sealed record WithImmutableArray(ImmutableArray<int> Rows);

    internal sealed record WithNestedImmutableArray(Sequence<ImmutableArray<int>> Rows);

    internal sealed record WithPlainClass(WithoutFault Inner);

    internal record Unsealed(int Amount);
#pragma warning restore CA1051, CA1819, CA2211, CA1002, MA0069, CA1805, IDE0044, MA0016, CA1812, IDE0052, CA1852, CS0649, MA0143

    internal sealed class WithoutFault
    {
        private readonly ulong[] _words = [1];

        public const int Most = 3;

        public static readonly WithoutFault Only = new();

        public int Count { get; init; } = 1;

        public ReadOnlySpan<ulong> Words => _words;

        public IEnumerable<int> Counts() => [Count];
    }

    internal static class MakesArrays
    {
        public static byte[] Bytes() => [1];
    }

    internal abstract record GoodBase(string Name);

    internal sealed record GoodRecord(Sequence<GoodBase> Steps, BitGrid Motif, int? Weft, (int Row, Side From) Turn, decimal Amount) : GoodBase("x");

    internal readonly record struct GoodStruct(int Row, Sequence<string> Words);
}
