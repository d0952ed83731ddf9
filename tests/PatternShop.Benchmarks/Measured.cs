using BenchmarkDotNet.Reports;

namespace PatternShop.Benchmarks;

/// <summary>One measured case.</summary>
/// <param name="Class">The benchmark class, in words.</param>
/// <param name="Size">Its parameters in words; empty without.</param>
/// <param name="Case">What was done.</param>
/// <param name="Median">Microseconds; what other programs took meanwhile moves it less than the mean.</param>
/// <param name="Error">Half of the 99.9 % confidence interval of the mean in microseconds.</param>
/// <param name="Kilobytes">Memory allocated each time.</param>
/// <param name="Bytes">Length of the file that was made; 0 where none was.</param>
/// <param name="Run">The run that measured it, by its number in the list of runs.</param>
internal sealed record Measured(string Class, string Size, string Case, double Median, double Error, double Kilobytes, int Bytes, int Run)
{
    public static List<Measured> Of(IEnumerable<Summary> summaries) =>
    [
        .. from summary in summaries
           from report in summary.Reports
           let statistics = report.ResultStatistics
           where statistics is not null
           let descriptor = report.BenchmarkCase.Descriptor
           let items = report.BenchmarkCase.Parameters.Items
           let size = string.Join(", ", items.Select(item => SizeText(item.Name, item.Value)))
           select new Measured(
               ClassName(descriptor.Type),
               size,
               descriptor.WorkloadMethodDisplayInfo.Trim('\''),
               statistics.Median / 1000,
               statistics.ConfidenceInterval.Margin / 1000,
               (report.GcStats.GetBytesAllocatedPerOperation(report.BenchmarkCase) ?? 0) / 1024.0,
               Made.By(descriptor.Type, descriptor.WorkloadMethod.Name, size),
               0),
    ];

    /// <summary>"HangsTogetherBenchmarks" in words: "Hangs together".</summary>
    public static string ClassName(Type type)
    {
        var name = type.Name.EndsWith("Benchmarks", StringComparison.Ordinal) ? type.Name[..^"Benchmarks".Length] : type.Name;
        return string.Concat(name.Select((c, i) => i > 0 && char.IsAsciiLetterUpper(c) ? $" {char.ToLowerInvariant(c)}" : c.ToString()));
    }

    private static string SizeText(string name, object? value) => name switch
    {
        "Side" => $"{value} × {value}",
        "Size" => $"{value}",
        _ => $"{value} {name.ToLowerInvariant()}",
    };
}
