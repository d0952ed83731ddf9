using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class FieldEditsTests(SharedBench shared) : IClassFixture<SharedBench>
{
    [Fact]
    public async Task Settling_waits_for_what_was_asked_and_says_what_came_of_it()
    {
        using var seat = await shared.Bench.SitAsync(await shared.Bench.PatternAsync());
        var fields = new FieldEdits(seat, "fields");
        Assert.Null(await fields.SettledAsync());
        shared.Bench.Time.Fail();
        var edit = fields.MakeAsync(new SetWords(Title: "Full"));
        Assert.IsType<Acknowledgement.Unsaved>(await fields.SettledAsync());
        Assert.True(edit.IsCompleted);
        shared.Bench.Time.Go();
        _ = fields.MakeAsync(new SetWords(Title: "Room again"));
        Assert.Null(await fields.SettledAsync());
        Assert.Equal("Room again", seat.View.Document.Title);
        _ = fields.MakeAsync(new SetWords(Title: ""));
        Assert.Null(await fields.SettledAsync());
    }

    [Fact]
    public async Task Settling_waits_while_the_store_is_slow()
    {
        using var seat = await shared.Bench.SitAsync(await shared.Bench.PatternAsync());
        var fields = new FieldEdits(seat, "fields");
        using var gate = new ManualResetEventSlim();
        var asked = shared.Bench.Time.HoldAsync(gate);
        _ = fields.MakeAsync(new SetWords(Title: "Slow"));
        await asked;
        var settled = fields.SettledAsync();
        Assert.False(settled.IsCompleted);
        shared.Bench.Time.Go();
        gate.Set();
        Assert.Null(await settled);
    }
}
