using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Cells, lines, cursor and geometry of the editor's script.</summary>
public sealed class CellScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    [Fact]
    public async Task A_line_has_no_gap_no_cell_twice_and_no_detour() => Assert.Empty(await page.RunAsync<string[]>("""
        const { cellsBetween } = await editor('line');
        const next = random(1), faults = [];
        for (let time = 0; time < 10000; time++) {
          const at = () => ({ row: Math.floor(next() * 400) - 100, end: Math.floor(next() * 400) - 100 });
          const from = at(), to = time % 10 === 0 ? from : at();
          const cells = cellsBetween(from, to);
          const first = cells[0], last = cells.at(-1);
          const steps = Math.max(Math.abs(to.row - from.row), Math.abs(to.end - from.end));
          const touching = cells.slice(1).every((cell, i) => Math.max(Math.abs(cell.row - cells[i].row), Math.abs(cell.end - cells[i].end)) === 1);
          if (!touching || cells.length !== steps + 1 || first.row !== from.row || first.end !== from.end || last.row !== to.row || last.end !== to.end) {
            faults.push(JSON.stringify({ from, to }));
          }
        }
        return faults;
        """));

    [Fact]
    public async Task A_grid_is_read_from_packed_rows()
    {
        // 2 rows of 10 ends: x..x.....x and .x........; the lowest bit is the leftmost end
        var cells = await page.RunAsync<string>("""
            const { Grid } = await editor('grid');
            const grid = Grid.fromBase64(2, 10, btoa(String.fromCharCode(0b00001001, 0b10, 0b00000010, 0)));
            const text = () => [0, 1].map(row => Array.from({ length: 10 }, (_, end) => grid.get(row, end) ? 'x' : '.').join('')).join('/');
            const before = text();
            const copy = grid.copy();
            grid.set(1, 9, true);
            grid.set(0, 0, false);
            grid.setRow(0, btoa(String.fromCharCode(0b100, 0)));
            return [before, text(), String(copy.get(1, 9)), String(grid.has(2, 0)), String(grid.has(1, 9))].join(' ');
            """);
        Assert.Equal("x..x.....x/.x........ ..x......./.x.......x false false true", cells);
    }

    [Theory]
    [InlineData("ArrowUp", false, "3,2")]
    [InlineData("ArrowDown", false, "1,2")]
    [InlineData("ArrowLeft", false, "2,1")]
    [InlineData("ArrowRight", false, "2,3")]
    [InlineData("Home", false, "2,0")]
    [InlineData("End", false, "2,7")]
    [InlineData("Home", true, "0,0")]
    [InlineData("End", true, "19,7")]
    [InlineData("PageUp", false, "7,2")]
    [InlineData("PageDown", false, "0,2")]
    [InlineData("ArrowUp", true, "null")]
    [InlineData("Enter", false, "null")]
    public async Task Keys_move_the_cursor(string key, bool far, string to) => Assert.Equal(to, await page.RunAsync<string>($$"""
        const { moveCursor } = await editor('cursor');
        const at = moveCursor({ row: 2, end: 2 }, '{{key}}', { rows: 20, ends: 8 }, {{(far ? "true" : "false")}});
        return at ? `${at.row},${at.end}` : 'null';
        """));

    [Fact]
    public async Task The_cursor_never_leaves_the_chart() => Assert.Equal(0, await page.RunAsync<int>("""
        const { moveCursor } = await editor('cursor');
        const keys = ['ArrowUp', 'ArrowDown', 'ArrowLeft', 'ArrowRight', 'PageUp', 'PageDown', 'Home', 'End'];
        const next = random(2);
        let outside = 0;
        for (let time = 0; time < 2000; time++) {
          const size = { rows: 1 + Math.floor(next() * 9), ends: 1 + Math.floor(next() * 9) };
          let at = { row: 0, end: 0 };
          for (let step = 0; step < 20; step++) {
            at = moveCursor(at, keys[Math.floor(next() * keys.length)], size, next() < 0.3) ?? at;
            outside += at.row >= 0 && at.row < size.rows && at.end >= 0 && at.end < size.ends ? 0 : 1;
          }
        }
        return outside;
        """));

    [Fact]
    public async Task Every_point_of_a_cell_hits_that_cell_at_any_pixel_ratio() => Assert.Empty(await page.RunAsync<string[]>("""
        const { Geometry } = await editor('geometry');
        const faults = [];
        for (const ratio of [1, 1.1, 1.25, 1.5, 2, 2.625, 3]) {
          for (const cell of [10, 13.3, 22, 40]) {
            const chart = new Geometry({ rows: 7, ends: 9 }, cell, { left: 21, below: 22, right: 3 }, ratio);
            for (let row = 0; row < 7; row++) {
              for (let end = 0; end < 9; end++) {
                for (const [dx, dy] of [[0.02, 0.02], [0.5, 0.5], [0.98, 0.98]]) {
                  const hit = chart.cellAt((chart.x(end) + dx * chart.cell) / ratio, (chart.y(row) + dy * chart.cell) / ratio);
                  if (hit.row !== row || hit.end !== end) {
                    faults.push(`${ratio} ${cell} ${row},${end} hit ${hit.row},${hit.end}`);
                  }
                }
              }
            }
          }
        }
        return faults;
        """));

    [Fact]
    public async Task Row_1_is_at_the_bottom_and_edges_lie_on_whole_pixels() => Assert.Equal("true", await page.RunAsync<string>("""
        const { Geometry } = await editor('geometry');
        const chart = new Geometry({ rows: 5, ends: 5 }, 17.3, { left: 21.7, below: 22.2 }, 1.25);
        return String(chart.y(0) > chart.y(4) && [0, 1, 2].every(at => Number.isInteger(chart.x(at)) && Number.isInteger(chart.y(at))));
        """));

    [Fact]
    public async Task Scrolling_to_a_cell_brings_it_into_sight() => Assert.Equal(0, await page.RunAsync<int>("""
        const { Geometry } = await editor('geometry');
        const next = random(3);
        const chart = new Geometry({ rows: 120, ends: 200 }, 14, { left: 30, below: 22, right: 2 }, 2);
        const view = { width: 400, height: 300 };
        let unseen = 0;
        let scroll = { x: 0, y: 0 };
        for (let time = 0; time < 2000; time++) {
          const cell = { row: Math.floor(next() * 120), end: Math.floor(next() * 200) };
          scroll = chart.scrollTo(cell, scroll, view);
          const seen = chart.visible({ x: scroll.x * 2, y: scroll.y * 2 }, { width: 800, height: 600 });
          unseen += cell.row >= seen.firstRow && cell.row <= seen.lastRow && cell.end >= seen.firstEnd && cell.end <= seen.lastEnd ? 0 : 1;
        }
        return unseen;
        """));
}
