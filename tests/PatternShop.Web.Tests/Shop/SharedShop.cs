namespace PatternShop.Web.Tests;

/// <summary>A shop that tests of one class share which only read, or are refused: none sees another. It is opened when the first asks, and goes with the class.</summary>
public sealed class SharedShop : IAsyncDisposable
{
    private Task<IssuedShop>? _shop;

    /// <summary>The shop; the tests of a class follow one another, so there is one.</summary>
    internal Task<IssuedShop> OfAsync(Func<Task<IssuedShop>> open) => _shop ??= open();

    public async ValueTask DisposeAsync()
    {
        if (_shop is not null)
        {
            await (await _shop).DisposeAsync();
        }
    }
}
