using System.Collections.Concurrent;
using System.Runtime.CompilerServices;

namespace PatternShop.Benchmarks;

/// <summary>How large the files are that the cases made; benchmarks run in this process, so that they can say it.</summary>
internal static class Made
{
    private static readonly ConcurrentDictionary<(string Class, string Method, string Size), int> Lengths = new();

    /// <summary>Keeps the length of what a case made, and hands it back.</summary>
    public static int Note(object benchmark, string size, int bytes, [CallerMemberName] string method = "")
    {
        // what is measured is a type made from the benchmark's
        for (var type = benchmark.GetType(); type is not null && type != typeof(object); type = type.BaseType)
        {
            Lengths[(type.Name, method, size)] = bytes;
        }

        return bytes;
    }

    /// <summary>Bytes that a case made; 0 where it said nothing.</summary>
    public static int By(Type type, string method, string size) => Lengths.GetValueOrDefault((type.Name, method, size));
}
