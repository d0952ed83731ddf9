using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>
/// A journey through the product. Whatever goes wrong on any page that it visits fails it, also when all its own
/// questions were answered well; evidence of a failed one is kept.
/// </summary>
public abstract class Journey(Stage stage) : IAsyncLifetime
{
    private readonly List<Visit> _visits = [];

    protected Stage Stage => stage;

    /// <summary>The server that the journey is about; the shared one unless the journey starts its own.</summary>
    protected virtual ServerProcess Server => stage.Server;

    public virtual ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public virtual async ValueTask DisposeAsync()
    {
        GC.SuppressFinalize(this);
        var faults = _visits.SelectMany(visit => visit.Faults).ToList();
        try
        {
            if (faults.Count > 0 || TestContext.Current.TestState?.Result == TestResult.Failed)
            {
                var folder = await Evidence.KeepAsync(Evidence.Folder, TestContext.Current.Test?.TestDisplayName ?? "journey", _visits, Server.Log);
                TestContext.Current.TestOutputHelper?.WriteLine($"Evidence: {folder}");
            }
        }
        finally
        {
            foreach (var visit in _visits)
            {
                await visit.DisposeAsync();
            }
        }

        Assert.Empty(faults);
    }

    /// <summary>Opens a window for a reader; nobody signed in.</summary>
    protected async Task<Visit> OpenAsync(Reader reader)
    {
        var visit = await Visit.OpenAsync(stage.Browser, Server.Address, reader);
        _visits.Add(visit);
        return visit;
    }
}
