using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>A server of its own on an empty folder, for a class whose tests write or end it.</summary>
public sealed class OwnServer : IAsyncLifetime
{
    private readonly DataFolder _data = new();
    private ServerProcess? _server;

    /// <summary>The server that runs now.</summary>
    public ServerProcess Server => _server ?? throw new InvalidOperationException("There is no server yet.");

    public async ValueTask InitializeAsync() => _server = await ServerProcess.StartAsync(_data);

    /// <summary>Ends the server as kill -9 does, if it still runs, and starts another on the same data folder and port.</summary>
    public async Task StartAgainAsync() => _server = await Server.StartAgainAsync();

    public async ValueTask DisposeAsync()
    {
        if (_server is not null)
        {
            await _server.DisposeAsync();
        }

        _data.Dispose();
    }
}
