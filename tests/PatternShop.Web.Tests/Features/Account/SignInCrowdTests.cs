using System.Globalization;
using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>A crowd at the sign-in form neither stops the shop nor keeps the maker out.</summary>
public sealed class SignInCrowdTests : IDisposable
{
    private const string SignIn = "/sign-in";

    // one is hashed, eight wait
    private const int Places = 9;
    private static readonly int Crowd = Effort.Of(40, 200);
    private readonly HeldHashing _hashing = new();

    [Fact]
    public async Task At_most_two_passphrases_are_hashed_at_a_time_a_few_wait_and_the_rest_are_turned_away_at_once()
    {
        await using var shop = await OpenAsync();
        using var visitor = shop.Visit();
        await SetUpAsync(shop, visitor);
        var token = await TokenAsync(visitor);
        _hashing.Hold();
        var tries = await StrangersTryAsync(visitor, token, Crowd);
        var refused = await FirstAsync(tries, Crowd - Places);
        Assert.All(refused, answer => Assert.Equal((HttpStatusCode.TooManyRequests, "Signing in is busy right now"), (answer.Status, answer.Heading)));
        Assert.All(refused, answer => Assert.InRange(int.Parse(answer.Headers["Retry-After"], CultureInfo.InvariantCulture), 1, 60));
        Assert.Equal(HttpStatusCode.OK, (await visitor.GetAsync("/")).Status);
        Assert.Equal(Places, tries.Count(one => !one.IsCompleted));
        _hashing.Go();
        Assert.Equal(Places, (await Task.WhenAll(tries)).Count(answer => answer.Status == HttpStatusCode.UnprocessableEntity));
        Assert.InRange(_hashing.Most, 1, 2);
    }

    [Fact]
    public async Task Setting_up_waits_in_the_same_queue()
    {
        await using var shop = await OpenAsync();
        using var visitor = shop.Visit();
        var token = await visitor.TokenAsync(shop.SetUpPath);
        var code = shop.SetUpPath[(shop.SetUpPath.IndexOf('=', StringComparison.Ordinal) + 1)..];
        _hashing.Hold();
        var tries = await StrangersTryAsync(visitor, token, Places + 1);
        await FirstAsync(tries, 1);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await SetUpAsync()).Status);
        Assert.False(await shop.Makers.AnyAsync(TestContext.Current.CancellationToken));
        _hashing.Go();
        await Task.WhenAll(tries);
        Assert.Equal("/studio", (await SetUpAsync()).Location);
        Assert.InRange(_hashing.Most, 1, 2);

        Task<Reply> SetUpAsync() => visitor.PostPlainAsync("/setup", [("__RequestVerificationToken", token), ("Code", code), .. TestShop.SetUpFields()]);
    }

    [Fact]
    public async Task Where_the_maker_has_signed_in_before_they_get_in_whatever_strangers_do()
    {
        await using var shop = await OpenAsync();
        using var maker = shop.Visit();
        await SetUpAsync(shop, maker);
        using var stranger = shop.Visit();
        var token = await TokenAsync(stranger);
        for (var place = 0; place < AccountThrottles.Tries + AccountThrottles.MorePlaces; place++)
        {
            await TryAsync(stranger, token, TestShop.Email, $"192.0.2.{place}");
        }

        _hashing.Hold();
        var tries = await StrangersTryAsync(stranger, token, Places + 1);
        await FirstAsync(tries, 1);
        Assert.Equal("/studio", (await shop.SignInAsync(maker)).Location);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await shop.SignInAsync(stranger)).Status);
        _hashing.Go();
        await Task.WhenAll(tries);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await shop.SignInAsync(stranger)).Status);
        Assert.InRange(_hashing.Most, 1, 2);
    }

    [Fact]
    public async Task A_browser_that_is_known_has_so_many_tries_of_its_own_and_takes_none_from_others()
    {
        await using var shop = await OpenAsync();
        using var maker = shop.Visit();
        await SetUpAsync(shop, maker);
        for (var time = 0; time < 10; time++)
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, (await shop.SignInAsync(maker, passphrase: HeldHashing.Wrong)).Status);
        }

        var refused = await shop.SignInAsync(maker);
        Assert.Equal((HttpStatusCode.TooManyRequests, "300"), (refused.Status, refused.Headers["Retry-After"]));
        using var elsewhere = shop.Visit();
        Assert.Equal("/studio", (await shop.SignInAsync(elsewhere)).Location);
        shop.Clock.Now += AccountThrottles.Window;
        Assert.Equal("/studio", (await shop.SignInAsync(maker)).Location);
    }

    [Fact]
    public async Task A_browser_is_known_for_its_own_maker_alone()
    {
        await using var shop = await OpenAsync();
        using var maker = shop.Visit();
        await SetUpAsync(shop, maker);
        const string other = "other@example.org";
        using var second = await shop.SecondMakerAsync(other);
        await second.FillAsync("/studio", "/sign-out");
        using var stranger = shop.Visit();
        var token = await TokenAsync(stranger);
        for (var place = 0; place < AccountThrottles.Tries + AccountThrottles.MorePlaces; place++)
        {
            await TryAsync(stranger, token, other, $"192.0.2.{place}");
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, (await shop.SignInAsync(maker, other)).Status);
        Assert.Equal("/studio", (await shop.SignInAsync(second, other)).Location);
    }

    [Theory]
    [InlineData(399, true)]
    [InlineData(401, false)]
    public async Task A_browser_is_known_for_more_than_a_year_since_the_maker_signed_in_there(int days, bool isKnown)
    {
        await using var shop = await OpenAsync();
        using var maker = shop.Visit();
        await SetUpAsync(shop, maker);
        var mark = maker.Cookies["patternshop.browser"]!.Value;
        shop.Clock.Now += TimeSpan.FromDays(days);
        await LockOutAsync(shop);
        Assert.Equal(isKnown, await GetsInAsync(shop, mark));
    }

    [Fact]
    public async Task A_mark_that_we_did_not_make_is_none()
    {
        await using var shop = await OpenAsync();
        using var maker = shop.Visit();
        await SetUpAsync(shop, maker);
        var mark = maker.Cookies["patternshop.browser"]!.Value;
        await LockOutAsync(shop);
        foreach (var forged in new[] { "", "x", "1 9999999999 00", mark[..^1], mark[..^4] + "AAAA", maker.Cookies["patternshop.form"]!.Value })
        {
            Assert.False(await GetsInAsync(shop, forged));
        }

        Assert.True(await GetsInAsync(shop, mark));
    }

    [Theory]
    [InlineData(null, "patternshop.browser", false)]
    [InlineData("http://localhost:5080", "patternshop.browser", false)]
    [InlineData("https://patterns.example.org", "__Host-patternshop.browser", true)]
    public async Task The_mark_is_kept_from_scripts_and_other_sites_and_from_plain_ways_where_the_shop_has_a_safe_one(string? address, string name, bool isSecure)
    {
        await using var shop = await OpenAsync(address is null ? [] : [$"--PatternShop:PublicAddress={address}"]);
        using var maker = shop.Visit();
        var answer = await maker.FillAsync(shop.SetUpPath, "/setup", TestShop.SetUpFields());
        var cookie = answer.Headers["Set-Cookie"].Split(", ").Single(one => one.StartsWith(name + "=", StringComparison.Ordinal));
        Assert.EndsWith($"; max-age=34560000; path=/;{(isSecure ? " secure;" : "")} samesite=strict; httponly", cookie, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_few_strangers_who_know_the_address_do_not_keep_the_maker_out_of_a_browser_that_is_new_and_nobody_does_for_ever()
    {
        await using var shop = await OpenAsync();
        using var maker = shop.Visit();
        await SetUpAsync(shop, maker);
        using var stranger = shop.Visit();
        var token = await TokenAsync(stranger);
        for (var place = 0; place < AccountThrottles.Tries; place++)
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, (await TryAsync(stranger, token, TestShop.Email, $"192.0.2.{place}")).Status);
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, (await TryAsync(stranger, token, TestShop.Email, "192.0.2.3")).Status);
        using var elsewhere = shop.Visit();
        Assert.Equal(HttpStatusCode.SeeOther, (await TryAsync(elsewhere, await TokenAsync(elsewhere), TestShop.Email, "198.51.100.1", TestShop.Passphrase)).Status);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await TryAsync(stranger, token, TestShop.Email, "198.51.100.1")).Status);
        for (var place = 1; place < AccountThrottles.MorePlaces; place++)
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, (await TryAsync(stranger, token, TestShop.Email, $"203.0.113.{place}")).Status);
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, (await TryAsync(stranger, token, TestShop.Email, "198.51.100.2", TestShop.Passphrase)).Status);
        shop.Clock.Now += AccountThrottles.Window;
        Assert.Equal(HttpStatusCode.SeeOther, (await TryAsync(stranger, token, TestShop.Email, "198.51.100.2", TestShop.Passphrase)).Status);
    }

    [Fact]
    public async Task Networks_made_up_within_one_site_count_together()
    {
        await using var shop = await OpenAsync();
        using var maker = shop.Visit();
        await SetUpAsync(shop, maker);
        using var stranger = shop.Visit();
        var token = await TokenAsync(stranger);
        for (var network = 0; network < AccountThrottles.Tries * NetworkThrottle.NetworksInSite; network++)
        {
            Assert.Equal(HttpStatusCode.UnprocessableEntity, (await TryAsync(stranger, token, $"nobody{network}@example.org", $"2001:db8:7:{network:x}::1")).Status);
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, (await TryAsync(stranger, token, "nobody@example.org", "2001:db8:7:ffff::1")).Status);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, (await TryAsync(stranger, token, "nobody@example.org", "2001:db8:8::1")).Status);
    }

    public void Dispose() => _hashing.Dispose();

    private Task<TestShop> OpenAsync(params string[] settings) =>
        TestShop.OpenAsync(services => services.AddSingleton(_hashing.Hashing), ["--PatternShop:KnownProxies=127.0.0.1", .. settings]);

    /// <summary>The maker sets up the shop and signs out again.</summary>
    private static async Task SetUpAsync(TestShop shop, Visitor maker)
    {
        Assert.Equal("/studio", (await maker.FillAsync(shop.SetUpPath, "/setup", TestShop.SetUpFields())).Location);
        Assert.Equal("/", (await maker.FillAsync("/studio", "/sign-out")).Location);
    }

    private static Task<string> TokenAsync(Visitor visitor) => visitor.TokenAsync(SignIn);

    /// <summary>So many strangers, each from elsewhere, try to be somebody else: one is being hashed, then the others come at once.</summary>
    private async Task<List<Task<Reply>>> StrangersTryAsync(Visitor visitor, string token, int count)
    {
        var tries = new List<Task<Reply>> { TryAsync(0) };
        await _hashing.Held.WaitAsync(TestContext.Current.CancellationToken);
        return [.. tries, .. Enumerable.Range(1, count - 1).Select(TryAsync)];

        Task<Reply> TryAsync(int stranger) => SignInCrowdTests.TryAsync(visitor, token, $"nobody{stranger}@example.org", $"198.18.0.{stranger}");
    }

    /// <summary>Uses up what strangers have of the maker's tries, from wherever.</summary>
    private static async Task LockOutAsync(TestShop shop)
    {
        using var stranger = shop.Visit();
        var token = await TokenAsync(stranger);
        for (var place = 0; place < AccountThrottles.Tries + AccountThrottles.MorePlaces; place++)
        {
            await TryAsync(stranger, token, TestShop.Email, $"192.0.2.{place}");
        }
    }

    private static async Task<bool> GetsInAsync(TestShop shop, string mark)
    {
        using var visitor = shop.Visit();
        visitor.Handler.CookieContainer.Add(shop.Address, new Cookie("patternshop.browser", mark));
        var answer = await shop.SignInAsync(visitor);
        Assert.Contains(answer.Status, new[] { HttpStatusCode.SeeOther, HttpStatusCode.TooManyRequests });
        return answer.Status == HttpStatusCode.SeeOther;
    }

    private static async Task<List<Reply>> FirstAsync(List<Task<Reply>> tries, int count)
    {
        var answers = new List<Reply>();
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        patience.CancelAfter(TimeSpan.FromSeconds(20));
        await foreach (var answered in Task.WhenEach(tries).WithCancellation(patience.Token))
        {
            answers.Add(await answered);
            if (answers.Count == count)
            {
                break;
            }
        }

        return answers;
    }

    private static async Task<Reply> TryAsync(Visitor visitor, string token, string email, string from, string passphrase = HeldHashing.Wrong)
    {
        using var content = new FormUrlEncodedContent([new("email", email), new("passphrase", passphrase), new("__RequestVerificationToken", token)]);
        return await visitor.SendAsync(HttpMethod.Post, SignIn, content, ("X-Forwarded-For", from));
    }
}
