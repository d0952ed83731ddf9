using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

public sealed class IssueTests
{
    private static readonly PatternDocument First = Charts.Document("xx../..xx");

    [Fact]
    public async Task Versions_are_numbered_from_1_and_keep_what_they_were_given()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, First);
        Assert.Equal(1, await store.Workroom.NextNumberAsync(maker, id));
        var one = await store.IssueAsync(maker, id);
        Assert.False((await store.Workroom.OpenAsync(maker, id))!.HasUnissuedChanges);
        await store.Workroom.SaveAsync(maker, id, new StepRequest("w", 1, 1, "Step", First with { Title = "Mended" }));
        Assert.True((await store.Workroom.OpenAsync(maker, id))!.HasUnissuedChanges);
        store.Time.Now += TimeSpan.FromDays(1);
        var two = await store.IssueAsync(maker, id);
        Assert.Equal(3, await store.Workroom.NextNumberAsync(maker, id));
        var open = (await store.Workroom.OpenAsync(maker, id))!;
        Assert.Equal(
            [new VersionCard(2, two.Date, "Note 2", two.Hash, store.Time.Now), new VersionCard(1, one.Date, "Note 1", one.Hash, store.Time.Now.AddDays(-1))],
            open.Versions);
        foreach (var request in new[] { one, two })
        {
            var version = (await store.Shelf.VersionAsync(id, request.Number))!;
            Assert.Equal((request.Date, request.Note, request.Hash, PatternWriter.Format), (version.Date, version.Note, version.Hash, version.Format));
            Assert.Equal(request.Canonical, version.Canonical);
            Assert.Equal(
                request.Files.Select(file => new ShelfFileCard(file.Edition, file.Name, file.MediaType, PatternWriter.Hash(file.Bytes), file.Bytes.Length)),
                version.Files);
        }
    }

    [Fact]
    public async Task What_does_not_fit_the_pattern_is_not_issued()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, First);
        await store.IssueAsync(maker, id);
        var good = await store.RequestAsync(maker, id);
        var now = (await store.Workroom.OpenAsync(maker, id))!.Now;
        using var raw = store.Raw();
        var before = raw.Dump();
        Assert.Equal(new IssueResult.NumberTaken(2), await store.Workroom.IssueAsync(maker, id, good with { Number = 1 }));
        Assert.Equal(new IssueResult.NumberTaken(2), await store.Workroom.IssueAsync(maker, id, good with { Number = 3 }));
        Assert.Equal(new IssueResult.Moved(now), await store.Workroom.IssueAsync(maker, id, good with { BaseRevision = 0 }));
        Assert.Equal("Note", Assert.Single(Assert.IsType<IssueResult.Refused>(await store.Workroom.IssueAsync(maker, id, good with { Note = new string('n', 2001) })).Problems).Field);
        Assert.Equal("Note", Assert.Single(Assert.IsType<IssueResult.Refused>(await store.Workroom.IssueAsync(maker, id, good with { Note = "a\0b" })).Problems).Field);
        Assert.Equal("Note", Assert.Single(Assert.IsType<IssueResult.Refused>(await store.Workroom.IssueAsync(maker, id, good with { Note = "row \u202E4" })).Problems).Field);
        var other = TestStore.Request(1, 2, First with { Title = "Other" });
        IssueRequest[] mistakes =
        [
            good with { Hash = other.Hash },
            good with { Hash = good.Hash.ToUpperInvariant() },
            good with { Canonical = other.Canonical, Hash = other.Hash },
            good with { Canonical = PatternWriter.ReadableBytes(First), Hash = PatternWriter.Hash(PatternWriter.ReadableBytes(First)) },
            good with { Files = [good.Files[0], good.Files[0]] },
            good with { Files = [good.Files[0] with { Bytes = [] }] },
            good with { Files = [good.Files[0] with { Name = "a/b.pdf" }] },
            good with { Files = [good.Files[0] with { Name = "a\"\r\nX: y" }] },
        ];
        foreach (var mistake in mistakes)
        {
            await Assert.ThrowsAsync<ArgumentException>(() => store.Workroom.IssueAsync(maker, id, mistake));
        }

        Assert.Equal(before, raw.Dump());
        Assert.Equal(new IssueResult.Issued(2), await store.Workroom.IssueAsync(maker, id, good));
    }

    [Fact]
    public async Task Two_who_issue_at_once_get_two_numbers_or_a_clear_refusal()
    {
        await using var store = await TestStore.OpenAsync();
        await using var left = store.Beside();
        await using var right = store.Beside();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, First);
        var taken = 0;
        for (var round = 0; round < 10; round++)
        {
            var request = await store.RequestAsync(maker, id);
            var results = await Task.WhenAll(new[] { left, right }.Select(other => Task.Run(() => other.Workroom.IssueAsync(maker, id, request))));
            Assert.Equal(new IssueResult.Issued(request.Number), Assert.Single(results.OfType<IssueResult.Issued>()));
            Assert.Equal(new IssueResult.NumberTaken(request.Number + 1), Assert.Single(results.OfType<IssueResult.NumberTaken>()));
            taken++;
        }

        var numbers = await Task.WhenAll(new[] { left, right }.Select(other => Task.Run(() => UntilIssuedAsync(other, maker, id))));
        Assert.Equal([taken + 1, taken + 2], numbers.Order());
        Assert.Equal(Enumerable.Range(1, taken + 2).Reverse(), (await store.Shelf.FindAsync(id))!.Versions.Select(version => version.Number));
    }

    [Fact]
    public async Task A_file_that_two_versions_share_is_kept_once()
    {
        await using var store = await TestStore.OpenAsync();
        var maker = await store.MakerAsync();
        var id = await store.PatternAsync(maker, First);
        var one = await store.IssueAsync(maker, id);
        var two = (await store.RequestAsync(maker, id)) with { Files = [one.Files[1], new IssuedFile("twice", "twice.pdf", "application/pdf", one.Files[1].Bytes)] };
        Assert.Equal(new IssueResult.Issued(2), await store.Workroom.IssueAsync(maker, id, two));
        using var raw = store.Raw();
        Assert.Equal(2L, raw.Sql("SELECT count(*) FROM Files"));
        Assert.Equal(4L, raw.Sql("SELECT count(*) FROM VersionFiles"));
    }

    private static async Task<int> UntilIssuedAsync(TestStore store, MakerId maker, PatternId id)
    {
        while (true)
        {
            var request = await store.RequestAsync(maker, id);
            switch (await store.Workroom.IssueAsync(maker, id, request))
            {
                case IssueResult.Issued issued:
                    return issued.Number;
                case IssueResult.NumberTaken:
                    break;
                case var other:
                    throw new InvalidOperationException(other.ToString());
            }
        }
    }
}
