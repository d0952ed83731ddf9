using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>What is remembered of requests that were carried out has bounds, whatever clients call themselves.</summary>
public sealed class CarriedOutTests
{
    private static readonly PatternDocument First = Charts.Document("xx../..xx");

    [Fact]
    public async Task Clients_without_number_do_not_fill_the_store_and_what_was_sent_lately_is_still_known()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, First);
        const int Sent = 30_000;
        await ClaimAsync(store, id, Sent, "'script ' || n", "1");
        await StepsAsync(store, maker, id, Sent);
        using var raw = store.Raw();
        Assert.InRange((long)raw.Sql("SELECT count(*) FROM CarriedOut")!, Errand.KeptOfPattern, Errand.KeptOfPattern + Errand.ClearedEvery);
        var known = new StepRequest($"script {Sent - 100}", 1, Sent, "Step", First);
        Assert.Equal(Sent - 100, Assert.IsType<SaveResult.HadAlready>(await store.Workroom.SaveAsync(maker, id, known)).Revision);
        // what is forgotten was made on a revision that is long past: it is refused, never done twice
        Assert.IsType<SaveResult.Moved>(await store.Workroom.SaveAsync(maker, id, known with { Client = "script 5", BaseRevision = 4 }));
    }

    [Fact]
    public async Task A_client_pushes_out_its_own_old_requests_and_nobody_elses()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, First);
        const int Sent = 4000;
        await store.Workroom.SaveAsync(maker, id, new StepRequest("other", 1, 1, "Step", First with { Title = "Other" }));
        await ClaimAsync(store, id, Sent, "'w'", "n");
        await StepsAsync(store, maker, id, Sent);
        using var raw = store.Raw();
        Assert.Equal((long)Errand.KeptOfClient, raw.Sql("SELECT count(*) FROM CarriedOut WHERE Client = 'w'"));
        Assert.True(await store.Workroom.CarriedOutAsync(maker, id, "other", 1));
        Assert.True(await store.Workroom.CarriedOutAsync(maker, id, "w", Sent));
        Assert.False(await store.Workroom.CarriedOutAsync(maker, id, "w", 1));
    }

    // as if so many requests had been carried out, each on the revision before it
    private static Task ClaimAsync(TestStore store, PatternId id, int count, string client, string sequence)
    {
        using var raw = store.Raw();
        raw.Sql($"""
            WITH RECURSIVE numbers(n) AS (SELECT 1 UNION ALL SELECT n + 1 FROM numbers WHERE n < {count})
            INSERT INTO CarriedOut (PatternId, Client, Sequence, Revision) SELECT '{id}', {client}, {sequence}, n FROM numbers
            """);
        raw.Sql($"UPDATE Patterns SET Revision = {count} WHERE Id = '{id}'");
        return Task.CompletedTask;
    }

    private static async Task StepsAsync(TestStore store, MakerId maker, PatternId id, int revision)
    {
        for (var step = 1; step <= Errand.ClearedEvery; step++)
        {
            var request = new StepRequest("w", revision + step, revision + step - 1, "Step", First with { Title = $"Title {step}" });
            Assert.IsType<SaveResult.Saved>(await store.Workroom.SaveAsync(maker, id, request));
        }
    }
}
