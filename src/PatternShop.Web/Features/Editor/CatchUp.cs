namespace PatternShop.Web;

/// <summary>Does steps one after another until nothing is new, and never two at once. For one thread of work at a time, as a circuit's is.</summary>
internal sealed class CatchUp
{
    private bool _isBusy;

    /// <summary>Does steps as long as there is news. Returns at once while steps are done already: they see the news too.</summary>
    public async Task RunAsync(Func<bool> hasNews, Func<Task> step)
    {
        if (_isBusy)
        {
            return;
        }

        _isBusy = true;
        try
        {
            while (hasNews())
            {
                await step();
            }
        }
        finally
        {
            _isBusy = false;
        }
    }
}
