using System.IO.Enumeration;
using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
using BenchmarkDotNet.Environments;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using PatternShop.Benchmarks;
using PatternShop.Tests.Shared;

// Measures what is asked for (--filter) and writes its rows of README.md anew; rows of other classes stay as they were.
var config = ManualConfig.CreateEmpty()
    .AddLogger(ConsoleLogger.Default)
    .AddColumnProvider(DefaultColumnProviders.Instance)
    .AddDiagnoser(MemoryDiagnoser.Default)
    .AddJob(Job.Default.WithToolchain(InProcessEmitToolchain.Instance).WithWarmupCount(3).WithIterationCount(8));
var filter = args.SkipWhile(argument => argument is not ("--filter" or "-f")).Skip(1).TakeWhile(argument => !argument.StartsWith('-')).ToList();
var draws = filter.Count == 0 || filter.Exists(glob => FileSystemName.MatchesSimpleExpression(glob, "PatternShop.Benchmarks.Drawing"));
// a try shows that the program works; its figures mean nothing and are not written
var isTry = string.Equals(Environment.GetEnvironmentVariable("PATTERNSHOP_BENCH"), "try", StringComparison.OrdinalIgnoreCase);
var others = filter.Exists(glob => !glob.Contains("Drawing", StringComparison.OrdinalIgnoreCase)) || filter.Count == 0;
var summaries = others ? BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args, config).ToList() : [];
var figures = draws ? await DrawingBench.MeasureAsync(isTry) : [];
foreach (var figure in figures)
{
    Console.WriteLine(FormattableString.Invariant($"{figure.What}: {figure.Value:0.##} {figure.Unit} ({figure.Samples})"));
}

if (isTry || (summaries.Count == 0 && figures.Count == 0))
{
    return isTry ? 0 : 1;
}

var readme = Checkout.Path("tests/PatternShop.Benchmarks/README.md");
var before = File.Exists(readme) ? Report.Read(await File.ReadAllTextAsync(readme)) : Report.Empty;
var after = before.With(Measured.Of(summaries), figures, Run.Of(HostEnvironmentInfo.GetCurrent(), TimeProvider.System));
await File.WriteAllTextAsync(readme, after.Markdown());
Console.WriteLine($"Written: {Path.GetRelativePath(Checkout.Top, readme)}");
return 0;
