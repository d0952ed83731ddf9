using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Console;
using Microsoft.Extensions.Options;
using PatternShop.Tests.Shared;
using Xunit;

namespace PatternShop.Web.Tests;

public sealed class LogTests
{
    private static readonly string[] FromAfar = ["--PatternShop:KnownProxies=127.0.0.1"];

    [Fact]
    public async Task A_request_leaves_no_line_by_default()
    {
        await using var shop = await TestShop.OpenAsync();
        using var visitor = shop.Visit();
        var before = shop.Log.Entries.Count;
        foreach (var path in new[] { "/", "/samples/first-steps", "/none", "/healthz", "/sign-in", "/css/public.css" })
        {
            await visitor.GetAsync(path);
        }

        Assert.Equal([], shop.Log.Entries.Skip(before).Select(entry => entry.Text));
    }

    [Fact]
    public async Task A_request_leaves_one_line_with_its_route_where_the_operator_wants_it()
    {
        await using var shop = await TestShop.OpenAsync(null, "--Logging:LogLevel:PatternShop.Web.RequestLog=Debug");
        using var visitor = shop.Visit();
        await visitor.GetAsync("/preview/0123456789");
        await visitor.GetAsync("/none/at/all");
        var lines = shop.Log.Entries.Where(entry => entry.Category == "PatternShop.Web.RequestLog").Select(entry => entry.Text).ToList();
        Assert.Collection(lines, one => Assert.Matches("^GET /preview/{secret} 404 [0-9]+ ms$", one), other => Assert.Matches("^GET no route 404 [0-9]+ ms$", other));
    }

    [Fact]
    public void The_console_writes_a_line_an_event_or_JSON_as_the_setting_says()
    {
        using var plain = PatternShopHost.Builder([]).Build();
        var simple = plain.Services.GetRequiredService<IOptions<SimpleConsoleFormatterOptions>>().Value;
        Assert.Equal((ConsoleFormatterNames.Simple, true, true), (Format(plain), simple.SingleLine, simple.UseUtcTimestamp));
        using var json = PatternShopHost.Builder(["--Logging:Console:FormatterName=json"]).Build();
        Assert.Equal(ConsoleFormatterNames.Json, Format(json));

        static string? Format(WebApplication app) => app.Services.GetRequiredService<IOptions<ConsoleLoggerOptions>>().Value.FormatterName;
    }

    [Theory]
    [InlineData("PatternShop.Web.ShopEvents", LogLevel.Information)]
    [InlineData("Microsoft.Hosting.Lifetime", LogLevel.Information)]
    [InlineData("Microsoft.AspNetCore.Hosting.Diagnostics", LogLevel.Warning)]
    [InlineData("System.Net.Http.HttpClient", LogLevel.Warning)]
    [InlineData("Microsoft.AspNetCore.DataProtection.KeyManagement.XmlKeyManager", LogLevel.Error)]
    public void Levels_have_defaults_that_a_setting_changes(string category, LogLevel level)
    {
        using var plain = PatternShopHost.Builder([]).Build();
        Assert.Equal(level, Lowest(plain));
        using var quiet = PatternShopHost.Builder([$"--Logging:LogLevel:{category}=Critical"]).Build();
        Assert.Equal(LogLevel.Critical, Lowest(quiet));

        LogLevel Lowest(WebApplication app)
        {
            var logger = app.Services.GetRequiredService<ILoggerFactory>().CreateLogger(category);
            return Enum.GetValues<LogLevel>().First(logger.IsEnabled);
        }
    }

    [Fact]
    public async Task What_an_operator_wants_to_look_up_later_is_an_event_with_a_name()
    {
        var (shop, maker) = await TestShop.SetUpAsync(FromAfar);
        await using var _ = shop;
        var id = await shop.PatternAsync(Charts.Document(Charts.TenEndDiamond));
        await TestShop.IssueAsync(maker, id);
        await maker.PostAsync("/studio", $"/studio/patterns/{id}/withdraw");
        await maker.PostAsync("/studio", $"/studio/patterns/{id}/restore");
        var thrown = await shop.PatternAsync(Charts.Document(Charts.TenEndDiamond));
        await maker.PostAsync("/studio", $"/studio/patterns/{thrown}/delete");
        await maker.PostAsync("/studio", $"/studio/deleted/{thrown}/bring-back");
        await TestShop.PreviewAsync(maker, id);
        await maker.PostAsync("/studio", $"/studio/patterns/{id}/preview/end");
        await maker.PostAsync("/studio", "/sign-out");
        await shop.SignInAsync(maker);
        maker.Dispose();
        Assert.Equal(
            [
                (100, "SetUp", "Maker 1 set up the shop"),
                (200, "Published", $"Maker 1 published version 1 of pattern {id}"),
                (201, "Withdrawn", $"Maker 1 withdrew pattern {id}"),
                (202, "Restored", $"Maker 1 put pattern {id} back in the shop"),
                (203, "Deleted", $"Maker 1 deleted pattern {thrown}"),
                (204, "BroughtBack", $"Maker 1 brought back pattern {thrown}"),
                (205, "PreviewBegan", $"Maker 1 began a preview of pattern {id}"),
                (206, "PreviewEnded", $"Maker 1 ended the preview of pattern {id}"),
                (102, "SignedOut", "Maker 1 signed out everywhere"),
                (101, "SignedIn", "Maker 1 signed in"),
            ],
            Events(shop));
    }

    [Theory]
    [InlineData("203.0.113.77", "203.0.113.0/24")]
    [InlineData("2001:db8:aa:bb:cc::7", "2001:db8:aa::/48")]
    public async Task Failed_sign_ins_name_the_network_and_a_crowd_that_is_turned_away_fills_no_disk(string from, string network)
    {
        var (shop, maker) = await TestShop.SetUpAsync(FromAfar);
        await using var _ = shop;
        using var stranger = shop.Visit();
        var token = await stranger.TokenAsync("/sign-in");
        for (var time = 0; time < AccountThrottles.Tries + 3; time++)
        {
            // people type the one into the field of the other
            using var form = new FormUrlEncodedContent([new("__RequestVerificationToken", token), new("email", TestShop.Passphrase), new("passphrase", "guessed")]);
            await stranger.SendAsync(HttpMethod.Post, "/sign-in", form, ("X-Forwarded-For", from));
        }

        var told = Events(shop).Skip(1).ToList();
        Assert.Equal(AccountThrottles.Tries, told.Count(one => one == (103, "SignInFailed", $"A sign-in from {network} failed")));
        Assert.Equal((104, "SignInThrottled", $"Too many sign-ins from {network} or for one account: some were turned away"), Assert.Single(told, one => one.Id != 103));
        maker.Dispose();
    }

    private static IEnumerable<(int Id, string? Name, string Text)> Events(TestShop shop) =>
        shop.Log.Entries.Where(entry => entry.Category == "PatternShop.Web.ShopEvents").Select(entry => (entry.Event.Id, entry.Event.Name, entry.Text));
}
