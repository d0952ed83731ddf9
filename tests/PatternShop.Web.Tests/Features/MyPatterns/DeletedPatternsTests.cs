using System.Net;
using Microsoft.Data.Sqlite;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class DeletedPatternsTests
{
    private static readonly PatternDocument Cloth = Charts.Document(Charts.TenEndDiamond) with { Title = "Quiet <b>cloth</b>" };

    // the bin keeps a pattern for 30 days; the clock of the tests begins on 24 November 2026 in UTC
    private static readonly TimeSpan Month = TimeSpan.FromDays(30);

    [Fact]
    public async Task What_was_deleted_is_listed_with_its_day_and_can_be_brought_back()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await shop.PatternAsync(Cloth);
        Assert.Equal("Nothing is here.", (await maker.GetAsync("/studio/deleted")).Html.QuerySelector("main > p:not(.lead, .do)")!.TextContent);
        Assert.Contains("until 24 December 2026", (await maker.GetAsync($"/studio/patterns/{id}/delete")).Words, StringComparison.Ordinal);
        var after = await maker.FillAsync($"/studio/patterns/{id}/delete", $"/studio/patterns/{id}/delete");
        var list = await maker.GetAsync(after.Location!);
        Assert.Contains("“Quiet <b>cloth</b>” is deleted, and kept until 24 December 2026.", list.Words, StringComparison.Ordinal);
        Assert.Contains("Deleted (1)", list.Words, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await maker.GetAsync($"/studio/patterns/{id}")).Status);

        var page = await maker.GetAsync("/studio/deleted");
        Assert.Empty(PageRules.Faults(page.Html));
        Assert.Equal("Deleted on 24 November 2026 · kept until 24 December 2026", page.Html.QuerySelector("ul.bench .state")!.TextContent);
        Assert.StartsWith("<svg", (await maker.GetAsync(page.Html.QuerySelector("ul.bench img")!.GetAttribute("src")!)).Text, StringComparison.Ordinal);
        var back = $"/studio/deleted/{id}/bring-back";
        Assert.Equal("/studio", (await maker.FillAsync("/studio/deleted", back)).Location);
        Assert.Equal("/studio", (await maker.PostAsync("/studio", back)).Location);
        Assert.Equal(HttpStatusCode.NotFound, (await maker.PostAsync("/studio", "/studio/deleted/0000000000/bring-back")).Status);
        list = await maker.GetAsync($"/studio?deleted={id}");
        Assert.Contains(Cloth.Title, list.Html.QuerySelectorAll("ul.bench h2").Select(title => title.TextContent), StringComparer.Ordinal);
        Assert.DoesNotContain("is deleted", list.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("Deleted (", list.Words, StringComparison.Ordinal);
        maker.Dispose();
    }

    [Fact]
    public async Task After_thirty_days_it_cannot()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        var id = await ThrownAwayAsync(shop);
        shop.Clock.Now += Month;
        // the session is over by then
        await shop.SignInAsync(maker);
        Assert.DoesNotContain("Deleted (", (await maker.GetAsync("/studio")).Words, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await maker.PostAsync("/studio", $"/studio/deleted/{id}/bring-back")).Status);
        maker.Dispose();
    }

    [Fact]
    public async Task The_pages_say_that_what_was_issued_is_only_withdrawn()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        Assert.Contains("What was issued is never here: it can be withdrawn, not deleted.", (await maker.GetAsync("/studio/deleted")).Words, StringComparison.Ordinal);
        var id = await shop.PatternAsync(Cloth);
        await TestShop.IssueAsync(maker, id);
        var asked = await maker.GetAsync($"/studio/patterns/{id}/delete");
        Assert.Equal((HttpStatusCode.Conflict, "What was issued stays"), (asked.Status, asked.Heading));
        maker.Dispose();
    }

    [Fact]
    public async Task A_server_that_starts_removes_what_was_over_at_the_sweep_before()
    {
        var (shop, maker) = await TestShop.SetUpAsync();
        await using var _ = shop;
        maker.Dispose();
        await ThrownAwayAsync(shop);
        await using var tooEarly = await StartedAgainAsync(shop, Month - TimeSpan.FromTicks(1));
        Assert.Equal(1L, Deleted(tooEarly));
        await using var unconfirmed = await StartedAgainAsync(tooEarly, Month + TimeSpan.FromDays(1));
        Assert.Equal(1L, Deleted(unconfirmed));
        await using var confirmed = await StartedAgainAsync(unconfirmed, Month + TimeSpan.FromDays(2));
        Assert.Equal(0L, Deleted(confirmed));
    }

    // Another server on what the one before has left, with its clock so long after the beginning.
    private static async Task<TestShop> StartedAgainAsync(TestShop before, TimeSpan later)
    {
        await before.StopAsync();
        return await TestShop.OpenAsync(
            folder =>
            {
                Directory.CreateDirectory(folder);
                foreach (var file in Directory.GetFiles(before.DataFolder, "patternshop.db*"))
                {
                    File.Copy(file, Path.Combine(folder, Path.GetFileName(file)));
                }

                return Task.CompletedTask;
            },
            new TestClock { Now = TestClock.Begin + later });
    }

    private static object? Deleted(TestShop shop)
    {
        using var connection = new SqliteConnection(new SqliteConnectionStringBuilder { DataSource = Path.Combine(shop.DataFolder, "patternshop.db"), Pooling = false }.ToString());
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT COUNT(*) FROM Patterns WHERE DeletedAt IS NOT NULL";
        return command.ExecuteScalar();
    }

    private static async Task<PatternId> ThrownAwayAsync(TestShop shop)
    {
        var id = await shop.PatternAsync(Cloth);
        Assert.True(await shop.Workroom.DeleteAsync((await shop.MakerAsync()).Id, id, TestContext.Current.CancellationToken));
        return id;
    }
}
