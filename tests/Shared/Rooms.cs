namespace PatternShop.Tests.Shared;

/// <summary>Who may know whom: Web knows Print and Store, each of these knows Weave, and Weave knows nobody.</summary>
public static class Rooms
{
    private static readonly string[] Database = ["Microsoft.EntityFrameworkCore", "Microsoft.Data.Sqlite", "SQLitePCLRaw", "Npgsql"];

    private static readonly string[] WebHost = ["Microsoft.AspNetCore", "MudBlazor"];

    private static readonly Dictionary<string, Rule> Rules = new(StringComparer.Ordinal)
    {
        ["PatternShop.Weave"] = new([], [.. Database, .. WebHost, "Microsoft.Extensions", "PdfSharp", "QRCoder", "SkiaSharp"]),
        ["PatternShop.Print"] = new(["PatternShop.Weave"], [.. Database, .. WebHost]),
        ["PatternShop.Store"] = new(["PatternShop.Weave"], ["MudBlazor", "PdfSharp"]),
        ["PatternShop.Web"] = new(["PatternShop.Weave", "PatternShop.Print", "PatternShop.Store"], Database),
        ["PatternShop.Tests.Shared"] = new(["PatternShop.Weave"], [.. Database, .. WebHost]),
        ["PatternShop.Weave.Tests"] = new(["PatternShop.Weave", "PatternShop.Tests.Shared"], [.. Database, .. WebHost]),
        ["PatternShop.Print.Tests"] = new(["PatternShop.Weave", "PatternShop.Print", "PatternShop.Tests.Shared"], [.. Database, .. WebHost]),
        ["PatternShop.Store.Tests"] = new(["PatternShop.Weave", "PatternShop.Store", "PatternShop.Tests.Shared"], ["MudBlazor", "PdfSharp"]),
        ["PatternShop.Web.Tests"] = new(["PatternShop.Weave", "PatternShop.Print", "PatternShop.Store", "PatternShop.Web", "PatternShop.Tests.Shared"], []),
        ["PatternShop.Benchmarks"] = new(["PatternShop.Weave", "PatternShop.Print", "PatternShop.Store", "PatternShop.Tests.Shared"], WebHost),
        ["PatternShop.EndToEnd"] = new([], [.. Database, .. WebHost]),
    };

    /// <summary>The projects that there are rules for.</summary>
    public static IReadOnlyCollection<string> Names => Rules.Keys;

    /// <summary>What is wrong with what a project refers to (projects, packages or assemblies); empty when all is well.</summary>
    public static IReadOnlyList<string> Faults(string project, IEnumerable<string> references)
    {
        ArgumentNullException.ThrowIfNull(references);
        return Rules.TryGetValue(project, out var rule)
            ? [.. references.Where(rule.Forbids).Select(reference => $"{project} must not know {reference}")]
            : [$"{project} has no rule in Rooms.cs"];
    }

    private sealed record Rule(string[] Allowed, string[] Forbidden)
    {
        public bool Forbids(string reference) =>
            reference.StartsWith("PatternShop.", StringComparison.Ordinal)
                ? !Allowed.Contains(reference, StringComparer.Ordinal)
                : Forbidden.Any(start => IsPart(reference, start));

        private static bool IsPart(string reference, string start) =>
            reference.Equals(start, StringComparison.OrdinalIgnoreCase)
            || reference.StartsWith(start + ".", StringComparison.OrdinalIgnoreCase);
    }
}
