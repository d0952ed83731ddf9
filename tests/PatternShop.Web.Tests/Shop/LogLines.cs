using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace PatternShop.Web.Tests;

/// <summary>What the server said.</summary>
internal sealed class LogLines : ILoggerProvider, ILogger
{
    public ConcurrentQueue<string> Lines { get; } = [];

    public ILogger CreateLogger(string categoryName) => this;

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public bool IsEnabled(LogLevel logLevel) => logLevel >= LogLevel.Information;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
        Lines.Enqueue(formatter(state, exception) + exception);

    public void Dispose()
    {
    }
}
