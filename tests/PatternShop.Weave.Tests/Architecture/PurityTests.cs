using System.Reflection;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Weave.Tests;

/// <summary>The engine knows the base class library only, and of it nothing that reads or changes the world outside.</summary>
public sealed class PurityTests
{
    private static readonly string[] World =
    [
        "System.Console", "System.Random", "System.TimeProvider", "System.TimeZoneInfo", "System.AppContext",
        "System.Diagnostics.Stopwatch", "System.Diagnostics.Process", "System.Threading.Thread", "System.Threading.Tasks.Task",
        "System.IO.File", "System.IO.FileInfo", "System.IO.FileStream", "System.IO.Directory", "System.IO.DirectoryInfo", "System.IO.Path",
        "System.Security.Cryptography.RandomNumberGenerator",
    ];

    private static readonly string[] WorldSpaces = ["System.Environment.", "System.Net.", "System.Diagnostics.Tracing.", "System.Runtime.InteropServices.NativeLibrary"];

    // what the compiler writes into every iterator
    private const string Harmless = "System.Environment.get_CurrentManagedThreadId";

    private static Assembly Engine => typeof(PatternDocument).Assembly;

    [Fact]
    public void The_engine_refers_to_the_base_class_library_only() => Assert.Empty(Outsiders(Engine));

    [Fact]
    public void An_assembly_that_knows_more_is_seen()
    {
        var outsiders = Outsiders(typeof(PurityTests).Assembly);
        Assert.Contains("PatternShop.Weave", outsiders, StringComparer.Ordinal);
        Assert.Contains("CsCheck", outsiders, StringComparer.Ordinal);
    }

    [Fact]
    public void The_engine_is_no_friend_of_a_room_above_it() =>
        Assert.Empty(Rooms.Faults("PatternShop.Weave", Engine.GetReferencedAssemblies().Select(name => name.Name!)));

    [Fact]
    public void The_engine_touches_no_file_clock_console_or_network() => Assert.Empty(WorldIn(Engine));

    [Fact]
    public void An_assembly_that_touches_files_is_seen()
    {
        var world = WorldIn(typeof(PurityTests).Assembly);
        Assert.Contains("System.IO.File", world, StringComparer.Ordinal);
    }

    private static List<string> Outsiders(Assembly assembly)
    {
        var library = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        return
        [
            .. from name in assembly.GetReferencedAssemblies()
               where !File.Exists(Path.Combine(library, name.Name + ".dll"))
               select name.Name,
        ];
    }

    private static List<string> WorldIn(Assembly assembly) =>
        [.. TypeUse.Of(assembly.Location).Where(use => use != Harmless && (World.Contains(use) || WorldSpaces.Any(space => use.StartsWith(space, StringComparison.Ordinal))))];
}
