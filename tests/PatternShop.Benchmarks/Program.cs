using BenchmarkDotNet.Columns;
using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Diagnosers;
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
var summaries = BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args, config).ToList();
if (summaries.Count == 0)
{
    return 1;
}

var readme = Checkout.Path("tests/PatternShop.Benchmarks/README.md");
var before = File.Exists(readme) ? Report.Read(await File.ReadAllTextAsync(readme)) : Report.Empty;
var after = before.With(Measured.Of(summaries), Run.Of(summaries[0], TimeProvider.System));
await File.WriteAllTextAsync(readme, after.Markdown());
Console.WriteLine($"Written: {Path.GetRelativePath(Checkout.Top, readme)}");
return 0;
