using System.Collections.Concurrent;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Xunit;

[assembly: AssemblyFixture(typeof(PatternShop.Web.Tests.WebServer))]

namespace PatternShop.Web.Tests;

/// <summary>The product's own host on a free loopback port, with a few addresses more that only the tests know.</summary>
public sealed class WebServer : IAsyncLifetime
{
    /// <summary>An address that throws.</summary>
    public const string FaultAddress = "/test/fault";

    /// <summary>The page of a sample whose words are an attack.</summary>
    public const string HostileAddress = "/test/hostile";

    private readonly Folder _data = new();
    private readonly WebApplication _app;

    private readonly LogLines _log = new();

    public WebServer()
    {
        var builder = PatternShopHost.Builder(
            ["--environment", "Production", "--urls", "http://127.0.0.1:0", "--Logging:Console:LogLevel:Default", "None", "--PatternShop:DataFolder", _data.Path]);
        builder.Logging.AddProvider(_log);
        _app = PatternShopHost.Build(builder, HostSettings.Read(builder.Configuration, builder.Environment.ContentRootPath, out _)!);
    }

    /// <summary>Fetches as a plain program would: no redirects, no cookies.</summary>
    public HttpClient Client { get; } = new(new SocketsHttpHandler { AllowAutoRedirect = false, UseCookies = false });

    /// <summary>What the server has written to its log, exceptions included.</summary>
    public IReadOnlyCollection<string> Log => _log.Lines;

    internal SampleShelf Shelf => _app.Services.GetRequiredService<SampleShelf>();

    internal PieceFiles Files => _app.Services.GetRequiredService<PieceFiles>();

    public async ValueTask InitializeAsync()
    {
        _app.MapGet(FaultAddress, string () => throw new InvalidOperationException("thrown on purpose"));
        _app.MapGet(HostileAddress, () => Hostile.Page());
        await PatternShopHost.StartAsync(_app);
        Client.BaseAddress = new Uri(_app.Urls.Single());
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        await _app.DisposeAsync();
        _log.Dispose();
        _data.Dispose();
    }

    /// <summary>Fetches an address.</summary>
    public async Task<Answer> Get(string address, HttpMethod? method = null)
    {
        using var request = new HttpRequestMessage(method ?? HttpMethod.Get, address);
        using var response = await Client.SendAsync(request, TestContext.Current.CancellationToken);
        var bytes = await response.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken);
        var headers = response.Headers.Concat(response.Content.Headers).ToDictionary(header => header.Key, header => string.Join(", ", header.Value), StringComparer.OrdinalIgnoreCase);
        return new Answer((int)response.StatusCode, headers, bytes);
    }

    private sealed class LogLines : ILoggerProvider
    {
        private readonly ConcurrentQueue<string> _lines = [];

        public IReadOnlyCollection<string> Lines => _lines;

        public ILogger CreateLogger(string categoryName) => new Writer(_lines);

        public void Dispose()
        {
        }

        private sealed class Writer(ConcurrentQueue<string> lines) : ILogger
        {
            public IDisposable? BeginScope<TState>(TState state)
                where TState : notnull => null;

            public bool IsEnabled(LogLevel logLevel) => true;

            public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
                lines.Enqueue($"{formatter(state, exception)} {exception}");
        }
    }
}

/// <summary>What came back from the server.</summary>
public sealed record Answer(int Status, IReadOnlyDictionary<string, string> Headers, byte[] Bytes)
{
    public string Text => System.Text.Encoding.UTF8.GetString(Bytes);

    public string Header(string name) => Headers.GetValueOrDefault(name, "");

    /// <summary>The answer as a page. Anything that is no well-formed HTML throws.</summary>
    public IHtmlDocument Page() => new HtmlParser(new HtmlParserOptions { IsStrictMode = true }).ParseDocument(Text);
}
