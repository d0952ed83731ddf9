using System.Security.Claims;
using System.Security.Cryptography;
using Bunit;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.JSInterop;
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

    [Fact]
    public async Task A_workbench_whose_session_has_ended_is_shown_nothing_more_and_says_so()
    {
        await using var bench = await TestBench.OpenAsync();
        var id = await bench.PatternAsync(Diamond);
        await using var context = Context(bench, bench.Maker);
        var script = context.JSInterop.SetupModule("/scripts/editor/editor.js");
        script.Mode = JSRuntimeMode.Loose;
        var editor = script.SetupModule("open", _ => true);
        editor.Mode = JSRuntimeMode.Loose;
        var page = context.Render<EditorPage>(one => one.Add(one => one.Id, id.ToString()));
        page.WaitForElement("table.rows");
        page.WaitForAssertion(() => Assert.Single(script.Invocations["open"]));
        using (var before = await bench.SitAsync(id))
        {
            await before.SubmitAsync("before", 1, 0, TestBench.Stroke(Diamond.Motif, (0, 0, !Diamond.Motif[0, 0])));
        }

        page.WaitForAssertion(() => Assert.Single(editor.Invocations["receive"]));
        Assert.Empty(page.FindAll(".stop"));
        var shown = page.Find("table.rows").TextContent;

        await bench.SignOutAndInAsync();
        using var after = await bench.SitAsync(id);
        Assert.IsType<Acknowledgement.Saved>(await after.SubmitAsync("after", 1, 0, new SetWords(Title: "Nobody else's")));
        var link = page.WaitForElement(".stop[role=alert] a");
        Assert.Equal(("Sign in again", $"/sign-in?return=%2Fstudio%2Fpatterns%2F{id}", "_top"), (link.TextContent, link.GetAttribute("href"), link.GetAttribute("target")));
        await after.SubmitAsync("after", 2, 1, TestBench.Stroke(Diamond.Motif, (1, 1, !Diamond.Motif[1, 1])));
        page.WaitForAssertion(() => Assert.Single(editor.Invocations["signedOut"]));
        Assert.Single(editor.Invocations["receive"]);
        Assert.Equal(shown, page.Find("table.rows").TextContent);
        Assert.Equal("Test cloth", page.Find("h1").TextContent);
        // nobody sits there any more
        after.Dispose();
        Assert.Equal(0, bench.Patterns.Count);
    }

    [Fact]
    public async Task A_stroke_that_comes_after_the_session_ended_is_not_answered_with_what_others_did()
    {
        await using var bench = await TestBench.OpenAsync();
        var id = await bench.PatternAsync(Diamond);
        await using var context = Context(bench, bench.Maker);
        var script = context.JSInterop.SetupModule("/scripts/editor/editor.js");
        script.Mode = JSRuntimeMode.Loose;
        var editor = script.SetupModule("open", _ => true);
        editor.Mode = JSRuntimeMode.Loose;
        var page = context.Render<EditorPage>(one => one.Add(one => one.Id, id.ToString()));
        page.WaitForElement("table.rows");
        page.WaitForAssertion(() => Assert.Single(script.Invocations["open"]));
        var bridge = (DotNetObjectReference<ChartBridge>)script.Invocations["open"].Single().Arguments[1]!;
        await bench.SignOutAndInAsync();
        await page.InvokeAsync(() => bridge.Value.Stroke("window", 1, 0, "10.a o0:0"));
        page.WaitForAssertion(() => Assert.Single(editor.Invocations["signedOut"]));
        await page.InvokeAsync(bridge.Value.Resync);
        Assert.Empty(editor.Invocations["receive"]);
        Assert.Equal(1, (await bench.StoredAsync(id)).Revision);
    }

    [Fact]
    public async Task A_session_that_has_ended_opens_no_pattern()
    {
        await using var bench = await TestBench.OpenAsync();
        var id = await bench.PatternAsync(Diamond);
        var old = bench.Maker;
        await bench.SignOutAndInAsync();
        Assert.Null(await bench.Patterns.JoinAsync(old.Id, old.Stamp, id, () => { }));
        await using var context = Context(bench, old);
        var page = context.Render<EditorPage>(one => one.Add(one => one.Id, id.ToString()));
        Assert.Equal("You’re signed out", page.WaitForElement("h1").TextContent);
        Assert.Equal($"/sign-in?return=%2Fstudio%2Fpatterns%2F{id}", page.Find("main a").GetAttribute("href"));
        Assert.Empty(page.FindAll("[data-motif]"));
    }

    private static BunitContext Context(TestBench bench, Maker? maker, Action? named = null)
    {
        var context = new BunitContext();
        context.JSInterop.Mode = JSRuntimeMode.Loose;
        context.Services.AddMudServices();
        context.Services.AddSingleton(Wording.English);
        context.Services.AddSingleton(bench.Patterns);
        context.Services.AddSingleton(bench.Sessions);
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
