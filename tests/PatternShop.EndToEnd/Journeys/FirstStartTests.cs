using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>How long whoever starts the built app on an empty folder waits for its first page, by the clock on the wall.</summary>
/// <remarks>Alone, after all other tests of the project; the best of three starts, since a machine that is busy with other things says nothing of the program.</remarks>
[Collection(nameof(Alone))]
public sealed class FirstStartTests
{
    private const int Starts = 3;
    private static readonly TimeSpan Most = TimeSpan.FromSeconds(5);

    [Fact]
    public async Task From_an_empty_folder_the_first_page_is_there_within_five_seconds()
    {
        var waits = new List<TimeSpan>();
        while (waits.Count < Starts && waits.TrueForAll(wait => wait > Most))
        {
            waits.Add(await WaitAsync());
        }

        TestContext.Current.TestOutputHelper?.WriteLine(string.Join(", ", waits));
        Assert.InRange(waits.Min(), TimeSpan.Zero, Most);
    }

    private static async Task<TimeSpan> WaitAsync()
    {
        using var data = new DataFolder();
        Assert.Empty(Directory.EnumerateFileSystemEntries(data.Path));
        var start = TimeProvider.System.GetTimestamp();
        await using var server = await ServerProcess.StartAsync(data);
        var page = await server.Http.GetStringAsync(new Uri("/", UriKind.Relative), TestContext.Current.CancellationToken);
        var wait = TimeProvider.System.GetElapsedTime(start);
        Assert.Contains("<h1>Charts for small frame looms</h1>", page, StringComparison.Ordinal);
        Assert.Contains("patternshop.db", Directory.EnumerateFiles(data.Path).Select(Path.GetFileName));
        return wait;
    }
}

/// <summary>For tests that nothing else may run beside.</summary>
[CollectionDefinition(nameof(Alone), DisableParallelization = true)]
public sealed class Alone;
