using System.Globalization;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class ThrottleTests
{
    private static readonly TimeSpan Window = TimeSpan.FromMinutes(5);
    private readonly TestClock _clock = new() { Now = DateTimeOffset.UnixEpoch.AddMinutes(6) };

    [Fact]
    public void So_many_tries_go_on_and_the_next_one_waits_for_the_end_of_the_window()
    {
        var throttle = new Throttle(_clock, 2, Window);
        Assert.Null(throttle.Wait("a"));
        Assert.Null(throttle.Wait("a"));
        Assert.Equal(TimeSpan.FromMinutes(4), throttle.Wait("a"));
        Assert.Null(throttle.Wait("b"));
        _clock.Now += TimeSpan.FromMinutes(4) - TimeSpan.FromTicks(1);
        Assert.Equal(TimeSpan.FromTicks(1), throttle.Wait("a"));
        _clock.Now += TimeSpan.FromTicks(1);
        Assert.Null(throttle.Wait("a"));
    }

    [Fact]
    public void What_it_remembers_is_bounded_by_forgetting_who_tried_least_the_oldest_first()
    {
        var throttle = new Throttle(_clock, 2, Window);
        for (var key = 0; key < 10_000; key++)
        {
            Assert.Null(throttle.Wait(key.ToString(CultureInfo.InvariantCulture)));
        }

        Assert.Null(throttle.Wait("0"));
        Assert.Null(throttle.Wait("one more"));
        // "1" was forgotten, and begins again; to make room for it, so was "2"
        Assert.Null(throttle.Wait("1"));
        Assert.Null(throttle.Wait("1"));
        Assert.NotNull(throttle.Wait("1"));
        Assert.Null(throttle.Wait("3"));
        Assert.NotNull(throttle.Wait("3"));
        Assert.NotNull(throttle.Wait("0"));
    }

    [Fact]
    public void However_many_new_ones_come_none_is_turned_away_and_who_may_not_go_on_is_not_forgotten()
    {
        var throttle = new Throttle(_clock, 2, Window);
        Assert.Null(throttle.Wait("dangerous"));
        Assert.Null(throttle.Wait("dangerous"));
        for (var key = 0; key < 50_000; key++)
        {
            Assert.Null(throttle.Wait(key.ToString(CultureInfo.InvariantCulture)));
        }

        Assert.NotNull(throttle.Wait("dangerous"));
        _clock.Now += Window;
        Assert.Null(throttle.Wait("dangerous"));
    }

    [Fact]
    public void When_all_have_used_up_their_tries_the_oldest_makes_room()
    {
        var throttle = new Throttle(_clock, 1, Window);
        for (var key = 0; key <= Throttle.MostKeys; key++)
        {
            Assert.Null(throttle.Wait(key.ToString(CultureInfo.InvariantCulture)));
        }

        Assert.NotNull(throttle.Wait("1"));
        Assert.Null(throttle.Wait("0"));
    }

    [Fact]
    public async Task Many_at_once_get_no_more_than_one_after_another()
    {
        var throttle = new Throttle(_clock, 10, Window);
        var waits = await Task.WhenAll(Enumerable.Range(0, 200).Select(_ => Task.Run(() => throttle.Wait("a"))));
        Assert.Equal(10, waits.Count(wait => wait is null));
    }
}
