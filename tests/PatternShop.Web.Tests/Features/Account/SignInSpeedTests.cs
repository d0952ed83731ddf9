using System.Diagnostics;
using System.Net;
using Microsoft.Extensions.DependencyInjection;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>Other pages are about as quick with a crowd at the sign-in form as without. The clock is believed where nothing else runs.</summary>
public sealed class SignInSpeedTests
{
    private static readonly bool IsAlone =
        Effort.IsFull && Environment.GetEnvironmentVariable("PATTERNSHOP_ALONE")?.Contains(nameof(SignInSpeedTests), StringComparison.Ordinal) == true;

    private static readonly int Crowd = Effort.Of(20, 200);
    private static readonly int Rounds = Effort.Of(1, 8);

    [Fact]
    public async Task A_crowd_at_the_form_does_not_hold_up_readers()
    {
        await using var shop = await TestShop.OpenAsync(services => services.AddSingleton(PassphraseHashing.Current), "--PatternShop:KnownProxies=127.0.0.1");
        using var maker = shop.Visit();
        await maker.FillAsync(shop.SetUpPath, "/setup", [.. TestShop.SetUpFields(), ("Samples", "lantern-diamonds")]);
        using var reader = shop.Visit();
        using var crowd = shop.Visit();
        var token = await crowd.TokenAsync("/sign-in");
        await ReadAsync(reader, Task.Delay(TimeSpan.FromSeconds(1), TimeProvider.System, TestContext.Current.CancellationToken));
        var (calm, busy) = (new List<TimeSpan>(), new List<TimeSpan>());
        for (var round = 0; round < Rounds; round++)
        {
            var length = Stopwatch.StartNew();
            var tries = Task.WhenAll(Enumerable.Range(0, Crowd).Select(stranger => TryAsync(crowd, token, $"nobody{stranger}@example.org", $"198.18.{round}.{stranger}")));
            busy.AddRange(await ReadAsync(reader, tries));
            calm.AddRange(await ReadAsync(reader, Task.Delay(length.Elapsed, TimeProvider.System, TestContext.Current.CancellationToken)));
            Assert.All(await tries, answer => Assert.Contains(answer.Status, new[] { HttpStatusCode.UnprocessableEntity, HttpStatusCode.TooManyRequests }));
        }

        var (without, with) = (Worst(calm), Worst(busy));
        TestContext.Current.TestOutputHelper?.WriteLine(FormattableString.Invariant(
            $"p99 of {calm.Count} pages without {without.TotalMilliseconds:0.0} ms, of {busy.Count} with a crowd of {Crowd} {with.TotalMilliseconds:0.0} ms; median {Median(calm).TotalMilliseconds:0.0} and {Median(busy).TotalMilliseconds:0.0} ms"));
        Assert.True(!IsAlone || with <= 2 * without, $"{with} with a crowd, {without} without");
    }

    /// <summary>Reads the shop's first page again and again until something has happened; how long each took.</summary>
    private static async Task<List<TimeSpan>> ReadAsync(Visitor reader, Task until)
    {
        var times = new List<TimeSpan>();
        do
        {
            var time = Stopwatch.StartNew();
            Assert.Equal(HttpStatusCode.OK, (await reader.GetAsync("/")).Status);
            times.Add(time.Elapsed);
        }
        while (!until.IsCompleted);

        return times;
    }

    private static TimeSpan Worst(List<TimeSpan> times) => times.Order().ElementAt((int)(0.99 * (times.Count - 1)));

    private static TimeSpan Median(List<TimeSpan> times) => times.Order().ElementAt(times.Count / 2);

    private static async Task<Reply> TryAsync(Visitor visitor, string token, string email, string from)
    {
        using var content = new FormUrlEncodedContent([new("email", email), new("passphrase", "five wooden combs sang"), new("__RequestVerificationToken", token)]);
        return await visitor.SendAsync(HttpMethod.Post, "/sign-in", content, ("X-Forwarded-For", from));
    }
}
