using System.Collections.Concurrent;
using System.Net;
using PatternShop.Store;

namespace PatternShop.Web.Tests;

/// <summary>The present program on a copy of the earlier program's data folder, at the time at which that was recorded.</summary>
internal sealed class FixtureShop : IAsyncDisposable
{
    private readonly Visitor _reader;
    private readonly List<Visitor> _makers;
    private readonly ConcurrentDictionary<string, Task<MakerId>> _ids = new(StringComparer.Ordinal);

    private FixtureShop(TestShop shop)
    {
        (Shop, _reader) = (shop, shop.Visit());
        _makers = [.. Manifest.Makers.Select(maker => WithSession(shop.Visit(), shop.Address, maker.Cookie))];
    }

    public TestShop Shop { get; }

    public static FixtureManifest Manifest => FixtureManifest.Current;

    public static async Task<FixtureShop> OpenAsync() =>
        new(await TestShop.OpenAsync(FixtureManifest.UnpackAsync, new TestClock { Now = Manifest.At }));

    /// <summary>The browser that holds a maker's session, or one of a reader.</summary>
    public Visitor Visitor(int? maker) => maker is { } index ? _makers[index] : _reader;

    /// <summary>The maker's id in the store, found by their passphrase; that takes a while, so it is asked for once.</summary>
    public Task<MakerId> MakerAsync(FixtureMaker maker) => _ids.GetOrAdd(maker.Email, _ => SignInAsync(maker));

    public async ValueTask DisposeAsync()
    {
        _reader.Dispose();
        _makers.ForEach(visitor => visitor.Dispose());
        await Shop.DisposeAsync();
    }

    private async Task<MakerId> SignInAsync(FixtureMaker maker) =>
        await Shop.Makers.SignInAsync(maker.Email, maker.Passphrase, HashingLane.Strangers) is SignInResult.Done done ? done.Maker.Id : throw new InvalidOperationException($"{maker.Email} cannot sign in.");

    private static Visitor WithSession(Visitor visitor, Uri address, string cookie)
    {
        visitor.Handler.CookieContainer.Add(address, new Cookie("patternshop.maker", cookie));
        return visitor;
    }
}

/// <summary>One such shop for the tests that only read.</summary>
public sealed class SharedFixtureShop : IAsyncDisposable
{
    private Task<FixtureShop>? _shop;

    internal Task<FixtureShop> OpenAsync() => _shop ??= FixtureShop.OpenAsync();

    public async ValueTask DisposeAsync()
    {
        if (_shop is not null)
        {
            await (await _shop).DisposeAsync();
        }
    }
}
