using CsCheck;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class PatternSessionTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private const string Here = "window-1";
    private const string There = "window-2";

    [Fact]
    public async Task What_is_acknowledged_is_in_the_store()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync();
        using var seat = await bench.SitAsync(id);
        var stroke = TestBench.Stroke(seat.View.Document.Motif, (0, 1, true), (2, 3, false));
        Assert.IsType<Acknowledgement.Saved>(await seat.SubmitAsync(Here, 1, 0, stroke));
        var stored = await bench.StoredAsync(id);
        Assert.True(stored.Document.Motif[0, 1]);
        Assert.Equal((2, "draw 2 cells"), (stored.Revision, stored.UndoName));
        Assert.Equal(stored.Document, seat.View.Document);
    }

    [Fact]
    public async Task A_slow_store_is_waited_for()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync();
        using var seat = await bench.SitAsync(id);
        using var gate = new ManualResetEventSlim();
        var asked = bench.Time.HoldAsync(gate);
        var edit = seat.SubmitAsync(Here, 1, 0, new SetWords(Title: "Slow"));
        await asked;
        Assert.False(edit.IsCompleted);
        Assert.Equal((1, "Test cloth"), (seat.View.Revision, seat.View.Document.Title));
        bench.Time.Go();
        gate.Set();
        Assert.IsType<Acknowledgement.Saved>(await edit);
        Assert.Equal("Slow", (await bench.StoredAsync(id)).Document.Title);
    }

    [Fact]
    public async Task What_the_store_refuses_is_not_acknowledged_and_can_be_sent_again()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync();
        using var seat = await bench.SitAsync(id);
        bench.Time.Fail();
        Assert.IsType<Acknowledgement.Unsaved>(await seat.SubmitAsync(Here, 1, 0, new SetWords(Title: "Full")));
        Assert.Equal((1, "Test cloth"), (seat.View.Revision, seat.View.Document.Title));
        bench.Time.Go();
        Assert.Equal("Test cloth", (await bench.StoredAsync(id)).Document.Title);
        Assert.IsType<Acknowledgement.Saved>(await seat.SubmitAsync(Here, 1, 0, new SetWords(Title: "Full")));
        Assert.Equal((2, "Full"), ((await bench.StoredAsync(id)).Revision, seat.View.Document.Title));
    }

    [Fact]
    public async Task An_edit_that_comes_twice_is_made_once()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync();
        using var seat = await bench.SitAsync(id);
        var stroke = TestBench.Stroke(seat.View.Document.Motif, (0, 1, true));
        Assert.IsType<Acknowledgement.Saved>(await seat.SubmitAsync(Here, 1, 0, stroke));
        Assert.IsType<Acknowledgement.Saved>(await seat.SubmitAsync(There, 1, 0, TestBench.Stroke(seat.View.Document.Motif, (0, 1, false))));
        Assert.IsType<Acknowledgement.HadAlready>(await seat.SubmitAsync(Here, 1, 0, stroke));
        Assert.Equal(3, (await bench.StoredAsync(id)).Revision);
        Assert.False(seat.View.Document.Motif[0, 1]);
    }

    [Fact]
    public async Task A_saved_stroke_that_comes_again_is_not_refused_though_the_motif_has_another_size_now()
    {
        var bench = shared.Bench;
        using var seat = await bench.SitAsync(await bench.PatternAsync());
        var stroke = TestBench.Stroke(seat.View.Document.Motif, (0, 1, true));
        Assert.IsType<Acknowledgement.Saved>(await seat.SubmitAsync(Here, 1, 0, stroke));
        Assert.IsType<Acknowledgement.Saved>(await seat.SubmitAsync(There, 1, 0, new ResizeMotif(6, 6)));
        Assert.IsType<Acknowledgement.HadAlready>(await seat.SubmitAsync(Here, 1, 0, stroke));
    }

    [Fact]
    public async Task A_stroke_that_no_longer_fits_is_refused_in_words_and_the_next_goes_on()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync();
        using var seat = await bench.SitAsync(id);
        var old = TestBench.Stroke(seat.View.Document.Motif, (7, 7, true));
        await seat.SubmitAsync(There, 1, 0, new ResizeMotif(6, 6));
        var refused = Assert.IsType<Acknowledgement.Refused>(await seat.SubmitAsync(Here, 1, 0, old));
        Assert.Equal("It was drawn on a motif of 10 rows of 10 ends; the motif now has 6 rows of 6 ends.", Assert.Single(refused.Problems).What);
        Assert.Equal(2, (await bench.StoredAsync(id)).Revision);
        Assert.IsType<Acknowledgement.Saved>(await seat.SubmitAsync(Here, 2, 1, TestBench.Stroke(seat.View.Document.Motif, (5, 5, true))));
    }

    [Fact]
    public async Task An_edit_that_overtook_an_earlier_one_waits_for_it()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync();
        using var seat = await bench.SitAsync(id);
        var motif = seat.View.Document.Motif;
        Assert.IsType<Acknowledgement.Early>(await seat.SubmitAsync(Here, 2, 1, TestBench.Stroke(motif, (0, 1, false))));
        Assert.Equal(1, (await bench.StoredAsync(id)).Revision);
        Assert.IsType<Acknowledgement.Saved>(await seat.SubmitAsync(Here, 1, 0, TestBench.Stroke(motif, (0, 1, true))));
        Assert.IsType<Acknowledgement.Saved>(await seat.SubmitAsync(Here, 2, 1, TestBench.Stroke(motif, (0, 1, false))));
        Assert.False((await bench.StoredAsync(id)).Document.Motif[0, 1]);
    }

    [Fact]
    public async Task Nothing_is_saved_after_the_maker_signed_out()
    {
        await using var bench = await TestBench.OpenAsync();
        var id = await bench.PatternAsync();
        using var seat = await bench.SitAsync(id);
        await bench.Makers.EndSessionsAsync(bench.Maker.Id);
        Assert.IsType<Acknowledgement.SignedOut>(await seat.SubmitAsync(Here, 1, 0, new SetWords(Title: "Late")));
        Assert.IsType<Acknowledgement.SignedOut>(await seat.UndoAsync(Here, 2));
        Assert.Equal((1, "Test cloth"), ((await bench.StoredAsync(id)).Revision, (await bench.StoredAsync(id)).Document.Title));
    }

    [Fact]
    public async Task What_somebody_changed_past_the_session_is_kept()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync();
        using var seat = await bench.SitAsync(id);
        var outside = seat.View.Document with { Notes = "From elsewhere" };
        await bench.Workroom.SaveAsync(bench.Maker.Id, id, new StepRequest("elsewhere", 1, 1, "change the notes", outside));
        Assert.IsType<Acknowledgement.Saved>(await seat.SubmitAsync(Here, 1, 0, new SetWords(Title: "From here")));
        var stored = await bench.StoredAsync(id);
        Assert.Equal(("From here", "From elsewhere", 3), (stored.Document.Title, stored.Document.Notes, stored.Revision));
    }

    [Fact]
    public async Task A_deleted_pattern_is_gone()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync();
        using var seat = await bench.SitAsync(id);
        Assert.True(await bench.Workroom.DeleteAsync(bench.Maker.Id, id));
        Assert.IsType<Acknowledgement.Gone>(await seat.SubmitAsync(Here, 1, 0, new SetWords(Title: "Gone")));
    }

    [Fact]
    public async Task Only_the_maker_sits_down_and_the_session_goes_with_the_last_window()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync();
        Assert.Null(await bench.Patterns.JoinAsync(new MakerId(4711), "stamp", id, () => { }));
        var first = await bench.SitAsync(id);
        var second = await bench.SitAsync(id);
        Assert.Same(first.Session, second.Session);
        first.Dispose();
        Assert.Equal(1, bench.Patterns.Count);
        second.Dispose();
        Assert.Equal(0, bench.Patterns.Count);
    }

    [Fact]
    public async Task The_other_windows_are_told_and_only_they()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync();
        var (mine, theirs) = (0, 0);
        using var here = await bench.SitAsync(id, () => mine++);
        using var there = await bench.SitAsync(id, () => theirs++);
        await here.SubmitAsync(Here, 1, 0, new SetWords(Title: "Told"));
        Assert.Equal((0, 1, "Told"), (mine, theirs, there.View.Document.Title));
        await here.SubmitAsync(Here, 2, 1, new SetWords(Title: ""));
        Assert.Equal((0, 1), (mine, theirs));
        await there.UndoAsync(There, 1);
        Assert.Equal((1, 1, "Test cloth"), (mine, theirs, here.View.Document.Title));
    }

    [Fact]
    public async Task Undo_and_redo_walk_the_same_way_back_and_forth()
    {
        var bench = shared.Bench;
        using var seat = await bench.SitAsync(await bench.PatternAsync());
        Assert.IsType<Acknowledgement.Nothing>(await seat.UndoAsync(Here, 1));
        var documents = new List<PatternDocument> { seat.View.Document };
        foreach (var (at, edit) in Edits(90).Index())
        {
            if (await seat.SubmitAsync(Here, at + 2, 0, edit) is Acknowledgement.Saved)
            {
                documents.Add(seat.View.Document);
            }
        }

        Assert.True(documents.Count > 20, $"{documents.Count} edits fitted");
        for (var at = documents.Count - 2; at >= 0; at--)
        {
            Assert.IsType<Acknowledgement.Saved>(await seat.UndoAsync(There, 1000 - at));
            Assert.Equal(documents[at], seat.View.Document);
        }

        Assert.Null(seat.View.UndoName);
        for (var at = 1; at < documents.Count; at++)
        {
            Assert.IsType<Acknowledgement.Saved>(await seat.RedoAsync(There, 1000 + at));
            Assert.Equal(documents[at], seat.View.Document);
        }

        Assert.IsType<Acknowledgement.Nothing>(await seat.RedoAsync(There, 5000));
    }

    // the same in every run: of others too few might fit
    private static Edit[] Edits(int count) => EditGen.Of(Charts.Document(Charts.TenEndDiamond)).Array[count].Single(_ => true, FixedCases.SeedOf(0));
}
