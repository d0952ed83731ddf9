using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

public sealed class HistoryTests
{
    private static readonly PatternDocument First = Charts.Document("xx../..xx");

    /// <summary>Cells without order are the worst that can be: nothing makes the chart itself smaller.</summary>
    [Fact]
    public async Task The_last_1000_steps_can_be_undone_and_take_less_than_10_MB_on_300_by_300()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var documents = Drawn(1020);
        var id = await store.PatternAsync(maker, documents[0]);
        await store.Access.WriteAsync(async context => await TakeAsync(context, id, documents, store.Time.Now), TestContext.Current.CancellationToken);
        using var raw = store.Raw();
        Assert.Equal((1005L, 16L), (raw.Sql("SELECT count(*) FROM Steps"), raw.Sql("SELECT min(Position) FROM Steps")));
        Assert.InRange((long)raw.Sql("SELECT sum(length(Content)) FROM Steps")!, 500_000, 10_000_000);
        await UndoneAsync(store, maker, id, documents, from: 1020, steps: 1004);
        var oldest = (await store.Workroom.OpenAsync(maker, id))!.Now;
        Assert.Equal((false, "Step 17"), (oldest.CanUndo, oldest.RedoName));
        Assert.IsType<SaveResult.Nothing>(await store.Workroom.UndoAsync(maker, id, "w", 2000, oldest.Revision));
        var redone = Assert.IsType<SaveResult.Saved>(await store.Workroom.RedoAsync(maker, id, "w", 3000, oldest.Revision)).Now;
        Assert.Equal((documents[17], "Step 17", "Step 18"), (redone.Document, redone.UndoName, redone.RedoName));
    }

    [Fact]
    public async Task A_new_step_takes_the_place_of_what_was_undone()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, First);
        await store.Workroom.SaveAsync(maker, id, Step(1));
        await store.Workroom.SaveAsync(maker, id, Step(2));
        await store.Workroom.UndoAsync(maker, id, "w", 3, 3);
        await store.Workroom.UndoAsync(maker, id, "w", 4, 4);
        var saved = Assert.IsType<SaveResult.Saved>(await store.Workroom.SaveAsync(maker, id, Step(5)));
        Assert.Equal(new PatternState(6, First with { Title = "Title 5" }, "Step 5", null), saved.Now);
        Assert.Equal(new SaveResult.Nothing(saved.Now), await store.Workroom.RedoAsync(maker, id, "w", 6, 6));
        Assert.Equal(First, Assert.IsType<SaveResult.Saved>(await store.Workroom.UndoAsync(maker, id, "w", 7, 6)).Now.Document);
    }

    [Fact]
    public async Task What_was_sent_before_is_known_after_later_steps_and_a_restart()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, First);
        await store.Workroom.SaveAsync(maker, id, Step(1));
        await store.Workroom.UndoAsync(maker, id, "w", 2, 2);
        var saved = Assert.IsType<SaveResult.Saved>(await store.Workroom.SaveAsync(maker, id, Step(3)));
        await using var later = store.Beside();
        await later.Start.OpenAsync();
        Assert.Equal(new SaveResult.HadAlready(2, saved.Now), await later.Workroom.SaveAsync(maker, id, Step(1)));
        Assert.Equal(new SaveResult.HadAlready(3, saved.Now), await later.Workroom.UndoAsync(maker, id, "w", 2, 2));
        Assert.Equal(new SaveResult.HadAlready(4, saved.Now), await later.Workroom.SaveAsync(maker, id, Step(3)));
        Assert.Equal(new SaveResult.Moved(saved.Now), await later.Workroom.SaveAsync(maker, id, Step(4) with { BaseRevision = 3 }));
        Assert.Equal(new SaveResult.Moved(saved.Now), await later.Workroom.SaveAsync(maker, id, Step(4) with { BaseRevision = 5 }));
        Assert.Equal(saved.Now, (await later.Workroom.OpenAsync(maker, id))!.Now);
    }

    [Fact]
    public async Task A_document_that_breaks_rules_is_refused_with_all_of_them()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, First);
        var bad = First with { Title = "", Width = First.Width with { Repeats = 0 } };
        var refused = Assert.IsType<SaveResult.Refused>(await store.Workroom.SaveAsync(maker, id, Step(1) with { Document = bad }));
        Assert.Equal(DocumentRules.Check(bad), refused.Problems);
        Assert.Equal(["/title", "/width/repeats"], refused.Problems.Select(problem => problem.Pointer));
        await Assert.ThrowsAsync<ArgumentException>(() => store.Workroom.CreateAsync(maker, bad));
        Assert.Equal(1, (await store.Workroom.OpenAsync(maker, id))!.Revision);
    }

    [Theory]
    [InlineData("", "Step")]
    [InlineData("w", " ")]
    public async Task A_step_without_client_or_name_is_a_mistake(string client, string name)
    {
        await using var store = await TestStore.OpenAsync();
        await Assert.ThrowsAsync<ArgumentException>(() => store.Workroom.SaveAsync(default, default, new StepRequest(client, 1, 1, name, First)));
        await Assert.ThrowsAsync<ArgumentException>(() => store.Workroom.SaveAsync(default, default, new StepRequest(new string('w', 65), 1, 1, "Step", First)));
    }

    [Fact]
    public async Task A_deleted_pattern_takes_its_steps_along_and_an_issued_one_stays()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var kept = await store.PatternAsync(maker);
        await store.IssueAsync(maker, kept);
        var id = await store.PatternAsync(maker, First);
        await store.Workroom.SaveAsync(maker, id, Step(1));
        Assert.False(await store.Workroom.DeleteAsync(maker, kept));
        Assert.True(await store.Workroom.DeleteAsync(maker, id));
        Assert.False(await store.Workroom.DeleteAsync(maker, id));
        Assert.Null(await store.Workroom.OpenAsync(maker, id));
        store.Time.Now += Deleted.Kept;
        Assert.Equal(1, await store.Sweeping.SweepAsync());
        using var raw = store.Raw();
        Assert.Equal(1L, raw.Sql("SELECT count(*) FROM Steps"));
        Assert.Equal(0L, raw.Sql("SELECT count(*) FROM CarriedOut"));
    }

    [Fact]
    public async Task A_stored_document_of_an_older_format_is_read_and_issued()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, First);
        await store.Workroom.SaveAsync(maker, id, Step(1));
        var old = System.Text.Encoding.UTF8.GetString(PatternWriter.CanonicalBytes(First))
            .Replace("\"cloth\":null,\"format\":4", "\"format\":1", StringComparison.Ordinal)
            .Replace("\"limits\":null,", "", StringComparison.Ordinal)
            .Replace("\"photos\":[],\"rowWords\":[],", "", StringComparison.Ordinal)
            .Replace("\"videos\":[],", "", StringComparison.Ordinal)
            .Replace("\"wefts\":[{\"start\":\"left\"}]", "\"start\":\"left\"", StringComparison.Ordinal);
        await using (var context = store.File.Context())
        {
            context.Remove(context.Steps.Single(step => step.Position == 0));
            await context.SaveChangesAsync();
            context.Add(new StepRow { PatternId = id.Value, Position = 0, Name = "", TakenAt = store.Time.Now, Content = DocumentContent.Pack(System.Text.Encoding.UTF8.GetBytes(old)) });
            await context.SaveChangesAsync();
        }

        var undone = Assert.IsType<SaveResult.Saved>(await store.Workroom.UndoAsync(maker, id, "w", 2, 2));
        Assert.Equal(First, undone.Now.Document);
        await store.IssueAsync(maker, id);
        Assert.False((await store.Workroom.OpenAsync(maker, id))!.HasUnissuedChanges);
    }

    // strokes on a chart, and now and then other words
    private static List<PatternDocument> Drawn(int steps)
    {
        var random = new Random(6);
        const int Side = 300;
        var documents = new List<PatternDocument>
        {
            First with { Motif = BitGrid.Create(Side, Side, (_, _) => random.Next(2) == 1), Rows = First.Rows with { Steps = [new ChartRows(1, Side, 1)] } },
        };
        for (var number = 1; number <= steps; number++)
        {
            var (row, end, motif) = (random.Next(Side - 20), random.Next(Side - 20), documents[^1].Motif);
            for (var cell = 0; cell < 20; cell++)
            {
                motif = motif.With(row + cell, end + cell, !motif[row, end]);
            }

            documents.Add(number % 50 == 0 ? documents[^1] with { Notes = $"Note {number}", Title = $"Title {number}" } : documents[^1] with { Motif = motif });
        }

        return documents;
    }

    private static async Task<int> TakeAsync(StoreContext context, PatternId id, List<PatternDocument> documents, DateTimeOffset now)
    {
        foreach (var (number, document) in documents.Index().Skip(1))
        {
            var pattern = context.Patterns.Single(row => row.Id == id.Value);
            await History.AppendAsync(context, pattern, $"Step {number}", PackedDocument.Of(document), now, TestContext.Current.CancellationToken);
            await context.SaveChangesAsync();
            context.ChangeTracker.Clear();
        }

        return documents.Count;
    }

    private static async Task UndoneAsync(TestStore store, MakerId maker, PatternId id, List<PatternDocument> documents, int from, int steps)
    {
        var now = (await store.Workroom.OpenAsync(maker, id))!.Now;
        for (var undone = 1; undone <= steps; undone++)
        {
            Assert.Equal((documents[from - undone + 1], $"Step {from - undone + 1}"), (now.Document, now.UndoName));
            now = Assert.IsType<SaveResult.Saved>(await store.Workroom.UndoAsync(maker, id, "w", (from * 100) + undone, now.Revision)).Now;
        }

        Assert.Equal(documents[from - steps], now.Document);
    }

    private static StepRequest Step(int number) => new("w", number, number, $"Step {number}", First with { Title = $"Title {number}" });
}
