using System.Reflection;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Store.Tests;

/// <summary>To ben, anna's patterns do not exist, whatever he asks the workroom.</summary>
public sealed class TwoMakersTests
{
    private static readonly PatternDocument Other = Charts.Document("xx../..xx");

    private static readonly Dictionary<string, Func<Workroom, MakerId, PatternId, Task<object?>>> Requests = new(StringComparer.Ordinal)
    {
        [nameof(Workroom.OpenAsync)] = async (workroom, maker, id) => await workroom.OpenAsync(maker, id),
        [nameof(Workroom.SaveAsync)] = async (workroom, maker, id) => await workroom.SaveAsync(maker, id, new StepRequest("other", 1, 4, "Step", Other)),
        [nameof(Workroom.CarriedOutAsync)] = async (workroom, maker, id) => await workroom.CarriedOutAsync(maker, id, "w", 1),
        [nameof(Workroom.UndoAsync)] = async (workroom, maker, id) => await workroom.UndoAsync(maker, id, "other", 1, 4),
        [nameof(Workroom.RedoAsync)] = async (workroom, maker, id) => await workroom.RedoAsync(maker, id, "other", 1, 4),
        [nameof(Workroom.NextNumberAsync)] = async (workroom, maker, id) => await workroom.NextNumberAsync(maker, id),
        [nameof(Workroom.IssuedAsync)] = async (workroom, maker, id) => await workroom.IssuedAsync(maker, id, 1),
        [nameof(Workroom.IssueAsync)] = async (workroom, maker, id) => await workroom.IssueAsync(maker, id, TestStore.Request(4, 2, Charts.Document("x.") with { Title = "2" })),
        [nameof(Workroom.WithdrawAsync)] = async (workroom, maker, id) => await workroom.WithdrawAsync(maker, id),
        [nameof(Workroom.RestoreAsync)] = async (workroom, maker, id) => await workroom.RestoreAsync(maker, id),
        [nameof(Workroom.DuplicateAsync)] = async (workroom, maker, id) => await workroom.DuplicateAsync(maker, id, title => title),
        [nameof(Workroom.DeleteAsync)] = async (workroom, maker, id) => await workroom.DeleteAsync(maker, id),
        [nameof(Workroom.DeletedDocumentAsync)] = async (workroom, maker, id) => await workroom.DeletedDocumentAsync(maker, id),
        [nameof(Workroom.BringBackAsync)] = async (workroom, maker, id) => await workroom.BringBackAsync(maker, id),
    };

    // these name no pattern, and have tests of their own below
    private static readonly string[] WithoutPattern = [nameof(Workroom.CreateAsync), nameof(Workroom.ListAsync), nameof(Workroom.DeletedAsync)];

    public static TheoryData<string> Names => [.. Requests.Keys];

    [Fact]
    public void Every_method_takes_the_maker_first_and_is_tried()
    {
        var methods = typeof(Workroom).GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly);
        Assert.All(methods, method => Assert.Equal(typeof(MakerId), method.GetParameters()[0].ParameterType));
        Assert.Equal(Requests.Keys.Concat(WithoutPattern).Order(StringComparer.Ordinal), methods.Select(method => method.Name).Order(StringComparer.Ordinal));
        Assert.All(methods.Where(method => !WithoutPattern.Contains(method.Name)), method => Assert.Equal(typeof(PatternId), method.GetParameters()[1].ParameterType));
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Another_makers_pattern_answers_as_one_that_does_not_exist(string request)
    {
        await using var store = await TestStore.OpenAsync();
        var (anna, ben) = (await store.MakerAsync(), await store.MakerAsync("ben"));
        foreach (var id in await AnnasAsync(store, anna))
        {
            using var raw = store.Raw();
            var before = raw.Dump();
            var none = await Requests[request](store.Workroom, anna, new PatternId("0000000000"));
            Assert.Equal(none, await Requests[request](store.Workroom, ben, id));
            Assert.Equal(none, await Requests[request](store.Workroom, TestStore.Nobody, id));
            Assert.Equal(none, await Requests[request](store.Workroom, default, id));
            Assert.Equal(before, raw.Dump());
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public async Task Her_own_answers_otherwise(string request)
    {
        await using var store = await TestStore.OpenAsync();
        var anna = await store.MakerAsync();
        var none = await Requests[request](store.Workroom, anna, new PatternId("0000000000"));
        var own = new List<object?>();
        foreach (var id in await AnnasAsync(store, anna))
        {
            own.Add(await Requests[request](store.Workroom, anna, id));
        }

        Assert.Contains(own, answer => !Equals(answer, none));
    }

    [Fact]
    public async Task Lists_and_new_patterns_stay_apart()
    {
        await using var store = await TestStore.OpenAsync();
        var (anna, ben) = (await store.MakerAsync(), await store.MakerAsync("ben"));
        await AnnasAsync(store, anna);
        Assert.Empty(await store.Workroom.ListAsync(ben));
        Assert.Empty(await store.Workroom.ListAsync(TestStore.Nobody));
        var id = await store.Workroom.CreateAsync(ben, Other);
        Assert.Equal(id, Assert.Single(await store.Workroom.ListAsync(ben)).Id);
        Assert.DoesNotContain(await store.Workroom.ListAsync(anna), card => card.Id == id);
        await Assert.ThrowsAsync<StoreException>(() => store.Workroom.CreateAsync(TestStore.Nobody, Other));
    }

    [Fact]
    public async Task The_same_client_and_sequence_on_two_patterns_are_two_steps()
    {
        await using var store = await TestStore.OpenAsync();
        var (anna, ben) = (await store.MakerAsync(), await store.MakerAsync("ben"));
        var step = new StepRequest("w", 1, 1, "Step", Other);
        Assert.IsType<SaveResult.Saved>(await store.Workroom.SaveAsync(anna, await store.PatternAsync(anna), step));
        Assert.IsType<SaveResult.Saved>(await store.Workroom.SaveAsync(ben, await store.PatternAsync(ben), step));
    }

    [Fact]
    public async Task What_one_has_thrown_away_only_they_see()
    {
        await using var store = await TestStore.OpenAsync();
        var (anna, ben) = (await store.MakerAsync(), await store.MakerAsync("ben"));
        var thrown = (await AnnasAsync(store, anna))[^1];
        Assert.Equal(thrown, Assert.Single(await store.Workroom.DeletedAsync(anna)).Id);
        Assert.Empty(await store.Workroom.DeletedAsync(ben));
        Assert.Empty(await store.Workroom.DeletedAsync(TestStore.Nobody));
    }

    /// <summary>Four patterns at revision 4: one issued, one withdrawn, one never issued, one thrown away; each with steps before and after.</summary>
    private static async Task<List<PatternId>> AnnasAsync(TestStore store, MakerId anna)
    {
        var ids = new List<PatternId>();
        for (var place = 0; place < 4; place++)
        {
            var id = await store.PatternAsync(anna, Charts.Document("x."));
            await store.Workroom.SaveAsync(anna, id, new StepRequest("w", 1, 1, "Step", Charts.Document("x.") with { Title = "2" }));
            await store.Workroom.SaveAsync(anna, id, new StepRequest("w", 2, 2, "Step", Charts.Document("x.") with { Title = "3" }));
            await store.Workroom.UndoAsync(anna, id, "w", 3, 3);
            ids.Add(id);
        }

        await store.IssueAsync(anna, ids[0]);
        await store.IssueAsync(anna, ids[1]);
        await store.Workroom.WithdrawAsync(anna, ids[1]);
        await store.Workroom.DeleteAsync(anna, ids[3]);
        return ids;
    }
}
