using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Finds sessions that ended from outside, as by the operator's <c>passphrase</c> command beside the server.</summary>
internal sealed partial class SessionCheck(OpenSessions sessions, TimeProvider time, ILogger<SessionCheck> log) : BackgroundService
{
    public static readonly TimeSpan Pause = TimeSpan.FromSeconds(2);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (true)
        {
            await Task.Delay(Pause, time, stoppingToken);
            await CheckAsync(stoppingToken);
        }
    }

    private async Task CheckAsync(CancellationToken cancellationToken)
    {
        try
        {
            await sessions.CheckAsync(cancellationToken);
        }
        catch (StoreException failure)
        {
            // asked again soon, and before anything is sent
            LogUnknown(log, failure);
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "Whether sessions still stand could not be found out")]
    private static partial void LogUnknown(ILogger log, Exception failure);
}
