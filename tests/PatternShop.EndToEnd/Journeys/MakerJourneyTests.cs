using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>
/// A maker goes from an empty folder to a public page: sets the shop up, draws the diamond, plans it, issues it; a reader
/// without scripts downloads it. The chart and its directions are this test's own.
/// </summary>
public sealed class MakerJourneyTests(Stage stage, OwnServer own) : Journey(stage), IClassFixture<OwnServer>
{
    private const int Size = 10;

    // the diamond of "Whole pieces" 2 of the outside values, row 1 first, x over
    private static readonly string[] Diamond =
    [
        "x.xx...xx.", ".x.xx.xx.x", "..x.xxx.x.", "x..x.x.x..", "xx..x.x..x",
        ".xx..x..xx", "xx..x.x..x", "x..x.x.x..", "..x.xxx.x.", ".x.xx.xx.x",
    ];

    // repeated rows once, then the closing rows
    private static readonly int[] Numbers = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 21, 22];

    protected override ServerProcess Server => own.Server;

    [Fact]
    public async Task From_an_empty_folder_to_a_sheet_in_a_readers_hand()
    {
        var maker = await OpenAsync(Reader.Desk);
        await SetUp.DoAsync(maker, Server);
        var editor = new EditorPage(maker);
        await editor.BeginAsync("Lattice window", Size, Size);
        await DrawAsync(editor);
        await PlanAsync(editor);
        await Assertions.Expect(new PatternPage(maker).RowTable.Locator("tbody tr")).ToHaveCountAsync(12);
        Assert.Empty(WrittenRow.Differences(await editor.RowsAsync(), Woven(Diamond)));
        Assert.Empty(await Axe.FindingsAsync(maker));
        await editor.IssueAsync();

        var reader = await OpenAsync(Reader.Phone with { Script = false });
        await reader.GoAsync("/");
        await reader.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Lattice window" }).ClickAsync();
        var page = new PatternPage(reader);
        await Assertions.Expect(page.Heading).ToHaveTextAsync("Lattice window");
        Assert.Empty(WrittenRow.Differences(await page.RowsAsync(), Woven(Diamond)));
        var (_, bytes) = await page.DownloadAsync("Printable, A4 (PDF)");
        Assert.Empty(WrittenRow.Differences(PrintedRows.Read(bytes, Numbers), Woven(Diamond)));
        var looker = await OpenAsync(Reader.Phone with { Dark = true });
        await looker.GoAsync("/");
        await Assertions.Expect(new FirstPage(looker).Patterns).ToHaveCountAsync(1);
        Assert.Empty(await Axe.FindingsAsync(looker));
        await looker.GoAsync(new Uri(reader.Page.Url).AbsolutePath);
        await Assertions.Expect(new PatternPage(looker).Chart).ToBeVisibleAsync();
        Assert.Empty(await Axe.FindingsAsync(looker));
        await looker.Page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = ColorScheme.Light });
        Assert.Empty(await Axe.FindingsAsync(looker));

        // one other cell: the comparison, which has not changed, names its row
        await maker.Page.GetByRole(AriaRole.Link, new PageGetByRoleOptions { Name = "Open" }).First.ClickAsync();
        await editor.SavedAsync();
        await editor.DragAsync(Size, Size, (3, 2));
        await editor.SavedAsync();
        await editor.IssueAsync(correction: true);
        await reader.Page.ReloadAsync();
        (_, bytes) = await page.DownloadAsync("Printable, A4 (PDF)");
        string[] third = ["row 3, run 6: over 2, not over 1"];
        Assert.Equal(third, WrittenRow.Differences(await page.RowsAsync(), Woven(Diamond)));
        Assert.Equal(third, WrittenRow.Differences(PrintedRows.Read(bytes, Numbers), Woven(Diamond)));
    }

    // rows 1 to 4 cell by cell with the mouse, 5 to 8 with keys, 9 and 10 by drags over neighbours
    private static async Task DrawAsync(EditorPage editor)
    {
        foreach (var (row, end) in Overs(1, 4))
        {
            await editor.DragAsync(Size, Size, (row, end));
        }

        await editor.SavedAsync();
        await editor.FocusFirstCellAsync(Size);
        await RepeatAsync(editor, "ArrowUp", 4);
        for (var row = 5; row <= 8; row++)
        {
            for (var end = 1; end <= Size; end++)
            {
                if (Diamond[row - 1][end - 1] == 'x')
                {
                    await editor.PressAsync(" ");
                }

                await editor.PressAsync("ArrowRight");
            }

            await editor.PressAsync("Home");
            await editor.PressAsync("ArrowUp");
        }

        await editor.DragAsync(Size, Size, (9, 3));
        await editor.DragAsync(Size, Size, (9, 5), (9, 6), (9, 7));
        await editor.DragAsync(Size, Size, (9, 9));
        await editor.DragAsync(Size, Size, (10, 2));
        await editor.DragAsync(Size, Size, (10, 4), (10, 5));
        await editor.DragAsync(Size, Size, (10, 8), (10, 7));
        await editor.DragAsync(Size, Size, (10, 10));
        await editor.SavedAsync();
    }

    private static async Task PlanAsync(EditorPage editor)
    {
        var width = editor.Panel("Width");
        await editor.NumberAsync(width, "Repeats across", 2);
        await editor.NumberAsync(width, "Balance ends", 1);
        var edges = editor.Panel("Floating selvedges");
        await editor.ChooseAsync(edges, "They go", "entering: in and out differ");
        await editor.ChooseAsync(edges, "The first one met", "under");
        var plan = editor.Panel("Order of rows");
        await editor.ChooseAsync(plan, "Row 1 starts at the", "right");
        var add = plan.GetByRole(AriaRole.Group, new LocatorGetByRoleOptions { Name = "Add to the plan" });
        await editor.ClickAsync(add, "repeat");
        await editor.ClickAsync(plan, "Remove step 1");
        await editor.ClickAsync(add, "chart rows");
        await editor.NumberAsync(plan, "to", 1, nth: 1);
        await editor.ClickAsync(add, "plain rows");
        await editor.NumberAsync(plan, "Plain rows", 1);
    }

    private static async Task RepeatAsync(EditorPage editor, string key, int times)
    {
        for (var time = 0; time < times; time++)
        {
            await editor.PressAsync(key);
        }
    }

    private static IEnumerable<(int Row, int End)> Overs(int first, int last) =>
        from row in Enumerable.Range(first, last - first + 1)
        from end in Enumerable.Range(1, Size)
        where Diamond[row - 1][end - 1] == 'x'
        select (row, end);

    private static IReadOnlyList<WovenRow> Woven(string[] chart) => WeavingOrder.Of(JsonSerializer.SerializeToElement(new
    {
        chart,
        repeats = 2,
        offset = 0,
        balance = 1,
        floating = 1,
        edges = "entering",
        firstEdge = "under",
        starts = new[] { "right" },
        firstPlain = "under",
        rowPlan = new object[]
        {
            new { step = "repeat", times = 2, steps = new object[] { new { step = "chart", first = 1, last = 10, weft = 1 } } },
            new { step = "chart", first = 1, last = 1, weft = 1 },
            new { step = "plain", count = 1, weft = 1 },
        },
    }));
}
