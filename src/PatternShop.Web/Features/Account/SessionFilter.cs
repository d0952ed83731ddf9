using Microsoft.AspNetCore.SignalR;

namespace PatternShop.Web;

/// <summary>
/// Guards the connections of workbenches: whatever a browser asks for, events, calls of the script and moves to another
/// address, is done only while its session stands. A connection is closed soon after its session has ended.
/// </summary>
internal sealed class SessionFilter(OpenSessions sessions, TimeProvider time) : IHubFilter
{
    /// <summary>How long an ended session's connection stays, so that the page can say what happened.</summary>
    public static readonly TimeSpan Grace = TimeSpan.FromSeconds(2);

    // how a browser acknowledges what it was sent: nothing is asked for by them
    private static readonly HashSet<string> Acknowledgements = new(StringComparer.Ordinal) { "OnRenderCompleted", "EndInvokeJSFromDotNet" };

    public async ValueTask<object?> InvokeMethodAsync(HubInvocationContext invocationContext, Func<HubInvocationContext, ValueTask<object?>> next) =>
        Acknowledgements.Contains(invocationContext.HubMethodName) || await IsCurrentAsync(invocationContext.Context) ? await next(invocationContext) : null;

    public async Task OnConnectedAsync(HubLifetimeContext context, Func<HubLifetimeContext, Task> next)
    {
        var connection = context.Context;
        if (MakerPrincipal.Of(connection.User) is var (maker, stamp))
        {
            connection.Items[typeof(SessionFilter)] = sessions.Add(maker, stamp, () => _ = CloseAsync(connection));
        }

        await next(context);
    }

    public Task OnDisconnectedAsync(HubLifetimeContext context, Exception? exception, Func<HubLifetimeContext, Exception?, Task> next)
    {
        if (context.Context.Items.TryGetValue(typeof(SessionFilter), out var open))
        {
            ((IDisposable)open!).Dispose();
        }

        return next(context, exception);
    }

    private async ValueTask<bool> IsCurrentAsync(HubCallerContext connection) =>
        MakerPrincipal.Of(connection.User) is var (maker, stamp) && await sessions.IsCurrentAsync(maker, stamp, connection.ConnectionAborted);

    private async Task CloseAsync(HubCallerContext connection)
    {
        await Task.Delay(Grace, time, connection.ConnectionAborted).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        connection.Abort();
    }
}
