using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace PatternShop.Web.Tests;

/// <summary>What the server said, as far as its settings let it.</summary>
internal sealed class LogLines : ILoggerProvider
{
    /// <summary>Everything, with all that a structured log would keep of it.</summary>
    public ConcurrentQueue<LogEntry> Entries { get; } = [];

    /// <summary>What an ordinary log shows.</summary>
    public IReadOnlyList<string> Lines => [.. Entries.Where(entry => entry.Level >= LogLevel.Information).Select(entry => entry.Text)];

    public ILogger CreateLogger(string categoryName) => new Writer(Entries, categoryName);

    public void Dispose()
    {
    }

    private sealed class Writer(ConcurrentQueue<LogEntry> entries, string category) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
        {
            var values = state is IEnumerable<KeyValuePair<string, object?>> pairs ? string.Join(' ', pairs.Select(pair => $"{pair.Key}={pair.Value}")) : "";
            entries.Enqueue(new LogEntry(category, logLevel, eventId, formatter(state, exception) + exception, values));
        }
    }
}

/// <summary>Something that was logged.</summary>
/// <param name="Text">The message, and the exception after it.</param>
/// <param name="Values">The values that the message was made of.</param>
internal sealed record LogEntry(string Category, LogLevel Level, EventId Event, string Text, string Values);
