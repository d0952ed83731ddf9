namespace PatternShop.Web;

/// <summary>Does pieces of work one after another, in the order in which they were asked for.</summary>
internal sealed class OneByOne
{
    private readonly Lock _gate = new();
    private Task _last = Task.CompletedTask;

    public Task<T> DoAsync<T>(Func<Task<T>> work)
    {
        lock (_gate)
        {
            var mine = After(_last, work);
            _last = mine;
            return mine;
        }
    }

    // whoever asked for the work before hears of its failure, not whoever asked for this
    private static async Task<T> After<T>(Task before, Func<Task<T>> work)
    {
        await before.ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing | ConfigureAwaitOptions.ForceYielding);
        return await work();
    }
}
