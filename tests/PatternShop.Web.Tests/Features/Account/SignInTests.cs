using System.Net;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class SignInTests
{
    private const string SignIn = "/sign-in";

    [Fact]
    public async Task The_right_pair_opens_the_workbench_with_a_cookie_that_scripts_and_other_sites_do_not_get()
    {
        await using var shop = await ClosedAsync();
        using var visitor = shop.Visit();
        var answer = await visitor.FillAsync(SignIn, SignIn, ("email", " MAKER@example.org "), ("passphrase", TestShop.Passphrase));
        Assert.Equal((HttpStatusCode.SeeOther, "/studio"), (answer.Status, answer.Location));
        var cookie = answer.Headers["Set-Cookie"];
        Assert.Contains("patternshop.maker=", cookie, StringComparison.Ordinal);
        Assert.Contains("; samesite=lax; httponly", cookie, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await visitor.GetAsync("/studio")).Status);
        Assert.Equal("/studio", (await visitor.GetAsync(SignIn)).Location);
    }

    [Fact]
    public async Task A_wrong_passphrase_and_an_unknown_maker_get_the_same_answer()
    {
        await using var shop = await ClosedAsync();
        using var visitor = shop.Visit();
        var wrong = await shop.SignInAsync(visitor, TestShop.Email, "five wooden combs sang");
        var unknown = await shop.SignInAsync(visitor, "nobody@example.org");
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.Status);
        Assert.Equal(wrong.Status, unknown.Status);
        Assert.Equal(wrong.Words, unknown.Words);
        Assert.Contains("do not belong together", wrong.Words, StringComparison.Ordinal);
        Assert.Equal("/sign-in?return=%2Fstudio", (await visitor.GetAsync("/studio")).Location);
    }

    [Theory]
    [InlineData("/studio/new", "/studio/new")]
    [InlineData("//example.org/x", "/studio")]
    [InlineData("https://example.org", "/studio")]
    [InlineData("/\\example.org", "/studio")]
    public async Task Only_addresses_here_are_returned_to(string wanted, string reached)
    {
        await using var shop = await ClosedAsync();
        using var visitor = shop.Visit();
        var page = "/sign-in?return=" + Uri.EscapeDataString(wanted);
        Assert.Equal(reached, (await visitor.FillAsync(page, SignIn, ("email", TestShop.Email), ("passphrase", TestShop.Passphrase))).Location);
        Assert.Equal(reached, (await visitor.PostAsync("/studio", SignIn, ("email", TestShop.Email), ("passphrase", TestShop.Passphrase), ("return", wanted))).Location);
        Assert.Equal(reached, (await visitor.GetAsync(page)).Location);
    }

    [Fact]
    public async Task Tries_are_counted_by_who_asks()
    {
        await using var shop = await ClosedAsync("--PatternShop:KnownProxies=127.0.0.1");
        using var visitor = shop.Visit();
        var token = await TryInVainAsync(visitor, time => ($"nobody{time}@example.org", "192.0.2.7"));

        var refused = await TryAsync(visitor, token, TestShop.Email, "192.0.2.7");
        Assert.Equal((HttpStatusCode.TooManyRequests, "300"), (refused.Status, refused.Headers["Retry-After"]));
        Assert.Contains("Wait 5 minutes", refused.Words, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.SeeOther, (await TryAsync(visitor, token, TestShop.Email, "192.0.2.8")).Status);
    }

    [Fact]
    public async Task Tries_are_counted_by_whom_they_say_they_are()
    {
        await using var shop = await ClosedAsync("--PatternShop:KnownProxies=127.0.0.1");
        using var visitor = shop.Visit();
        var token = await TryInVainAsync(visitor, time => (time % 2 == 0 ? "maker@example.org" : "Maker@Example.org ", $"192.0.2.{time}"));

        Assert.Equal(HttpStatusCode.TooManyRequests, (await TryAsync(visitor, token, TestShop.Email, "192.0.2.3")).Status);
        shop.Clock.Now += AccountThrottles.Window;
        Assert.Equal(HttpStatusCode.SeeOther, (await TryAsync(visitor, token, TestShop.Email, "192.0.2.3")).Status);
    }

    [Fact]
    public async Task Whoever_has_one_address_of_the_newer_kind_has_its_whole_network()
    {
        await using var shop = await ClosedAsync("--PatternShop:KnownProxies=127.0.0.1");
        using var visitor = shop.Visit();
        var token = await TryInVainAsync(visitor, time => ($"nobody{time}@example.org", $"2001:db8:0:1::{time + 1}"));

        Assert.Equal(HttpStatusCode.TooManyRequests, (await TryAsync(visitor, token, TestShop.Email, "2001:db8:0:1:ffff::1")).Status);
        Assert.Equal(HttpStatusCode.SeeOther, (await TryAsync(visitor, token, TestShop.Email, "2001:db8:0:2::1")).Status);
    }

    [Fact]
    public async Task What_a_stranger_writes_into_the_headers_of_a_proxy_is_not_believed()
    {
        await using var shop = await ClosedAsync("--PatternShop:KnownProxies=192.0.2.0/24");
        using var visitor = shop.Visit();
        var token = await visitor.TokenAsync(SignIn);
        for (var time = 0; time < AccountThrottles.Tries; time++)
        {
            await TryAsync(visitor, token, $"nobody{time}@example.org", $"198.51.100.{time}");
        }


        Assert.Equal(HttpStatusCode.TooManyRequests, (await TryAsync(visitor, token, TestShop.Email, "198.51.100.99")).Status);
    }

    [Fact]
    public async Task Behind_a_known_proxy_that_readers_reach_safely_the_cookies_are_for_safe_ways_only()
    {
        await using var shop = await ClosedAsync("--PatternShop:KnownProxies=127.0.0.1");
        using var visitor = shop.Visit();
        var page = await visitor.SendAsync(HttpMethod.Get, SignIn, null, ("X-Forwarded-Proto", "https"));
        Assert.Contains("; secure;", page.Headers["Set-Cookie"], StringComparison.Ordinal);
        var token = page.Html.QuerySelector("input[name=__RequestVerificationToken]")!.GetAttribute("value")!;
        var form = page.Headers["Set-Cookie"].Split(';')[0];
        var answer = await SendAsync(visitor, token, TestShop.Email, TestShop.Passphrase, ("X-Forwarded-Proto", "https"), ("Cookie", form));
        Assert.Equal(HttpStatusCode.SeeOther, answer.Status);
        Assert.Contains("; secure;", answer.Headers["Set-Cookie"], StringComparison.Ordinal);
    }

    [Fact]
    public async Task Signing_out_ends_every_session_of_the_maker()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        using var elsewhere = shop.Visit();
        await shop.SignInAsync(elsewhere);
        var stamp = (await shop.MakerAsync()).Stamp;
        var answer = await maker.FillAsync("/studio", "/sign-out");
        Assert.Equal((HttpStatusCode.SeeOther, "/"), (answer.Status, answer.Location));
        Assert.DoesNotContain(maker.Cookies, cookie => cookie.Name == "patternshop.maker");
        Assert.Equal("/sign-in?return=%2Fstudio", (await elsewhere.GetAsync("/studio")).Location);
        Assert.False(await shop.Makers.IsCurrentAsync((await shop.MakerAsync()).Id, stamp, TestContext.Current.CancellationToken));
        maker.Dispose();
    }

    [Fact]
    public async Task Signing_out_works_here_when_nothing_can_be_written_and_says_that_other_windows_stay_signed_in()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        using var elsewhere = shop.Visit();
        await shop.SignInAsync(elsewhere);
        await shop.SqlAsync("CREATE TRIGGER full BEFORE UPDATE ON Makers BEGIN SELECT RAISE(FAIL, 'database or disk is full'); END");
        var answer = await maker.FillAsync("/studio", "/sign-out");
        Assert.Equal((HttpStatusCode.OK, "You’re signed out in this browser only"), (answer.Status, answer.Heading));
        Assert.Contains("still signed in wherever else you signed in", answer.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(maker.Cookies, cookie => cookie.Name == "patternshop.maker");
        Assert.Equal(HttpStatusCode.Redirect, (await maker.GetAsync("/studio")).Status);
        Assert.Equal(HttpStatusCode.OK, (await elsewhere.GetAsync("/studio")).Status);
        await shop.SqlAsync("DROP TRIGGER full");
        Assert.Equal("/", (await elsewhere.FillAsync("/studio", "/sign-out")).Location);
        maker.Dispose();
    }

    [Fact]
    public async Task A_new_passphrase_ends_the_sessions_at_the_next_request()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        Assert.Equal(HttpStatusCode.OK, (await maker.GetAsync("/studio")).Status);
        await shop.Makers.SetPassphraseAsync(TestShop.Email, "six wooden combs sing", TestContext.Current.CancellationToken);
        Assert.Equal("/sign-in?return=%2Fstudio", (await maker.GetAsync("/studio")).Location);
        maker.Dispose();
    }

    [Fact]
    public async Task A_session_that_nobody_uses_ends()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        shop.Clock.Now += TimeSpan.FromDays(13);
        Assert.Equal(HttpStatusCode.OK, (await maker.GetAsync("/studio")).Status);
        shop.Clock.Now += TimeSpan.FromDays(13);
        Assert.Equal(HttpStatusCode.OK, (await maker.GetAsync("/studio")).Status);
        shop.Clock.Now += TimeSpan.FromDays(15);
        Assert.Equal(HttpStatusCode.Redirect, (await maker.GetAsync("/studio")).Status);
        maker.Dispose();
    }

    /// <summary>A shop with its maker, and nobody who is signed in.</summary>
    private static async Task<TestShop> ClosedAsync(params string[] settings)
    {
        var (shop, maker) = await TestShop.SetUpAsync(settings);
        maker.Dispose();
        return shop;
    }

    /// <summary>Uses up all tries with a wrong passphrase, and gives the token of the form.</summary>
    private static async Task<string> TryInVainAsync(Visitor visitor, Func<int, (string Email, string From)> who)
    {
        var token = await visitor.TokenAsync(SignIn);
        for (var time = 0; time < AccountThrottles.Tries; time++)
        {
            var (email, from) = who(time);
            Assert.Equal(HttpStatusCode.UnprocessableEntity, (await TryAsync(visitor, token, email, from, "wrong")).Status);
        }

        return token;
    }

    private static Task<Reply> TryAsync(Visitor visitor, string token, string email, string from, string passphrase = TestShop.Passphrase) =>
        SendAsync(visitor, token, email, passphrase, ("X-Forwarded-For", from));

    private static async Task<Reply> SendAsync(Visitor visitor, string token, string email, string passphrase, params (string Name, string Value)[] headers)
    {
        using var content = new FormUrlEncodedContent([new("email", email), new("passphrase", passphrase), new("__RequestVerificationToken", token)]);
        return await visitor.SendAsync(HttpMethod.Post, SignIn, content, headers);
    }
}
