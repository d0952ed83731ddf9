using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>Once a day, by the program's clock, removes what was thrown away long enough ago.</summary>
internal sealed partial class DailySweep(Sweeping sweeping, TimeProvider time, ILogger<DailySweep> log) : BackgroundService
{
    public static readonly TimeSpan Day = TimeSpan.FromDays(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (true)
        {
            await Task.Delay(Day, time, stoppingToken);
            await SweepAsync(stoppingToken);
        }
    }

    /// <summary>Sweeps once; a failure is logged and ends nothing.</summary>
    public async Task SweepAsync(CancellationToken cancellationToken)
    {
        try
        {
            await sweeping.SweepConfirmedAsync(cancellationToken);
        }
        catch (StoreException failure)
        {
            // tomorrow again; nothing that is over can be seen meanwhile
            LogUnswept(log, failure);
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "What was deleted long ago could not be removed")]
    private static partial void LogUnswept(ILogger log, Exception failure);
}
