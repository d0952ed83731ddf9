using System.Globalization;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace PatternShop.Web;

/// <summary>How many connections the server takes at once, so that files and memory are left for its work. One more is closed at once.</summary>
internal static class ConnectionLimits
{
    private const int Most = 2000;

    /// <summary>File handles of the program itself, most of them its libraries: 333 were counted in a server that nobody asks anything.</summary>
    private const int Own = 400;

    /// <summary>A connection is one handle; while it is answered, the database takes up to three more.</summary>
    private const int Each = 4;

    private const int Fewest = 10;

    public static void Apply(KestrelServerLimits limits)
    {
        var connections = Of(OpenFiles());
        limits.MaxConcurrentConnections = connections;
        limits.MaxConcurrentUpgradedConnections = connections / 2;
    }

    public static int Of(long openFiles) => (int)Math.Clamp((openFiles - Own) / Each, Fewest, Most);

    // the limit is read where the kernel shows it; elsewhere the most is taken
    private static long OpenFiles()
    {
        const string limits = "/proc/self/limits";
        const string name = "Max open files";
        var line = File.Exists(limits) ? File.ReadLines(limits).FirstOrDefault(line => line.StartsWith(name, StringComparison.Ordinal)) : null;
        var soft = line?[name.Length..].Split(' ', StringSplitOptions.RemoveEmptyEntries).FirstOrDefault();
        return long.TryParse(soft, NumberStyles.None, CultureInfo.InvariantCulture, out var files) ? files : long.MaxValue;
    }
}
