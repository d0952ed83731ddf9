using BenchmarkDotNet.Attributes;
using Microsoft.Extensions.DependencyInjection;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;

namespace PatternShop.Benchmarks;

/// <summary>One step back and one forth again, each on disk before it is done, at the end of a long history of a motif of 300 × 300 cells without order.</summary>
public class HistoryBenchmarks
{
    private const int Side = 300;
    private DirectoryInfo? _folder;
    private ServiceProvider? _services;
    private Workroom? _workroom;
    private MakerId _maker;
    private PatternId _pattern;
    private long _revision = 1;
    private long _sequence;

    [Params(1000)]
    public int Steps { get; set; }

    [GlobalSetup]
    public async Task MakeAsync()
    {
        _folder = Directory.CreateTempSubdirectory("history");
        _services = new ServiceCollection().AddPatternStore(_folder.FullName).BuildServiceProvider();
        await _services.GetRequiredService<StoreStart>().OpenAsync();
        _workroom = _services.GetRequiredService<Workroom>();
        var makers = _services.GetRequiredService<Makers>();
        var maker = new NewMaker("Bench", "bench", "bench@example.org", "wooden benches measure well", "UTC");
        _maker = ((SetUpResult.Done)await makers.SetUpAsync((await makers.SetUpCodeAsync())!, maker, [])).Maker;
        var document = Charts.Document("x.") with { Motif = BenchmarkCharts.Scattered(Side, Side), Rows = Charts.Document("x.").Rows with { Steps = [new ChartRows(1, Side, 1)] } };
        _pattern = await _workroom.CreateAsync(_maker, document);
        for (var step = 0; step < Steps; step++)
        {
            var (row, end) = (step * 7 % Side, step * 11 % Side);
            document = document with { Motif = document.Motif.With(row, end, !document.Motif[row, end]) };
            Take(await _workroom.SaveAsync(_maker, _pattern, new StepRequest("w", ++_sequence, _revision, "draw 1 cell", document)));
        }
    }

    [Benchmark(Description = "undo or redo, in the store", OperationsPerInvoke = 2)]
    public async Task<long> BackAndForthAsync()
    {
        Take(await _workroom!.UndoAsync(_maker, _pattern, "w", ++_sequence, _revision));
        Take(await _workroom.RedoAsync(_maker, _pattern, "w", ++_sequence, _revision));
        return _revision;
    }

    [GlobalCleanup]
    public async Task CleanAsync()
    {
        await _services!.DisposeAsync();
        _folder!.Delete(recursive: true);
    }

    private void Take(SaveResult result) => _revision = ((SaveResult.Saved)result).Revision;
}
