using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using PatternShop.Store;

namespace PatternShop.Web;

/// <summary>
/// What the server says of itself. <c>/healthz</c>: it is alive, whatever else is wrong. <c>/readyz</c>: readers and makers can work; otherwise 503 and
/// one word for the reason.
/// </summary>
internal static class Health
{
    public const string Alive = "/healthz";
    public const string Ready = "/readyz";
    private const string ReadyTag = "ready";

    public static void AddHealth(this IServiceCollection services)
    {
        services.AddHealthChecks()
            .AddCheck<RunningCheck>("running", tags: [ReadyTag])
            .AddCheck<DataCheck>("data", tags: [ReadyTag])
            .AddCheck<KeysCheck>("keys", tags: [ReadyTag]);
        services.AddSingleton<HealthLog>();
        services.AddHostedService<Inspection>();
    }

    public static void MapHealth(this IEndpointRouteBuilder routes)
    {
        routes.MapHealthChecks(Alive, new HealthCheckOptions { Predicate = static _ => false });
        routes.MapHealthChecks(Ready, new HealthCheckOptions { Predicate = static check => check.Tags.Contains(ReadyTag), ResponseWriter = WriteAsync });
    }

    private static Task WriteAsync(HttpContext http, HealthReport report)
    {
        http.Response.ContentType = "text/plain";
        return http.Response.WriteAsync(
            report.Status == HealthStatus.Healthy
                ? "Ready"
                : "Not ready: " + string.Join(", ", report.Entries.Values.Where(entry => entry.Status != HealthStatus.Healthy).Select(entry => entry.Description)));
    }

    private sealed class RunningCheck(IHostApplicationLifetime lifetime) : IHealthCheck
    {
        public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) => Task.FromResult(
            lifetime.ApplicationStopping.IsCancellationRequested ? HealthCheckResult.Unhealthy("stopping")
            : lifetime.ApplicationStarted.IsCancellationRequested ? HealthCheckResult.Healthy()
            : HealthCheckResult.Unhealthy("starting"));
    }

    private sealed class DataCheck(StoreCheck store) : IHealthCheck
    {
        public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) => await store.NowAsync(cancellationToken) switch
        {
            StoreFault.Passing => HealthCheckResult.Healthy(),
            StoreFault.DiskFull => HealthCheckResult.Unhealthy("disk full"),
            StoreFault.Damaged => HealthCheckResult.Unhealthy("data damaged"),
            _ => HealthCheckResult.Unhealthy("data folder unusable"),
        };
    }

    private sealed class KeysCheck(IDataProtectionProvider protection, HealthLog log) : IHealthCheck
    {
        private readonly IDataProtector _protector = protection.CreateProtector("health");

        public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default)
        {
            try
            {
                _protector.Unprotect(_protector.Protect([1]));
                log.KeysAreWell();
                return Task.FromResult(HealthCheckResult.Healthy());
            }
#pragma warning disable CA1031 // whatever is wrong with the keys, the answer is the same
            catch (Exception failure)
#pragma warning restore CA1031
            {
                log.KeysFail(failure);
                return Task.FromResult(HealthCheckResult.Unhealthy("keys unreadable"));
            }
        }
    }

    /// <summary>Looks the whole data through while the server works, once after each start, and asks once whether all is well.</summary>
    private sealed class Inspection(StoreCheck store, HealthCheckService health, HealthLog log) : BackgroundService
    {
        protected override async Task ExecuteAsync(CancellationToken stoppingToken)
        {
            log.Listen();
            await health.CheckHealthAsync(static check => check.Tags.Contains(ReadyTag), stoppingToken);
            await store.InspectAsync(stoppingToken);
        }
    }
}

/// <summary>Tells the operator of each fault once, in one line.</summary>
internal sealed partial class HealthLog(StoreHealth store, ILogger<HealthLog> log)
{
    private int _keysFailed;

    public void Listen() => store.OnFound((_, words) => LogFault(log, words));

    public void KeysFail(Exception failure)
    {
        if (Interlocked.Exchange(ref _keysFailed, 1) == 0)
        {
            LogKeys(log, failure.GetBaseException().Message);
        }
    }

    public void KeysAreWell() => Interlocked.Exchange(ref _keysFailed, 0);

    [LoggerMessage(Level = LogLevel.Error, Message = "{Words}")]
    private static partial void LogFault(ILogger log, string words);

    [LoggerMessage(Level = LogLevel.Error, Message = "The keys in the data folder (keys/) can't be read or made, so nobody can sign in and no form can be sent. Restore the folder from a backup, or delete its damaged files and restart: everybody signs in again then. ({Reason})")]
    private static partial void LogKeys(ILogger log, string reason);
}
