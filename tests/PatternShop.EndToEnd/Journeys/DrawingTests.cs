using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Drawing with mouse, finger and keys, in one window and in two.</summary>
public sealed class DrawingTests(Stage stage, MakerBench bench) : Journey(stage), IClassFixture<MakerBench>
{
    private const int Size = 8;

    protected override ServerProcess Server => bench.Server;

    [Fact]
    public async Task Keys_move_mark_undo_and_redo()
    {
        var (visit, editor) = await BeginAsync(Reader.Desk);
        await editor.FocusFirstCellAsync(Size);
        await editor.PressAsync("ArrowUp");
        await editor.PressAsync("ArrowRight");
        await editor.PressAsync(" ");
        await Assertions.Expect(visit.Page.Locator("[data-say]")).ToHaveTextAsync("row 2, end 2, over");
        await editor.SavedAsync();
        await RowAsync(visit, 2, "under 6, over 1, under 1");
        await editor.PressAsync("Control+z");
        await RowAsync(visit, 2, "under 8");
        await editor.PressAsync("Control+y");
        await RowAsync(visit, 2, "under 6, over 1, under 1");
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Undo: draw 1 cell" })).ToBeEnabledAsync();
    }

    [Fact]
    public async Task The_longest_notes_are_saved_in_any_script()
    {
        var (visit, editor) = await BeginAsync(Reader.Desk);
        var notes = visit.Page.GetByLabel("Notes for the weaver");
        var longest = string.Concat(Enumerable.Repeat("■织", 10_000));
        await notes.FillAsync(longest);
        await notes.PressAsync("Tab");
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Undo: change the notes" })).ToBeEnabledAsync();
        await editor.SavedAsync();
        await visit.Page.ReloadAsync();
        await Assertions.Expect(notes).ToHaveValueAsync(longest);
    }

    [Fact]
    public async Task A_fault_appears_while_drawing_points_at_its_cells_and_goes_with_its_remedy()
    {
        var (visit, editor) = await BeginAsync(Reader.Desk);
        var checks = editor.Panel("Checks");
        var found = checks.Locator("button.what");
        await Assertions.Expect(found).ToContainTextAsync(["Nothing is drawn yet."]);
        await editor.DragAsync(Size, Size, (1, 1), (1, 8));
        await Assertions.Expect(found.First).ToContainTextAsync("Rows 1–8 of the motif never interlace.");
        await Assertions.Expect(checks.GetByRole(AriaRole.Status).First).ToContainTextAsync("fault");
        await Assertions.Expect(editor.Panel("Repeat and mirrors")).ToContainTextAsync("The smallest repeat is 1 end by 8 rows.");
        var drawn = await editor.PictureAsync();
        await found.First.ClickAsync();
        await Assertions.Expect(visit.Page.Locator("[data-marked=true]")).ToHaveCountAsync(1);
        Assert.NotEqual(drawn, await editor.PictureAsync());
        await visit.Page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Name = "Checks", Exact = true }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator("[data-marked=true]")).ToHaveCountAsync(0);
        Assert.Equal(drawn, await editor.PictureAsync());
        await checks.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Weave it plain" }).First.ClickAsync();
        await Assertions.Expect(checks.GetByRole(AriaRole.Status).First).ToContainTextAsync("No faults");
        await Assertions.Expect(visit.Page.Locator("table.rows tbody tr").Nth(1).Locator("td.runs")).ToContainTextAsync("[over 1, under 1] × 4");
        await visit.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Undo: weave it plain" }).ClickAsync();
        await Assertions.Expect(found.First).ToContainTextAsync("Rows 1–8 of the motif never interlace.");
        Assert.Equal(drawn, await editor.PictureAsync());
    }

    [Fact]
    public async Task Keys_draw_a_line_choose_copy_and_put_down_and_the_grid_says_where()
    {
        var (visit, editor) = await BeginAsync(Reader.Desk);
        await editor.FocusFirstCellAsync(Size);
        foreach (var key in new[] { "2", " ", "ArrowUp", "ArrowRight", "ArrowRight", "ArrowUp", " " })
        {
            await editor.PressAsync(key);
        }

        await RowAsync(visit, 2, "under 6, over 1, under 1");
        await RowAsync(visit, 3, "under 2, over 1, under 5");
        var grid = visit.Page.GetByRole(AriaRole.Grid);
        Assert.Equal("8 rows, 8 ends: 3,3 row 3, end 3, over; 0 more stops", await grid.EvaluateAsync<string>("""
            grid => {
              const cell = document.getElementById(grid.getAttribute('aria-activedescendant'));
              const place = `${cell.parentElement.getAttribute('aria-rowindex')},${cell.getAttribute('aria-colindex')} ${cell.getAttribute('aria-label')}`;
              const stops = [...grid.querySelectorAll('*')].filter(one => one.tabIndex >= 0).length;
              return `${grid.getAttribute('aria-rowcount')} rows, ${grid.getAttribute('aria-colcount')} ends: ${place}; ${stops} more stops`;
            }
            """));
        foreach (var key in new[] { "Control+Home", "Shift+ArrowUp", "Shift+ArrowRight", "o", "Control+c", "ArrowDown", "End", "ArrowLeft", "Control+v" })
        {
            await editor.PressAsync(key);
        }

        await Assertions.Expect(visit.Page.Locator("[data-say]")).ToHaveTextAsync("Put down: rows 1–2, ends 7–8.");
        await editor.SavedAsync();
        await RowAsync(visit, 1, "over 2, under 4, over 2");
        await RowAsync(visit, 2, "over 2, under 4, over 2");
        await Assertions.Expect(visit.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Undo: put down a copy: 4 cells" })).ToBeEnabledAsync();
    }

    [Fact]
    public async Task Two_taps_draw_a_box_with_its_mirror_image_and_the_way_stays()
    {
        var (visit, editor) = await BeginAsync(Reader.Desk);
        await visit.Page.GetByRole(AriaRole.Radio, new PageGetByRoleOptions { Name = "box", Exact = true }).CheckAsync();
        await visit.Page.GetByRole(AriaRole.Radio, new PageGetByRoleOptions { Name = "over", Exact = true }).CheckAsync();
        await visit.Page.GetByLabel("Mirror while drawing").SelectOptionAsync("across");
        await editor.DragAsync(Size, Size, (8, 1));
        await editor.DragAsync(Size, Size, (7, 2));
        await RowAsync(visit, 8, "over 2, under 4, over 2");
        await editor.DragAsync(Size, Size, (6, 4), (5, 4));
        await editor.SavedAsync();
        await RowAsync(visit, 7, "over 2, under 4, over 2");
        await RowAsync(visit, 5, "under 3, over 2, under 3");
    }

    [Fact]
    public async Task A_stray_click_is_seen_can_be_cleared_and_never_gets_into_the_next_drag()
    {
        var (visit, editor) = await BeginAsync(Reader.Desk);
        var saving = visit.Page.Locator("[data-saving]");
        var corner = visit.Page.Locator(".first-corner");
        var clear = visit.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Clear the first corner" });
        await visit.Page.GetByRole(AriaRole.Radio, new PageGetByRoleOptions { Name = "line", Exact = true }).CheckAsync();
        await editor.DragAsync(Size, Size, (2, 2));
        await Assertions.Expect(saving).ToHaveTextAsync("first corner set: now the other one");
        await Assertions.Expect(corner).ToBeVisibleAsync();
        await editor.DragAsync(Size, Size, (5, 3), (5, 6));
        await editor.SavedAsync();
        await Assertions.Expect(corner).ToBeHiddenAsync();
        await RowAsync(visit, 5, "under 2, over 4, under 2");
        await RowAsync(visit, 2, "under 8");
        var drawn = await editor.PictureAsync();
        foreach (var act in new[] { () => editor.PressAsync("Escape"), () => clear.ClickAsync(), () => visit.Page.GetByRole(AriaRole.Radio, new PageGetByRoleOptions { Name = "box", Exact = true }).CheckAsync() })
        {
            await editor.DragAsync(Size, Size, (2, 2));
            await Assertions.Expect(corner).ToBeVisibleAsync();
            await act();
            await Assertions.Expect(corner).ToBeHiddenAsync();
            await Assertions.Expect(clear).ToBeHiddenAsync();
            await editor.SavedAsync();
            Assert.Equal(drawn, await editor.PictureAsync());
        }

        await editor.DragAsync(Size, Size, (2, 2));
        await editor.DragAsync(Size, Size, (1, 4));
        await editor.SavedAsync();
        await RowAsync(visit, 1, "under 1, over 3, under 4");
        await editor.DragAsync(Size, Size, (8, 8));
        await Assertions.Expect(corner).ToBeVisibleAsync();
        await visit.Page.ReloadAsync();
        await editor.SavedAsync();
        await RowAsync(visit, 8, "under 8");
    }

    [Fact]
    public async Task A_corner_waits_while_two_fingers_move_the_chart()
    {
        var (visit, editor) = await BeginAsync(Reader.Phone);
        await visit.Page.GetByRole(AriaRole.Radio, new PageGetByRoleOptions { Name = "line", Exact = true }).CheckAsync();
        await editor.TapAsync(Size, Size, (Size, 1));
        await editor.TouchAsync("touchStart", (Size, 3));
        await editor.TouchAsync("touchStart", (Size, 3), (Size, 6));
        await editor.TouchAsync("touchEnd");
        await Assertions.Expect(visit.Page.Locator(".first-corner")).ToBeVisibleAsync();
        await editor.TapAsync(Size, Size, (Size, 4));
        await editor.SavedAsync();
        await RowAsync(visit, Size, "under 4, over 4");
    }

    [Fact]
    public async Task A_stroke_that_is_given_up_or_taken_away_was_never_drawn()
    {
        var (visit, editor) = await BeginAsync(Reader.Desk);
        var blank = await editor.PictureAsync();
        await editor.HoldAsync(Size, Size, (3, 2), (3, 6));
        Assert.NotEqual(blank, await editor.PictureAsync());
        await editor.PressAsync("Escape");
        Assert.Equal(blank, await editor.PictureAsync());
        await visit.Page.Mouse.UpAsync();
        await editor.HoldAsync(Size, Size, (3, 2), (3, 6));
        await visit.Page.Locator("[data-motif] canvas").EvaluateAsync("canvas => canvas.dispatchEvent(new PointerEvent('pointercancel', { pointerId: 1 }))");
        Assert.Equal(blank, await editor.PictureAsync());
        await visit.Page.Mouse.UpAsync();
        await editor.DragAsync(Size, Size, (3, 2), (3, 6), (3, 3));
        await editor.SavedAsync();
        await RowAsync(visit, 3, "under 1, over 5, under 2");
    }

    [Fact]
    public async Task Rows_out_of_sight_are_there_for_ears_that_come_late()
    {
        var (visit, editor) = await BeginAsync(Reader.Phone);
        await editor.TapAsync(Size, Size, (1, 1));
        await editor.SavedAsync();
        await Assertions.Expect(visit.Page.Locator(".bench")).ToHaveAttributeAsync("data-hand", "away");
        await visit.Page.EvaluateAsync("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))");
        Assert.True(await visit.Page.Locator("table.rows").EvaluateAsync<bool>("table => table.getBoundingClientRect().top > innerHeight"));
        var ears = await visit.Page.Context.NewCDPSessionAsync(visit.Page);
        await ears.SendAsync("Accessibility.enable");
        var heard = await ears.SendAsync("Accessibility.getFullAXTree");
        Assert.Equal(Size, heard!.Value.GetProperty("nodes").EnumerateArray().Count(node => node.TryGetProperty("role", out var role) && role.GetProperty("value").GetString() == "rowheader"));
    }

    [Fact]
    public async Task A_stroke_goes_where_the_hand_sees_the_chart_when_the_page_moves_under_it()
    {
        var (visit, editor) = await BeginAsync(Reader.Desk);
        await editor.HoldAsync(Size, Size, (3, 2), (3, 4));
        await visit.Page.EvaluateAsync("""
            () => new Promise(done => {
              document.querySelector('.charts').prepend(Object.assign(document.createElement('div'), { style: 'height: 90px' }));
              requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done)));
            })
            """);
        await editor.GoOnAsync(Size, Size, (5, 4), (5, 6));
        await visit.Page.Mouse.UpAsync();
        await editor.SavedAsync();
        await RowAsync(visit, 5, "under 3, over 3, under 2");
        await RowAsync(visit, 3, "under 1, over 3, under 4");
    }

    [Fact]
    public async Task A_finger_draws_and_a_second_takes_back_what_was_begun()
    {
        var (visit, editor) = await BeginAsync(Reader.Phone);
        var blank = await editor.PictureAsync();
        await editor.TouchAsync("touchStart", (Size, 1));
        await editor.TouchAsync("touchMove", (Size, 5));
        Assert.NotEqual(blank, await editor.PictureAsync());
        await editor.TouchAsync("touchStart", (Size, 5), (Size, 7));
        Assert.Equal(blank, await editor.PictureAsync());
        await editor.TouchAsync("touchEnd");
        await editor.TouchAsync("touchStart", (Size, 1));
        await editor.TouchAsync("touchMove", (Size, 5));
        await editor.TouchAsync("touchEnd");
        await editor.SavedAsync();
        await RowAsync(visit, Size, "under 3, over 5");
    }

    [Fact]
    public async Task Two_fingers_make_cells_larger_move_the_chart_and_draw_nothing()
    {
        var (visit, editor) = await BeginAsync(Reader.Phone);
        var canvas = visit.Page.Locator("[data-motif] canvas");
        await canvas.ScrollIntoViewIfNeededAsync();
        var box = (await canvas.BoundingBoxAsync())!;
        var (x, y) = (box.X + (box.Width / 2), box.Y + (box.Height / 2));
        var before = await ShownAsync();
        await editor.FingersAsync("touchStart", (x - 20, y));
        await editor.FingersAsync("touchStart", (x - 20, y), (x + 20, y));
        foreach (var apart in new[] { 40, 60, 80, 100 })
        {
            await editor.FingersAsync("touchMove", (x - apart, y), (x + apart, y));
        }

        var large = await ShownAsync();
        Assert.InRange(large.Width, 1.5 * before.Width, 5 * before.Width);
        foreach (var by in new[] { 10, 20, 30, 40 })
        {
            await editor.FingersAsync("touchMove", (x - 100 - by, y), (x + 100 - by, y));
        }

        var moved = await ShownAsync();
        Assert.Equal(large.Width, moved.Width);
        Assert.Equal(large.Left + 40, moved.Left, 1d);
        await editor.FingersAsync("touchEnd");
        await editor.SavedAsync();
        await RowAsync(visit, 5, "under 8");

        async Task<(double Width, double Left)> ShownAsync() => await visit.Page.EvaluateAsync<double[]>(
            """
            () => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => {
              const stage = document.querySelector('[data-motif]');
              done([stage.firstElementChild.offsetWidth, stage.scrollLeft]);
            })))
            """) is [var width, var left] ? (width, left) : default;
    }

    [Fact]
    public async Task Two_windows_show_each_others_edits()
    {
        var (visit, editor) = await BeginAsync(Reader.Desk);
        var other = await visit.Page.Context.NewPageAsync();
        await other.GotoAsync(visit.Page.Url);
        await Assertions.Expect(other.Locator("[data-saving]")).ToHaveTextAsync("saved");
        await editor.DragAsync(Size, Size, (1, 1), (1, 4));
        await Assertions.Expect(other.Locator("td.runs").First).ToHaveTextAsync("over 4, under 4");
        await other.GetByLabel("Title").FillAsync("Seen from both");
        await other.GetByLabel("Title").PressAsync("Tab");
        await Assertions.Expect(visit.Page.Locator("h1")).ToHaveTextAsync("Seen from both");
        await other.GetByLabel("Ends: one less", new PageGetByLabelOptions { Exact = true }).ClickAsync();
        await RowAsync(visit, 1, "over 4, under 3");
    }

    [Fact]
    public async Task Strokes_of_a_page_that_is_gone_are_taken_once_or_shown_until_thrown_away()
    {
        var (visit, editor) = await BeginAsync(Reader.Desk);
        await visit.Page.EvaluateAsync("""
            () => {
              const id = location.pathname.split('/').pop();
              const leave = (sequence, text) => localStorage.setItem(`patternshop:stroke:${id}:gone:${sequence}`, JSON.stringify({ client: 'gone', sequence, text, cells: 1 }));
              leave(1, '8.8 o0:0');
              leave(2, '9.9 o8:8');
              leave(3, '8.8 o0:1');
            }
            """);
        await visit.Page.ReloadAsync();
        await editor.SavedAsync();
        await RowAsync(visit, 1, "over 2, under 6");
        var refused = visit.Page.Locator("[data-refused] li");
        await Assertions.Expect(refused).ToContainTextAsync("A stroke of 1 cell was not taken. It was drawn on a motif of 9 rows of 9 ends; the motif now has 8 rows of 8 ends.");
        await visit.Page.ReloadAsync();
        await refused.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = "Throw away" }).ClickAsync();
        await Assertions.Expect(visit.Page.Locator("[data-refused]")).ToBeHiddenAsync();
        Assert.Equal(0, await visit.Page.EvaluateAsync<int>("() => localStorage.length"));
    }

    [Fact]
    public async Task Who_signed_out_elsewhere_loses_nothing()
    {
        var (visit, editor) = await BeginAsync(Reader.Desk);
        var other = await visit.Page.Context.NewPageAsync();
        await other.GotoAsync("/studio");
        await other.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Sign out" }).ClickAsync();
        await Assertions.Expect(other.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Level = 1 })).Not.ToHaveTextAsync("My patterns");
        await editor.DragAsync(Size, Size, (1, 1), (1, 3));
        await Assertions.Expect(visit.Page.Locator("[data-saving]")).ToHaveTextAsync("signed out: not saved, kept in this browser");
        await visit.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Sign in again" }).ClickAsync();
        await visit.Page.GetByLabel("E-mail").FillAsync(SetUp.Email);
        await visit.Page.GetByLabel("Passphrase").FillAsync(SetUp.Passphrase);
        await visit.Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Sign in" }).ClickAsync();
        await editor.SavedAsync();
        await bench.KeepAsync(visit.Page);
        await RowAsync(visit, 1, "over 3, under 5");
    }

    [Fact]
    public async Task The_bench_fits_every_window_and_everybody_can_use_it()
    {
        var (first, editor) = await BeginAsync(Reader.Desk);
        await editor.DragAsync(Size, Size, (1, 1), (8, 8));
        await editor.SavedAsync();
        var address = new Uri(first.Page.Url).AbsolutePath;
        foreach (var (width, dark) in new[] { (320, true), (390, false), (768, true), (1280, true) })
        {
            var visit = await OpenAsync(Reader.Phone with { Width = width, Dark = dark });
            await bench.EnterAsync(visit);
            await visit.GoAsync(address);
            await new EditorPage(visit).SavedAsync();
            await RowAsync(visit, 1, "over 1, under 7");
            Assert.Empty(await Width.OverflowAsync(visit));
            Assert.Empty(await Axe.FindingsAsync(visit));
            Assert.Empty(await visit.Page.EvaluateAsync<string[]>("""
                () => [...document.querySelectorAll('button, input, select, textarea, a')]
                  .filter(one => one.checkVisibility() && Math.min(one.offsetWidth, one.offsetHeight) < 44).map(one => one.outerHTML.slice(0, 80))
                """));
        }
    }

    private async Task<(Visit Visit, EditorPage Editor)> BeginAsync(Reader reader)
    {
        var visit = await OpenAsync(reader);
        await bench.EnterAsync(visit);
        var editor = new EditorPage(visit);
        await editor.BeginAsync("Drawing lesson", Size, Size);
        await editor.PlainEdgesAsync();
        return (visit, editor);
    }

    private static Task RowAsync(Visit visit, int row, string runs) =>
        Assertions.Expect(visit.Page.Locator("table.rows tbody tr").Nth(row - 1).Locator("td.runs")).ToHaveTextAsync(runs);
}
