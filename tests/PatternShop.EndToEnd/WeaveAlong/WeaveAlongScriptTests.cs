using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>The place and the look-ups of weave-along, without a page.</summary>
public sealed class WeaveAlongScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    // pieces of 1 to 12 rows with brackets, some inside others, repeated rows that read otherwise the second time, and stitches
    private const string Pieces = """
        const { Piece } = await import('/scripts/weave/piece.js');
        const place = await import('/scripts/weave/place.js');
        const words = { language: 'en', over: 'over', under: 'under', bracket: '{time} of {times} times', innerBracket: ', inside {time} of {times}', place: 'Row {number} of {all}', placeAgain: 'Row {within} of {each} · time {time} of {times} (row {number} of {all})' };
        const pick = (next, most) => Math.floor(next() * most);
        const made = seed => {
          const next = random(seed);
          const readings = Array.from({ length: 6 }, (_, i) => (i % 2 ? 'l' : 'r') + (next() < 0.5 ? 'u1' : '') + (next() < 0.5 ? `[o${1 + pick(next, 3)}u2]${2 + pick(next, 3)}o1` : `[o${1 + pick(next, 3)}[u1o2]${2 + pick(next, 2)}u2]${2 + pick(next, 2)}o1`));
          const band = times => { const each = 1 + pick(next, 4), printed = each * (times > 1 && next() < 0.5 ? 2 : 1); return { each, times, readings: Array.from({ length: printed }, () => pick(next, 6)), notes: Array(printed).fill(0) }; };
          const bands = [band(1), band(2 + pick(next, 3)), band(1)];
          const rows = bands.reduce((sum, one) => sum + one.each * one.times, 0);
          const stitches = Array.from({ length: pick(next, 4) }, () => [pick(next, rows + 1), 0, 0]).sort((a, b) => a[0] - b[0]);
          return new Piece({ pattern: 'p', version: 1, ends: 20, floating: 1, rows, readings, notes: [''], bands, stitchTexts: ['twining'], stitches, words });
        };
        const steps = piece => { let sum = piece.data.stitches.length; for (let row = 1; row <= piece.rows; row++) { sum += piece.reading(row).runs.length; } return sum; };
        const at = one => `${one.woven}.${one.step}`;
        """;

    [Fact]
    public async Task Every_step_is_undone_by_going_back_and_the_whole_piece_is_as_many_steps_as_runs_and_stitches() => Assert.Empty(await page.RunAsync<string[]>(Pieces + """
        const faults = [];
        for (let seed = 1; seed <= 300; seed++) {
          const piece = made(seed);
          const been = [place.startOf(piece)];
          while (!place.isDone(piece, been.at(-1))) { been.push(place.forward(piece, been.at(-1))); }
          if (been.length - 1 !== steps(piece)) { faults.push(`${seed}: ${been.length - 1} steps, not ${steps(piece)}`); }
          if (place.forward(piece, been.at(-1)) !== been.at(-1)) { faults.push(`${seed}: past the end`); }
          if (been.slice(1).some((one, i) => at(place.back(piece, one)) !== at(been[i]))) { faults.push(`${seed}: back`); }
          if (been.some(one => at(place.read(piece, JSON.stringify(one))) !== at(one))) { faults.push(`${seed}: kept`); }
        }
        return faults;
        """));

    [Fact]
    public async Task By_whole_rows_the_same_holds_with_a_step_a_row() => Assert.Empty(await page.RunAsync<string[]>(Pieces + """
        const faults = [];
        for (let seed = 1; seed <= 300; seed++) {
          const piece = made(seed);
          const been = [{ ...place.startOf(piece), byRows: true }];
          while (!place.isDone(piece, been.at(-1))) { been.push(place.forward(piece, been.at(-1))); }
          if (been.length - 1 !== piece.rows + piece.data.stitches.length) { faults.push(`${seed}: ${been.length - 1} steps`); }
          if (been.slice(1).some((one, i) => at(place.back(piece, one)) !== at(been[i]))) { faults.push(`${seed}: back`); }
        }
        return faults;
        """));

    [Fact]
    public async Task Jumps_are_undone_too_in_their_order() => Assert.Empty(await page.RunAsync<string[]>(Pieces + """
        const faults = [];
        for (let seed = 1; seed <= 300; seed++) {
          const piece = made(seed), next = random(seed);
          const been = [place.startOf(piece)];
          for (let i = 0; i < 30; i++) {
            const now = been.at(-1);
            const then = next() < 0.2 ? place.jumpTo(piece, now, 1 + pick(next, piece.rows)) : place.forward(piece, now);
            if (then !== now) { been.push(then); }
          }
          // more jumps than are remembered would not come back; thirty tries hold about six
          let now = been.at(-1);
          for (const before of been.slice(0, -1).reverse()) {
            now = place.back(piece, now);
            if (at(now) !== at(before)) { faults.push(`${seed}: ${at(now)}, not ${at(before)}`); break; }
          }
        }
        return faults;
        """));

    [Theory]
    [InlineData("null", "0.0")]
    [InlineData("'{'", "0.0")]
    [InlineData("'[]'", "0.0")]
    [InlineData("'{\"pattern\":\"other\",\"version\":1,\"woven\":1,\"step\":0}'", "0.0")]
    [InlineData("'{\"pattern\":\"p\",\"version\":2,\"woven\":1,\"step\":0}'", "0.0")]
    [InlineData("'{\"pattern\":\"p\",\"version\":1,\"woven\":1,\"step\":1}'", "1.1")]
    [InlineData("'{\"pattern\":\"p\",\"version\":1,\"woven\":-4,\"step\":1}'", "0.0")]
    [InlineData("'{\"pattern\":\"p\",\"version\":1,\"woven\":1e9,\"step\":3}'", "end")]
    public async Task Whatever_was_kept_is_read_as_a_place_of_the_piece(string kept, string expected) => Assert.Equal(expected, await page.RunAsync<string>(Pieces + $$"""
        const piece = made(5);
        const read = place.read(piece, {{kept}});
        return read.woven === piece.rows ? 'end' : at(read);
        """));

    [Fact]
    public async Task Brackets_in_brackets_are_written_out_and_say_how_far_the_needle_is() => Assert.Equal(
        ["o1", "o2 1 of 2 times", "u1 1 of 2 times, inside 1 of 2", "o1 1 of 2 times, inside 1 of 2", "u1 1 of 2 times, inside 2 of 2", "o1 1 of 2 times, inside 2 of 2", "u12 1 of 2 times"],
        await page.RunAsync<string[]>(Pieces + """
            const piece = new Piece({ ends: 40, rows: 1, bands: [{ each: 1, times: 1, readings: [0], notes: [0] }], readings: ['lo1[o2[u1o1]2u12]2u3'], stitches: [], words });
            const runs = piece.reading(1).runs;
            if (runs.length !== 14 || runs.at(-1).passed !== 37) { return [`${runs.length} runs, ${runs.at(-1).passed} ends passed`]; }
            return runs.slice(0, 7).map(run => `${run.over ? 'o' : 'u'}${run.count} ${piece.bracketText(run.brackets)}`.trim());
            """));

    [Fact]
    public async Task A_whole_row_is_written_as_the_pages_write_it() => Assert.Equal(
        "under 1, [over 1, (under 2, over 1) × 2, under 2] × 3",
        await page.RunAsync<string>(Pieces + """
            const piece = new Piece({ ends: 40, rows: 1, bands: [{ each: 1, times: 1, readings: [0], notes: [0] }], readings: ['ru1[o1[u2o1]2u2]3'], stitches: [], words });
            return piece.reading(1).items.map(item => piece.itemText(item)).join(', ');
            """));

    // what is read off the cloth is worked out from the cells, from whichever side
    [Fact]
    public async Task A_lost_row_is_among_those_that_begin_so_and_every_other_one_of_them_begins_so_too() => Assert.Empty(await page.RunAsync<string[]>(Pieces + """
        const { candidates, nextRuns, belowTells } = await import('/scripts/weave/lost.js');
        const cloth = (piece, number, fromLeft) => {
          const cells = fromLeft ? piece.cells(number) : [...piece.cells(number)].reverse();
          const runs = [];
          for (const over of cells) { if (runs.length > 0 && runs.at(-1).over === over) { runs.at(-1).count++; } else { runs.push({ over, count: 1 }); } }
          return runs;
        };
        const text = runs => runs.map(run => `${run.over ? 'o' : 'u'}${run.count}`).join(' ');
        const begins = (piece, number, fromLeft, seen) => text(cloth(piece, number, fromLeft).slice(0, seen.length)) === text(seen);
        const faults = [];
        let narrowed = 0;
        for (let seed = 1; seed <= 300; seed++) {
          const piece = made(seed), next = random(seed);
          const fromLeft = next() < 0.5, row = 2 + pick(next, piece.rows - 1);
          const seen = cloth(piece, row, fromLeft).slice(0, pick(next, 6)), below = cloth(piece, row - 1, fromLeft).slice(0, 1 + pick(next, 6));
          const alone = candidates(piece, { fromLeft, row: seen, below: [] }), both = candidates(piece, { fromLeft, row: seen, below });
          const all = Array.from({ length: piece.rows }, (_, i) => i + 1);
          if (String(alone) !== String(all.filter(number => begins(piece, number, fromLeft, seen)))) { faults.push(`${seed}: ${alone}`); }
          if (String(both) !== String(alone.filter(number => number > 1 && begins(piece, number - 1, fromLeft, below)))) { faults.push(`${seed}: with the row below ${both}`); }
          if (!both.includes(row)) { faults.push(`${seed}: row ${row} is lost`); }
          const offered = nextRuns(piece, { fromLeft, row: seen, below: [], atBelow: false }, alone);
          const possible = [...new Set(alone.map(number => cloth(piece, number, fromLeft)[seen.length]).filter(Boolean).map(run => text([run])))];
          if (offered.map(run => text([run])).sort().join() !== possible.sort().join()) { faults.push(`${seed}: offers ${text(offered)}`); }
          if (!belowTells(piece, alone) && both.length < alone.length) { faults.push(`${seed}: the row below tells`); }
          narrowed += both.length < alone.length ? 1 : 0;
        }
        return narrowed > 30 ? faults : [`only ${narrowed} narrowed`];
        """));

    [Fact]
    public async Task Going_on_after_a_row_is_a_jump_that_is_undone() => Assert.Empty(await page.RunAsync<string[]>(Pieces + """
        const faults = [];
        for (let seed = 1; seed <= 100; seed++) {
          const piece = made(seed), next = random(seed);
          const start = place.jumpTo(piece, place.startOf(piece), 1 + pick(next, piece.rows)), row = 1 + pick(next, piece.rows);
          const gone = place.goOnAfter(start, row);
          if (at(gone) !== `${row}.0` || at(place.back(piece, gone)) !== at(start)) { faults.push(`${seed}: ${at(gone)}, back to ${at(place.back(piece, gone))}`); }
        }
        return faults;
        """));

    [Fact]
    public async Task Cells_and_marker_are_never_mirrored() => Assert.Equal("..x.xxx....... 0-2 .......xxx.x.. 12-14", await page.RunAsync<string>("""
        const { Piece } = await import('/scripts/weave/piece.js');
        const { columnsOf } = await import('/scripts/weave/strip.js');
        const piece = new Piece({ ends: 14, rows: 2, bands: [{ each: 2, times: 1, readings: [0, 1], notes: [0, 0] }], readings: ['lu2o1u1o3u7', 'ru2o1u1o3u7'], stitches: [], words: { language: 'en' } });
        const text = row => piece.cells(row).map(over => over ? 'x' : '.').join('');
        const first = row => { const { from, to } = columnsOf(piece.reading(row), piece.reading(row).runs[0], 14); return `${from}-${to}`; };
        return [text(1), first(1), text(2), first(2)].join(' ');
        """));

    // four rows; in the newer version one more stands after row 2, and row 4 (now 5) reads otherwise
    [Theory]
    [InlineData(0, 0, "row 1 run 0, passed 0, to come 2")]
    [InlineData(1, 2, "row 2 run 2, passed 0, to come 2")]
    [InlineData(2, 0, "row 3 run 0, passed 0, to come 2")]
    [InlineData(2, 1, "row 3 run 0, passed 0, to come 2, torn")]
    [InlineData(3, 0, "row 5 run 0, passed 1, to come 1, weft left")]
    [InlineData(3, 1, "row 5 run 0, passed 1, to come 1, weft left, torn")]
    [InlineData(4, 0, "row 6 run 0, passed 2, to come 0, done")]
    public async Task A_place_of_an_earlier_version_is_looked_up_in_the_moves(int woven, int run, string expected) => Assert.Equal(expected, await page.RunAsync<string>($$"""
        const { lookUp } = await import('/scripts/weave/moving.js');
        const moves = { rows: 5, shifts: [[0, 0], [3, 1]], sides: '===l=', changes: [[0, 3, 3, 0], [4, 5, 4, 1]], kinds: [['', 'new'], ['old', 'new']] };
        const found = lookUp(moves, { woven: {{woven}}, run: {{run}} });
        return `row ${found.row} run ${found.run}, passed ${found.passed.length}, to come ${found.toCome.length}${found.weftAt && `, weft ${found.weftAt}`}${found.isTorn ? ', torn' : ''}${found.isDone ? ', done' : ''}`;
        """));

    [Fact]
    public async Task Changes_that_read_alike_stand_together() => Assert.Equal(
        "Rows 1, 2, 3, 4, 5, 6, 7, 8 and 2 more: a > b | Row 11 · new:  > c | Row 12 · gone: d > ",
        await page.RunAsync<string>("""
            const { listOf } = await import('/scripts/weave/moving.js');
            const words = { row: 'Row {rows}', rows: 'Rows {rows}', more: '{rows} and {more} more', isNew: 'new', isGone: 'gone' };
            const changes = [...Array(10)].map((_, i) => [i + 20, i + 1, 0, 0]).concat([[0, 11, 0, 1], [12, 0, 0, 2]]);
            return listOf(changes, [['a', 'b'], ['', 'c'], ['d', '']], words, String).map(([title, before, now]) => `${title}: ${before} > ${now}`).join(' | ');
            """));
}
