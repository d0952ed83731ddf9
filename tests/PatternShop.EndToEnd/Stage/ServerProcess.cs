using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Threading.Channels;

namespace PatternShop.EndToEnd;

/// <summary>The built app as a process of its own, on a loopback port, with its own data folder.</summary>
public sealed class ServerProcess : IAsyncDisposable
{
    private const string Listening = "Now listening on: ";
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);
    private static readonly TimeSpan Beat = TimeSpan.FromMilliseconds(50);

    private readonly Process _process;
    private readonly DataFolder _data;
    private readonly StringBuilder _log = new();
    private readonly Channel<string> _lines = Channel.CreateUnbounded<string>();

    private ServerProcess(Process process, DataFolder data)
    {
        (_process, _data) = (process, data);
        process.OutputDataReceived += (_, line) => Hear(line.Data);
        process.ErrorDataReceived += (_, line) => Hear(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    /// <summary>Where the server is reached. Its name is localhost, so that browsers treat it as a safe place.</summary>
    public Uri Address { get; private set; } = new("http://localhost");

    /// <summary>Fetches from the server without a browser.</summary>
    public HttpClient Http { get; } = new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false, ConnectTimeout = TimeSpan.FromSeconds(5) });

    /// <summary>The processor time that the server has taken so far.</summary>
    public TimeSpan Worked
    {
        get
        {
            _process.Refresh();
            return _process.TotalProcessorTime;
        }
    }

    /// <summary>Everything that the server has said so far.</summary>
    public string Log
    {
        get
        {
            lock (_log)
            {
                return _log.ToString();
            }
        }
    }

    /// <summary>Starts the app and waits until it says that it is well.</summary>
    /// <param name="data">Its data folder.</param>
    /// <param name="port">Its port; 0 for any that is free.</param>
    /// <param name="settings">Settings besides, as they are written behind the program's name.</param>
    public static async Task<ServerProcess> StartAsync(DataFolder data, int port = 0, IReadOnlyList<string>? settings = null)
    {
        ArgumentNullException.ThrowIfNull(data);
        var server = new ServerProcess(Process.Start(Command(data, port, settings ?? []))!, data);
        try
        {
            var line = await server.LineAsync(Listening);
            var listening = new Uri(line[(line.IndexOf(Listening, StringComparison.Ordinal) + Listening.Length)..]);
            server.Address = new UriBuilder(Uri.UriSchemeHttp, "localhost", listening.Port).Uri;
            server.Http.BaseAddress = listening;
            await server.UntilWellAsync();
            return server;
        }
        catch (Exception problem)
        {
            await server.DisposeAsync();
            throw new InvalidOperationException($"The app did not start: {problem.Message}\n{server.Log}", problem);
        }
    }

    /// <summary>The next line of the log, not looked at before, that holds a text.</summary>
    public async Task<string> LineAsync(string text)
    {
        using var patience = new CancellationTokenSource(Patience);
        await foreach (var line in _lines.Reader.ReadAllAsync(patience.Token))
        {
            if (line.Contains(text, StringComparison.Ordinal))
            {
                return line;
            }
        }

        throw new InvalidOperationException($"The app ended without saying \"{text}\".");
    }

    /// <summary>Ends the process at once, as kill -9 does, and waits until it is gone.</summary>
    public async Task KillAsync()
    {
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
        }

        await _process.WaitForExitAsync();
    }

    /// <summary>Ends the process at once if need be, and starts another on the same data folder and port.</summary>
    public async Task<ServerProcess> StartAgainAsync()
    {
        await DisposeAsync();
        return await StartAsync(_data, Address.Port);
    }

    public async ValueTask DisposeAsync()
    {
        Http.Dispose();
        await KillAsync();
        _process.Dispose();
    }

    private static ProcessStartInfo Command(DataFolder data, int port, IReadOnlyList<string> settings)
    {
        var start = new ProcessStartInfo("dotnet", [Programs.App, "--urls", string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}"), "--PatternShop:DataFolder", data.Path, .. settings])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Path.GetDirectoryName(Programs.App)!,
            UseShellExecute = false,
        };
        foreach (var name in start.Environment.Keys.Where(name => name.StartsWith("ASPNETCORE_", StringComparison.Ordinal) || name.StartsWith("PatternShop__", StringComparison.Ordinal)).ToList())
        {
            start.Environment.Remove(name);
        }

        start.Environment["DOTNET_ENVIRONMENT"] = "Production";
        start.Environment["HOME"] = data.Path;
        return start;
    }

    private void Hear(string? line)
    {
        if (line is null)
        {
            if (_process.HasExited)
            {
                _lines.Writer.TryComplete();
            }

            return;
        }

        lock (_log)
        {
            _log.Append(line).Append('\n');
        }

        _lines.Writer.TryWrite(line);
    }

    private async Task UntilWellAsync()
    {
        using var patience = new CancellationTokenSource(Patience);
        using var beat = new PeriodicTimer(Beat);
        do
        {
            try
            {
                using var answer = await Http.GetAsync(new Uri("/healthz", UriKind.Relative), patience.Token);
                if (answer.IsSuccessStatusCode)
                {
                    return;
                }
            }
            catch (HttpRequestException) when (!_process.HasExited)
            {
                // not listening yet
            }
        }
        while (await beat.WaitForNextTickAsync(patience.Token));
    }
}
