using Xunit;

namespace PatternShop.Web.Tests;

public sealed class CatchUpTests
{
    [Fact]
    public async Task Steps_are_done_one_after_another_until_nothing_is_new()
    {
        var catchUp = new CatchUp();
        var step = new TaskCompletionSource();
        var (news, done) = (1, 0);
        var first = catchUp.RunAsync(() => done < news, StepAsync);
        news = 3;
        Assert.True(catchUp.RunAsync(() => done < news, StepAsync).IsCompletedSuccessfully);
        Assert.Equal(0, done);
        step.SetResult();
        await first;
        Assert.Equal(3, done);

        async Task StepAsync()
        {
            await step.Task;
            done++;
        }
    }

    [Fact]
    public async Task One_step_that_fails_is_heard_of_and_does_not_end_it_for_ever()
    {
        var catchUp = new CatchUp();
        var done = 0;
        await Assert.ThrowsAsync<InvalidOperationException>(() => catchUp.RunAsync(() => done < 1, () => throw new InvalidOperationException("once")));
        await catchUp.RunAsync(() => done < 1, () => Task.FromResult(done++));
        Assert.Equal(1, done);
    }
}
