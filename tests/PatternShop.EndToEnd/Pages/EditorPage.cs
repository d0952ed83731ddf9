using System.Globalization;
using Microsoft.Playwright;

namespace PatternShop.EndToEnd;

/// <summary>The workbench: the chart to draw on and the fields beside it.</summary>
internal sealed class EditorPage(Visit visit)
{
    // the margins that the page gives to a motif of fewer than ten rows: numbers at the left, a hair on top and at the right
    private const float LeftMargin = 22;
    private const float TopMargin = 1;
    private const float SideMargins = 24;
    private const float Patience = 60_000;
    private ICDPSession? _hand;

    private IPage Page => visit.Page;

    private ILocator Stage => Page.Locator("[data-motif]");

    /// <summary>Makes a blank pattern and opens it.</summary>
    public async Task BeginAsync(string title, int ends, int rows)
    {
        await visit.GoAsync("/studio/new");
        await Page.GetByLabel("Title").FillAsync(title);
        await Page.GetByLabel("Ends in the motif").FillAsync(ends.ToString(CultureInfo.InvariantCulture));
        await Page.GetByLabel("Rows in the motif").FillAsync(rows.ToString(CultureInfo.InvariantCulture));
        await Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Begin" }).ClickAsync();
        await SavedAsync();
    }

    /// <summary>Waits until the page says that everything is saved.</summary>
    public Task SavedAsync() => Assertions.Expect(Page.Locator("[data-saving]"))
        .ToHaveTextAsync("saved", new LocatorAssertionsToHaveTextOptions { Timeout = Patience });

    /// <summary>One stroke of the mouse through cells of a motif, rows and ends from 1.</summary>
    public async Task DragAsync(int rows, int ends, params (int Row, int End)[] cells)
    {
        await HoldAsync(rows, ends, cells);
        await Page.Mouse.UpAsync();
    }

    /// <summary>One tap of a finger on a cell.</summary>
    public async Task TapAsync(int rows, int ends, (int Row, int End) cell)
    {
        await Stage.ScrollIntoViewIfNeededAsync();
        var (x, y) = (await MiddleAsync(rows, ends))(cell);
        await Page.Touchscreen.TapAsync(x, y);
    }

    /// <summary>The same without letting go.</summary>
    public async Task HoldAsync(int rows, int ends, params (int Row, int End)[] cells)
    {
        await Stage.ScrollIntoViewIfNeededAsync();
        var middle = await MiddleAsync(rows, ends);
        var start = middle(cells[0]);
        await Page.Mouse.MoveAsync(start.X, start.Y);
        await Page.Mouse.DownAsync();
        await GoOnAsync(rows, ends, cells[1..]);
    }

    /// <summary>Goes on to other cells, without letting go.</summary>
    public async Task GoOnAsync(int rows, int ends, params (int Row, int End)[] cells)
    {
        var middle = await MiddleAsync(rows, ends);
        foreach (var at in cells)
        {
            var (x, y) = middle(at);
            await Page.Mouse.MoveAsync(x, y);
        }
    }

    /// <summary>What fingers do on a motif of 8 rows of 8 ends: touchStart, touchMove or touchEnd, with the cells on which they are.</summary>
    public async Task TouchAsync(string what, params (int Row, int End)[] fingers)
    {
        if (what == "touchStart" && fingers.Length == 1)
        {
            await Stage.ScrollIntoViewIfNeededAsync();
        }

        var middle = await MiddleAsync(8, 8);
        await FingersAsync(what, [.. fingers.Select(middle)]);
    }

    /// <summary>What fingers do anywhere in the window.</summary>
    public async Task FingersAsync(string what, params (float X, float Y)[] fingers)
    {
        var points = fingers.Index().Select(finger => new { x = finger.Item.X, y = finger.Item.Y, id = finger.Index }).ToArray();
        _hand ??= await Page.Context.NewCDPSessionAsync(Page);
        await _hand.SendAsync("Input.dispatchTouchEvent", new Dictionary<string, object>(StringComparer.Ordinal) { ["type"] = what, ["touchPoints"] = points });
    }

    /// <summary>What the chart shows, as a text that is the same for the same picture.</summary>
    public Task<string> PictureAsync() => Page.Locator("[data-motif] canvas").EvaluateAsync<string>("canvas => canvas.toDataURL()");

    /// <summary>Takes the floating selvedges away and starts at the left, so that rows read as they are drawn.</summary>
    public async Task PlainEdgesAsync()
    {
        await ChooseAsync(Panel("Floating selvedges"), "They go", "none");
        await ChooseAsync(Panel("Order of rows"), "Row 1 starts at the", "left");
    }

    private async Task<Func<(int Row, int End), (float X, float Y)>> MiddleAsync(int rows, int ends)
    {
        var box = await Page.Locator("[data-motif] canvas").BoundingBoxAsync() ?? throw new InvalidOperationException("The chart is not in sight.");
        var cell = (box.Width - SideMargins) / ends;
        return at => (box.X + LeftMargin + ((at.End - 0.5f) * cell), box.Y + TopMargin + ((rows - at.Row + 0.5f) * cell));
    }

    /// <summary>Puts the cursor on end 1 of row 1.</summary>
    public async Task FocusFirstCellAsync(int rows)
    {
        await Stage.FocusAsync();
        for (var step = 1; step < rows; step++)
        {
            await Page.Keyboard.PressAsync("ArrowDown");
        }

        await Page.Keyboard.PressAsync("Home");
    }

    public Task PressAsync(string key) => Page.Keyboard.PressAsync(key);

    /// <summary>Types into a number field and leaves it.</summary>
    public async Task NumberAsync(ILocator within, string label, int value, int nth = 0)
    {
        var field = within.GetByLabel(label, new LocatorGetByLabelOptions { Exact = true }).Nth(nth);
        await field.FillAsync(value.ToString(CultureInfo.InvariantCulture));
        await field.PressAsync("Tab");
        await SavedAsync();
    }

    public async Task ChooseAsync(ILocator within, string label, string choice)
    {
        await within.GetByLabel(label, new LocatorGetByLabelOptions { Exact = true }).SelectOptionAsync(new SelectOptionValue { Label = choice });
        await SavedAsync();
    }

    public async Task ClickAsync(ILocator within, string button)
    {
        await within.GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = button, Exact = true }).ClickAsync();
        await SavedAsync();
    }

    public ILocator Panel(string heading) => Page.Locator("section").Filter(new LocatorFilterOptions
    {
        Has = Page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Name = heading, Exact = true }),
    }).Last;

    /// <summary>The rows as they stand below the chart; they are laid out when they come into sight.</summary>
    public async Task<IReadOnlyList<WrittenRow>> RowsAsync()
    {
        await Page.Locator("table.rows").ScrollIntoViewIfNeededAsync();
        await Page.WaitForFunctionAsync("() => document.querySelector('table.rows td.runs').innerText !== ''");
        return await new PatternPage(visit).RowsAsync();
    }

    /// <summary>Issues what is drawn and comes back to my patterns.</summary>
    /// <param name="correction">Whether it mends a version before it.</param>
    public async Task IssueAsync(bool correction = false)
    {
        await Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Preview and issue" }).ClickAsync();
        if (correction)
        {
            await Page.Locator("[name=Kind][value=correction]").CheckAsync();
        }

        await Page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new("^Issue version", System.Text.RegularExpressions.RegexOptions.None, TimeSpan.FromSeconds(1)) }).ClickAsync();
        await Assertions.Expect(Page.GetByRole(AriaRole.Heading, new PageGetByRoleOptions { Level = 1 })).ToHaveTextAsync("My patterns");
    }
}
