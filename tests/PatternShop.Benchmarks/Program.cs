using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Exporters;
using BenchmarkDotNet.Running;

// The tables land in BenchmarkDotNet.Artifacts/results; what is claimed from them is copied into README.md with date and commit.
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args, DefaultConfig.Instance.AddExporter(MarkdownExporter.GitHub));
