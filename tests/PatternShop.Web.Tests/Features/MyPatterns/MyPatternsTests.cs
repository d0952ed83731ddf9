using System.Net;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class MyPatternsTests
{
    private static readonly PatternDocument Cloth = Charts.Document(Charts.TenEndDiamond, repeats: 2) with { Title = "Quiet <b>cloth</b>" };

    [Fact]
    public async Task A_blank_pattern_has_the_size_that_was_typed_and_opens_on_the_workbench()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var answer = await maker.FillNewAsync("Harbour wall", "12", "6");
        Assert.Equal(HttpStatusCode.SeeOther, answer.Status);
        var card = Assert.Single(await CardsAsync(shop), card => card.Title == "Harbour wall");
        Assert.Equal($"/studio/patterns/{card.Id}", answer.Location);
        var document = (await shop.Workroom.OpenAsync((await shop.MakerAsync()).Id, card.Id, TestContext.Current.CancellationToken))!.Document;
        Assert.Equal((6, 12, 0), (document.Motif.Rows, document.Motif.Columns, document.Motif.Count));
        Assert.Empty(DocumentRules.Check(document));
        maker.Dispose();
    }

    [Theory]
    [InlineData("", "8", "8", "Title")]
    [InlineData("Cloth \u202Eredrob", "8", "8", "Title")]
    [InlineData("Cloth", "0", "8", "Ends")]
    [InlineData("Cloth", "8", "1001", "Rows")]
    [InlineData("Cloth", "eight", "-1", "Ends Rows")]
    [InlineData("Cloth", "99999999999", "", "Ends Rows")]
    public async Task A_size_or_title_that_does_not_do_is_named_and_nothing_is_made(string title, string ends, string rows, string wrong)
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var before = (await CardsAsync(shop)).Count;
        var answer = await maker.FillNewAsync(title, ends, rows);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Equal(wrong, string.Join(' ', answer.Html.QuerySelectorAll("[aria-invalid=true]").Select(field => field.GetAttribute("name"))));
        Assert.Equal(before, (await CardsAsync(shop)).Count);
        maker.Dispose();
    }

    [Fact]
    public async Task A_sample_becomes_a_pattern_of_the_makers_own()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        Assert.Equal(HttpStatusCode.SeeOther, (await maker.PostAsync("/studio/new", "/studio/new", ("sample", "pebble-basket"))).Status);
        Assert.Contains(await CardsAsync(shop), card => card.Title == "Pebble basket");
        Assert.Equal(HttpStatusCode.NotFound, (await maker.PostAsync("/studio/new", "/studio/new", ("sample", "no-such-thing"))).Status);
        maker.Dispose();
    }

    [Fact]
    public async Task The_list_says_how_each_pattern_stands()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Cloth);
        var owner = (await shop.MakerAsync()).Id;
        Assert.Equal("Unpublished", await StateAsync(maker));
        await TestShop.IssueAsync(maker, id);
        Assert.Equal("Published · Version 1, 24 November 2026", await StateAsync(maker));
        await shop.Workroom.SaveAsync(owner, id, new StepRequest("test", 1, 1, "Turn a cell", Cloth with { Motif = Cloth.Motif.With(0, 0, !Cloth.Motif[0, 0]) }), TestContext.Current.CancellationToken);
        Assert.Equal("Correction waiting · Version 1, 24 November 2026, changed since", await StateAsync(maker));
        Assert.Equal("/studio", (await maker.PostAsync("/studio", $"/studio/patterns/{id}/withdraw")).Location);
        Assert.Equal("Correction waiting · Version 1, 24 November 2026, changed since · withdrawn, readers do not see it", await StateAsync(maker));
        Assert.Equal("/studio", (await maker.PostAsync("/studio", $"/studio/patterns/{id}/restore")).Location);
        Assert.Equal("Correction waiting · Version 1, 24 November 2026, changed since", await StateAsync(maker));
        await shop.Workroom.UndoAsync(owner, id, "test", 2, 2, TestContext.Current.CancellationToken);
        Assert.Equal("Published · Version 1, 24 November 2026", await StateAsync(maker));
        maker.Dispose();
    }

    [Fact]
    public async Task What_was_never_issued_can_be_deleted_after_a_question()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Cloth);
        var path = $"/studio/patterns/{id}/delete";
        Assert.Contains("Quiet <b>cloth</b>", (await maker.GetAsync(path)).Heading, StringComparison.Ordinal);
        Assert.Contains(await CardsAsync(shop), card => card.Id == id);
        Assert.Equal($"/studio?deleted={id}", (await maker.FillAsync(path, path)).Location);
        Assert.DoesNotContain(await CardsAsync(shop), card => card.Id == id);
        Assert.Equal(HttpStatusCode.NotFound, (await maker.GetAsync(path)).Status);
        maker.Dispose();
    }

    [Fact]
    public async Task What_was_issued_cannot()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Cloth);
        await TestShop.IssueAsync(maker, id);
        Assert.Equal(HttpStatusCode.Conflict, (await maker.GetAsync($"/studio/patterns/{id}/delete")).Status);
        Assert.Equal(HttpStatusCode.Conflict, (await maker.PostAsync("/studio", $"/studio/patterns/{id}/delete")).Status);
        Assert.Contains(await CardsAsync(shop), card => card.Id == id);
        maker.Dispose();
    }

    [Fact]
    public async Task A_pattern_is_found_duplicated_and_kept_as_a_file()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Cloth);
        var duplicated = await maker.PostAsync("/studio", $"/studio/patterns/{id}/duplicate");
        var copy = Assert.Single(await CardsAsync(shop), card => card.Title == "Copy of Quiet <b>cloth</b>");
        Assert.Equal($"/studio/patterns/{copy.Id}", duplicated.Location);
        var owner = (await shop.MakerAsync()).Id;
        var document = (await shop.Workroom.OpenAsync(owner, copy.Id, TestContext.Current.CancellationToken))!.Document;
        Assert.Equal(Cloth, document with { Title = Cloth.Title });
        await shop.PatternAsync(Cloth with { Title = "Rain" });
        Assert.Equal(["Copy of Quiet <b>cloth</b>", "Quiet <b>cloth</b>"], await TitlesAsync(maker, "/studio?find=QUIET%20%3C"));
        Assert.Empty(await TitlesAsync(maker, "/studio?find=no%20such"));
        Assert.Contains("Rain", await TitlesAsync(maker, "/studio?find="), StringComparer.Ordinal);
        var file = await maker.GetAsync($"/studio/patterns/{id}/document.json");
        Assert.Equal(Cloth, Assert.IsType<ReadResult.Read>(PatternReader.Read(System.Text.Encoding.UTF8.GetBytes(file.Text))).Document);
        maker.Dispose();
    }

    [Fact]
    public void The_title_of_a_copy_is_never_too_long()
    {
        Assert.Equal("Copy of Rain", MyPatterns.CopyOf("Rain"));
        var title = MyPatterns.CopyOf(new string('a', Bounds.Title - 9) + "\U0001F9F6" + new string('b', 7));
        Assert.Equal("Copy of " + new string('a', Bounds.Title - 9), title);
    }

    private static async Task<IEnumerable<string>> TitlesAsync(Visitor maker, string path) =>
        (await maker.GetAsync(path)).Html.QuerySelectorAll("ul.bench h2").Select(title => title.TextContent).Order(StringComparer.Ordinal);

    private static async Task<IReadOnlyList<PatternCard>> CardsAsync(TestShop shop) =>
        await shop.Workroom.ListAsync((await shop.MakerAsync()).Id, TestContext.Current.CancellationToken);

    private static async Task<string> StateAsync(Visitor maker)
    {
        var list = await maker.GetAsync("/studio");
        return list.Html.QuerySelectorAll("ul.bench li").Single(line => line.QuerySelector("h2")!.TextContent == Cloth.Title).QuerySelector(".state")!.TextContent;
    }
}

/// <summary>Short ways to fill in the forms of the workbench.</summary>
internal static class BenchForms
{
    public static Task<Reply> FillNewAsync(this Visitor maker, string title, string ends, string rows) =>
        maker.PostAsync("/studio/new", "/studio/new", ("Title", title), ("Ends", ends), ("Rows", rows));
}
