using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The daily sweep on a clock whose days pass when the test says so.</summary>
public sealed class DailySweepTests
{
    [Fact]
    public async Task Every_day_what_is_over_is_removed_and_a_day_that_fails_does_not_end_it()
    {
        var top = Directory.CreateTempSubdirectory("sweep");
        try
        {
            var days = new Days();
            using var log = new LogLines();
            await using var services = new ServiceCollection()
                .AddSingleton<TimeProvider>(days)
                .AddPatternStore(Path.Combine(top.FullName, "data"))
                .AddLogging(logging => logging.AddProvider(log))
                .AddSingleton<DailySweep>()
                .BuildServiceProvider();
            var sweep = services.GetRequiredService<DailySweep>();
            await sweep.StartAsync(TestContext.Current.CancellationToken);

            // nobody has opened the store yet
            await days.PassAsync();
            Assert.Contains(log.Lines, line => line.Contains("could not be removed", StringComparison.Ordinal));

            await services.GetRequiredService<StoreStart>().OpenAsync(TestContext.Current.CancellationToken);
            var makers = services.GetRequiredService<Makers>();
            var workroom = services.GetRequiredService<Workroom>();
            var maker = await MakerAsync(makers);
            var (early, late) = (await workroom.CreateAsync(maker, Charts.Document("x."), TestContext.Current.CancellationToken), await workroom.CreateAsync(maker, Charts.Document("x."), TestContext.Current.CancellationToken));
            await workroom.DeleteAsync(maker, early, TestContext.Current.CancellationToken);
            await days.PassAsync();
            await workroom.DeleteAsync(maker, late, TestContext.Current.CancellationToken);
            for (var day = 2; day <= 30; day++)
            {
                Assert.Equal(2, (await workroom.DeletedAsync(maker, TestContext.Current.CancellationToken)).Count);
                await days.PassAsync();
            }

            // what is due is removed a day later, when another sweep has confirmed the clock
            await days.PassAsync();

            // seen from the first day again: the one is gone for good, the other waits
            days.Now = Days.First;
            Assert.Equal(late, Assert.Single(await workroom.DeletedAsync(maker, TestContext.Current.CancellationToken)).Id);
            await sweep.StopAsync(TestContext.Current.CancellationToken);
        }
        finally
        {
            top.Delete(recursive: true);
        }
    }

    private static async Task<MakerId> MakerAsync(Makers makers) => Assert.IsType<SetUpResult.Done>(await makers.SetUpAsync(
        (await makers.SetUpCodeAsync())!, new NewMaker("Tansy Lane", "tansy-lane", TestShop.Email, TestShop.Passphrase, "UTC"), [], TestContext.Current.CancellationToken)).Maker;

    /// <summary>A clock that stands still; its one timer rings when a day is made to pass.</summary>
    private sealed class Days : TimeProvider
    {
        public static readonly DateTimeOffset First = new(2026, 11, 24, 12, 0, 0, TimeSpan.Zero);
        private TaskCompletionSource<Bell> _next = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public DateTimeOffset Now { get; set; } = First;

        public override DateTimeOffset GetUtcNow() => Now;

        public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
        {
            Assert.Equal(TimeSpan.FromDays(1), dueTime);
            var bell = new Bell(callback, state);
            _next.SetResult(bell);
            return bell;
        }

        /// <summary>A day passes; returns when what happens then is done, and the next day is waited for.</summary>
        public async Task PassAsync()
        {
            var bell = await _next.Task;
            _next = new TaskCompletionSource<Bell>(TaskCreationOptions.RunContinuationsAsynchronously);
            Now += TimeSpan.FromDays(1);
            bell.Ring();
            await _next.Task;
        }
    }

    private sealed class Bell(TimerCallback callback, object? state) : ITimer
    {
        public void Ring() => callback(state);

        public bool Change(TimeSpan dueTime, TimeSpan period) => true;

        public void Dispose()
        {
        }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
