using System.Security.Claims;
using System.Security.Cryptography;
using Bunit;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;
using MudBlazor.Services;
using PatternShop.Store;
using PatternShop.Tests.Shared;
using PatternShop.Weave;
using Xunit;

namespace PatternShop.Web.Tests;

/// <summary>The editor's page as its circuit runs it; its script is not there.</summary>
public sealed class EditorPageTests(SharedBench shared) : IClassFixture<SharedBench>
{
    private static readonly PatternDocument Diamond = Charts.Document(Charts.TenEndDiamond);

    [Fact]
    public async Task Everything_stands_beside_the_chart_and_follows_what_another_window_does()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync(Diamond);
        await using var context = Context(bench, bench.Maker);
        var page = context.Render<EditorPage>(one => one.Add(editor => editor.Id, id.ToString()));
        page.WaitForElement("table.rows");
        Assert.Equal(["Motif", "The whole piece"], page.FindAll(".charts h2").Select(heading => heading.TextContent));
        Assert.Equal(Diamond.Motif.Rows, page.FindAll("table.rows tbody tr").Count);
        var before = page.Find("table.rows").TextContent;
        var title = page.Find("[data-piece]").GetAttribute("aria-label");

        using var other = await bench.SitAsync(id);
        await new FieldEdits(other, "another window").MakeAsync(TestBench.Stroke(Diamond.Motif, (0, 0, !Diamond.Motif[0, 0])));
        page.WaitForAssertion(() => Assert.NotEqual(before, page.Find("table.rows").TextContent));
        Assert.Equal(title, page.Find("[data-piece]").GetAttribute("aria-label"));
        // what an open pattern must not cost the server: readings, which are many times the size of the chart, and a component for each of many small buttons
        Assert.False(other.View.Piece.KeepsReadings);
        Assert.Empty(page.FindComponents<MudIconButton>());
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task What_is_not_there_and_who_is_not_signed_in_are_told_the_same_with_a_way_back(bool isSignedOut)
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync(Diamond);
        await using var context = Context(bench, isSignedOut ? null : bench.Maker);
        var page = context.Render<EditorPage>(one => one.Add(editor => editor.Id, isSignedOut ? id.ToString() : "nothing-here"));
        Assert.Equal("There is nothing at this address", page.WaitForElement("h1").TextContent);
        Assert.Equal("/studio", page.Find("main a").GetAttribute("href"));
        Assert.Empty(page.FindAll("[data-motif]"));
    }

    [Fact]
    public async Task What_another_window_does_while_the_page_opens_is_shown()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync(Diamond);
        using var other = await bench.SitAsync(id);
        await using var context = Context(bench, bench.Maker, () => other.Session.Seats.TellOthers(other));
        var page = context.Render<EditorPage>(one => one.Add(editor => editor.Id, id.ToString()));
        page.WaitForElement("table.rows");
        var before = page.Find("table.rows").TextContent;
        await new FieldEdits(other, "another window").MakeAsync(TestBench.Stroke(Diamond.Motif, (0, 0, !Diamond.Motif[0, 0])));
        page.WaitForAssertion(() => Assert.NotEqual(before, page.Find("table.rows").TextContent));
    }

    [Fact]
    public async Task A_page_that_goes_while_it_opens_leaves_no_pattern_open()
    {
        var bench = shared.Bench;
        var id = await bench.PatternAsync(Diamond);
        var open = bench.Patterns.Count;
        var user = new TaskCompletionSource<AuthenticationState>();
        await using var context = Context(bench, bench.Maker);
        context.Services.AddSingleton<AuthenticationStateProvider>(new LateUser(user.Task));
        context.Render<EditorPage>(one => one.Add(editor => editor.Id, id.ToString()));
        await context.DisposeComponentsAsync();
        user.SetResult(new AuthenticationState(MakerPrincipal.Make(bench.Maker.Id, bench.Maker.Stamp)));
        using var after = await bench.SitAsync(await bench.PatternAsync(Diamond));
        await after.SubmitAsync("after", 1, 0, new SetWords(Title: "After"));
        // the page takes its seat before it sees that it is gone
        for (var look = 0; look < 200 && bench.Patterns.Count != open + 1; look++)
        {
            await bench.StoredAsync(id);
        }

        Assert.Equal(open + 1, bench.Patterns.Count);
    }

    private static BunitContext Context(TestBench bench, Maker? maker, Action? named = null)
    {
        var context = new BunitContext();
        context.JSInterop.Mode = JSRuntimeMode.Loose;
        context.Services.AddMudServices();
        context.Services.AddSingleton(Wording.English);
        context.Services.AddSingleton(bench.Patterns);
        context.Services.AddSingleton<RandomNumberGenerator>(new NamesOfWindows(named ?? (() => { })));
        context.Services.AddSingleton<WindowNames>();
        context.Services.AddSingleton<TimeProvider>(new HandClock());
        context.Services.AddSingleton<AuthenticationStateProvider>(new SignedIn(maker));
        return context;
    }

    /// <summary>Asked for the name of the page's fields once the page has its seat, before it has a script.</summary>
    private sealed class NamesOfWindows(Action asked) : RandomNumberGenerator
    {
        public override void GetBytes(byte[] data)
        {
            asked();
            Fill(data);
        }
    }

    private sealed class LateUser(Task<AuthenticationState> user) : AuthenticationStateProvider
    {
        public override Task<AuthenticationState> GetAuthenticationStateAsync() => user;
    }

    private sealed class SignedIn(Maker? maker) : AuthenticationStateProvider
    {
        public override Task<AuthenticationState> GetAuthenticationStateAsync() =>
            Task.FromResult(new AuthenticationState(maker is null ? new ClaimsPrincipal(new ClaimsIdentity()) : MakerPrincipal.Make(maker.Id, maker.Stamp)));
    }
}
