using Microsoft.Extensions.Configuration.Memory;

namespace PatternShop.Web;

/// <summary>What is logged unless the operator says otherwise. Every value is an ordinary setting of the framework's "Logging" section.</summary>
internal static class LogDefaults
{
    private static readonly Dictionary<string, string?> Settings = new(StringComparer.Ordinal)
    {
        ["Logging:LogLevel:Default"] = nameof(LogLevel.Information),
        // at Information the framework writes several lines a request, with its whole address: some addresses are secrets
        ["Logging:LogLevel:Microsoft"] = nameof(LogLevel.Warning),
        ["Logging:LogLevel:System"] = nameof(LogLevel.Warning),
        ["Logging:LogLevel:Microsoft.Hosting.Lifetime"] = nameof(LogLevel.Information),
        // warns that the keys are not encrypted, but they lie in the data folder, which only the server may read
        ["Logging:LogLevel:Microsoft.AspNetCore.DataProtection"] = nameof(LogLevel.Error),
        // repeats at every question what HealthLog says once
        ["Logging:LogLevel:Microsoft.Extensions.Diagnostics.HealthChecks"] = nameof(LogLevel.None),
        ["Logging:Console:FormatterName"] = "simple",
        ["Logging:Console:FormatterOptions:SingleLine"] = "true",
        ["Logging:Console:FormatterOptions:TimestampFormat"] = "yyyy-MM-dd'T'HH:mm:ss'Z' ",
        ["Logging:Console:FormatterOptions:UseUtcTimestamp"] = "true",
    };

    /// <summary>Puts the defaults below every other source, so that files, environment and arguments override them.</summary>
    public static void AddLogDefaults(this IConfigurationBuilder configuration) =>
        configuration.Sources.Insert(0, new MemoryConfigurationSource { InitialData = Settings });
}
