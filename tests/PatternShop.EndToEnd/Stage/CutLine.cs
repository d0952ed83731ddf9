using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace PatternShop.EndToEnd;

/// <summary>A line between a browser and a server that can be cut, mended and made long. Whatever is on the way when it is cut is lost.</summary>
public sealed class CutLine : IAsyncDisposable
{
    private readonly TcpListener _door = new(IPAddress.Loopback, 0);
    private readonly ConcurrentDictionary<TcpClient, bool> _open = [];
    private readonly CancellationTokenSource _end = new();
    private readonly int _port;
    private readonly Task _work;
    private volatile bool _isCut;

    public CutLine(ServerProcess server)
    {
        ArgumentNullException.ThrowIfNull(server);
        _port = server.Address.Port;
        _door.Start();
        Address = new UriBuilder(Uri.UriSchemeHttp, "localhost", ((IPEndPoint)_door.LocalEndpoint).Port).Uri;
        _work = LetInAsync();
    }

    /// <summary>Where the browser goes.</summary>
    public Uri Address { get; }

    /// <summary>How long everything takes each way.</summary>
    public TimeSpan Delay { get; set; }

    public void Cut()
    {
        _isCut = true;
        foreach (var client in _open.Keys)
        {
            client.Dispose();
        }
    }

    public void Mend() => _isCut = false;

    public async ValueTask DisposeAsync()
    {
        await _end.CancelAsync();
        Cut();
        _door.Stop();
        await _work;
        _end.Dispose();
    }

    private async Task LetInAsync()
    {
        var calls = new List<Task>();
        try
        {
            while (true)
            {
                calls.Add(CarryAsync(await _door.AcceptTcpClientAsync(_end.Token)));
            }
        }
        catch (OperationCanceledException)
        {
            await Task.WhenAll(calls);
        }
    }

    private async Task CarryAsync(TcpClient caller)
    {
        using var called = new TcpClient();
        using (caller)
        {
            _open[caller] = true;
            _open[called] = true;
            try
            {
                if (!_isCut)
                {
                    await called.ConnectAsync(IPAddress.Loopback, _port, _end.Token);
                    await Task.WhenAny(PourAsync(caller.GetStream(), called.GetStream()), PourAsync(called.GetStream(), caller.GetStream()));
                }
            }
            catch (Exception cut) when (cut is IOException or SocketException or ObjectDisposedException or OperationCanceledException or InvalidOperationException)
            {
                // that is what it is for
            }

            _open.TryRemove(caller, out _);
            _open.TryRemove(called, out _);
        }
    }

    private async Task PourAsync(NetworkStream from, NetworkStream into)
    {
        var buffer = new byte[64 * 1024];
        try
        {
            while (await from.ReadAsync(buffer, _end.Token) is var read and > 0)
            {
                await Task.Delay(Delay, TimeProvider.System, _end.Token);
                await into.WriteAsync(buffer.AsMemory(0, read), _end.Token);
            }
        }
        catch (Exception cut) when (cut is IOException or ObjectDisposedException or OperationCanceledException)
        {
            // the other direction ends with it
        }
    }
}
