using Xunit;

namespace PatternShop.EndToEnd;

/// <summary>Ways of drawing: shapes, mirrors, marks and what the hand makes of presses.</summary>
public sealed class DrawingScriptTests(ScriptPage page) : IClassFixture<ScriptPage>
{
    // a desk on a motif that forgets its strokes, and a hand on it
    private const string Hand = """
        const { Grid } = await editor('grid');
        const { Echo } = await editor('echo');
        const { Desk } = await editor('desk');
        const { Outbox } = await editor('outbox');
        const { Sender } = await editor('sender');
        const { Hand } = await editor('hand');
        const handOn = (motif, ways = {}, piece = null) => {
          const sent = [];
          const sender = new Sender(new Outbox(storage(), 'p', 'c'), entry => { sent.push(entry); }, () => { });
          sender.connected = true;
          const desk = new Desk(new Echo(1, motif), sender, { cell() { }, all() { }, resized() { } });
          const told = [];
          const hand = new Hand(desk, { way: 'free', mark: 'opposite', mirror: 'none', ...ways }, () => piece, {
            chosen: () => { }, corner: () => told.push('corner'), moved: (box, by) => told.push(`moved ${by.rows},${by.ends}`),
          });
          return { desk, hand, sender, told };
        };
        const text = grid => Array.from({ length: grid.rows }, (_, row) => Array.from({ length: grid.ends }, (_, end) => grid.get(row, end) ? 'x' : '.').join('')).join('/');
        """;

    [Fact]
    public async Task A_mark_is_over_under_or_the_opposite_of_where_it_began() => Assert.Equal("false true | true true | false false", await page.RunAsync<string>("""
        const { MARKS, overFor } = await editor('marking');
        return MARKS.map(mark => [true, false].map(was => overFor(mark, was)).join(' ')).join(' | ');
        """));

    [Fact]
    public async Task Mirror_images_are_each_others_images_and_lie_in_the_motif() => Assert.Empty(await page.RunAsync<string[]>("""
        const { MIRRORS, mirrored } = await editor('mirror');
        const next = random(11), faults = [];
        const most = { none: 1, across: 2, along: 2, both: 4, half: 2 };
        const key = cells => cells.map(({ row, end }) => `${row},${end}`).sort().join(' ');
        for (let time = 0; time < 4000; time++) {
          const pick = count => Math.floor(next() * count);
          const size = { rows: 1 + pick(12), ends: 1 + pick(12) };
          const [a, b, c, d] = [pick(size.rows), pick(size.rows), pick(size.ends), pick(size.ends)];
          const middle = { row: Math.min(a, b), lastRow: Math.max(a, b), end: Math.min(c, d), lastEnd: Math.max(c, d) };
          const mirror = MIRRORS[time % MIRRORS.length];
          const cell = { row: pick(size.rows), end: pick(size.ends) };
          const images = mirrored(cell, mirror, middle, size);
          const inside = images.every(({ row, end }) => row >= 0 && row < size.rows && end >= 0 && end < size.ends);
          const closed = images.every(image => key(mirrored(image, mirror, middle, size)) === key(images));
          const once = new Set(images.map(image => key([image]))).size === images.length;
          const keeps = (mirror !== 'across' || images.every(({ row }) => row === cell.row)) && (mirror !== 'along' || images.every(({ end }) => end === cell.end));
          if (!inside || !closed || !once || !keeps || images.length > most[mirror] || key([images[0]]) !== key([cell])) {
            faults.push(JSON.stringify({ size, middle, mirror, cell, images }));
          }
        }
        return faults;
        """));

    [Fact]
    public async Task A_mirror_on_a_chosen_box_goes_on_round_the_motif_as_the_cloth_does() => Assert.Equal("5,7,1 | 4", await page.RunAsync<string>("""
        const { mirrored, mirrorLines } = await editor('mirror');
        const size = { rows: 8, ends: 8 }, whole = { row: 0, end: 0, lastRow: 7, lastEnd: 7 }, seven = { ...whole, lastEnd: 6 };
        const other = (end, middle) => mirrored({ row: 0, end }, 'across', middle, size).at(-1).end;
        return [other(1, seven), other(7, seven), other(6, whole)].join(',') + ' | ' + mirrorLines('across', whole).end;
        """));

    [Fact]
    public async Task Boxes_and_outlines_hold_their_cells_and_nothing_outside_the_motif() => Assert.Equal("6: 0,1 0,2 1,1 1,2 2,1 2,2 | 8 without 1,1 | 2", await page.RunAsync<string>("""
        const { SHAPES } = await editor('shapes');
        const size = { rows: 4, ends: 4 };
        const box = SHAPES.box({ row: 2, end: 1 }, { row: 0, end: 2 }, size);
        const outline = SHAPES.outline({ row: 0, end: 0 }, { row: 2, end: 2 }, size);
        const outside = SHAPES.box({ row: 3, end: 2 }, { row: 9, end: 9 }, size);
        return `${box.length}: ${box.map(({ row, end }) => `${row},${end}`).join(' ')} | ${outline.length} without ${outline.some(({ row, end }) => row === 1 && end === 1) ? 'nothing' : '1,1'} | ${outside.length}`;
        """));

    [Fact]
    public async Task A_drag_two_taps_and_keys_draw_the_same_in_one_message() => Assert.Empty(await page.RunAsync<string[]>(Hand + """
        const { WAYS } = await editor('hand');
        const { MARKS } = await editor('marking');
        const { MIRRORS } = await editor('mirror');
        const { moveCursor } = await editor('cursor');
        const next = random(12), faults = [], pick = count => Math.floor(next() * count);
        for (let time = 0; time < 600; time++) {
          const size = { rows: 2 + pick(9), ends: 2 + pick(9) };
          const cells = Array.from({ length: size.rows * size.ends }, () => next() < 0.5);
          const motif = () => { const grid = new Grid(size.rows, size.ends); cells.forEach((over, at) => grid.set(Math.floor(at / size.ends), at % size.ends, over)); return grid; };
          const ways = { way: WAYS[1 + time % 4], mark: MARKS[pick(3)], mirror: MIRRORS[pick(5)] };
          const piece = next() < 0.5 ? null : motif().part({ row: 0, end: 0, lastRow: 0, lastEnd: 1 });
          const from = { row: pick(size.rows), end: pick(size.ends) }, to = { row: pick(size.rows), end: pick(size.ends) };
          if (from.row === to.row && from.end === to.end) { continue; }
          const results = ['drag', 'taps', 'keys'].map(by => {
            const { desk, hand, sender } = handOn(motif(), ways, piece);
            hand.press(from);
            if (by === 'drag') {
              hand.drag(from, to);
              hand.release();
            } else if (by === 'taps') {
              hand.release();
              hand.press(to);
              hand.release();
            } else {
              hand.release();
              for (let at = from; at.row !== to.row || at.end !== to.end;) {
                const key = at.row < to.row ? 'ArrowUp' : at.row > to.row ? 'ArrowDown' : at.end < to.end ? 'ArrowRight' : 'ArrowLeft';
                const then = moveCursor(at, key, size);
                hand.drag(at, then);
                at = then;
              }
              hand.press(to);
              hand.release();
            }
            return `${text(desk.motif)} ${sender.entries.length} ${hand.waits} ${desk.stroke}`;
          });
          if (new Set(results).size !== 1 || !results[0].endsWith(' 1 false null')) {
            faults.push(JSON.stringify({ size, ways, from, to, results }));
          }
        }
        return faults;
        """));

    [Fact]
    public async Task A_drag_begins_anew_whatever_corner_waits() => Assert.Empty(await page.RunAsync<string[]>(Hand + """
        const { WAYS } = await editor('hand');
        const { MARKS } = await editor('marking');
        const { MIRRORS } = await editor('mirror');
        const next = random(15), faults = [], pick = count => Math.floor(next() * count);
        for (let time = 0; time < 600; time++) {
          const size = { rows: 2 + pick(9), ends: 2 + pick(9) };
          const cells = Array.from({ length: size.rows * size.ends }, () => next() < 0.5);
          const motif = () => { const grid = new Grid(size.rows, size.ends); cells.forEach((over, at) => grid.set(Math.floor(at / size.ends), at % size.ends, over)); return grid; };
          const ways = { way: WAYS[1 + time % 5], mark: MARKS[pick(3)], mirror: MIRRORS[pick(5)] };
          const piece = next() < 0.5 ? null : motif().part({ row: 0, end: 0, lastRow: 0, lastEnd: 1 });
          const any = () => ({ row: pick(size.rows), end: pick(size.ends) });
          const stray = any(), from = any(), over = any(), to = any();
          if ((from.row === over.row && from.end === over.end) || (over.row === to.row && over.end === to.end)) { continue; }
          const [alone, afterTap] = [false, true].map(hasStray => {
            const { desk, hand, sender } = handOn(motif(), ways, piece);
            if (hasStray) {
              hand.press(stray);
              hand.release();
            }
            hand.press(from);
            hand.drag(from, over);
            hand.drag(over, to);
            hand.release();
            return `${text(desk.motif)} ${sender.entries.map(entry => entry.text).join()} ${JSON.stringify(hand.chosen)} ${hand.waits} ${hand.corner} ${desk.stroke}`;
          });
          if (alone !== afterTap || !afterTap.endsWith(' false null null')) {
            faults.push(JSON.stringify({ size, ways, stray, from, over, to, alone, afterTap }));
          }
        }
        return faults;
        """));

    [Fact]
    public async Task A_corner_waits_until_it_is_used_given_up_or_overtaken() => Assert.Equal(
        "1,1 | null | 2,2 | null | 0,0 | null 0 .../.../... | 1,1 again | null",
        await page.RunAsync<string>(Hand + """
            const { desk, hand, sender } = handOn(new Grid(3, 3), { way: 'box' });
            const said = [];
            const note = () => said.push(hand.corner ? `${hand.corner.row},${hand.corner.end}` : 'null');
            const tap = (row, end) => { hand.press({ row, end }); hand.release(); };
            tap(1, 1);
            note();
            hand.giveUp();
            note();
            tap(2, 2);
            note();
            hand.chooseBox({ row: 0, end: 0, lastRow: 1, lastEnd: 1 });
            note();
            tap(0, 0);
            note();
            hand.leave();
            said.push(`${hand.corner} ${sender.entries.length} ${text(desk.motif)}`);
            tap(1, 1);
            hand.press({ row: 2, end: 2 });
            hand.giveUpPress();
            said.push(`${hand.corner.row},${hand.corner.end} ${text(desk.motif) === '.../.x./...' ? 'again' : text(desk.motif)}`);
            hand.giveUpPress();
            hand.giveUp();
            note();
            return said.join(' | ');
            """));

    [Fact]
    public async Task What_acts_on_the_motif_at_once_is_done_though_a_corner_waits() => Assert.Equal(
        "xx./xx./... 1 | .../.../..x 1 | x../x../x.. 1",
        await page.RunAsync<string>(Hand + """
            const over = new Grid(1, 1);
            over.set(0, 0, true);
            const after = act => {
              const { desk, hand, sender } = handOn(new Grid(3, 3), { way: 'line' });
              hand.press({ row: 1, end: 1 });
              hand.release();
              act(hand);
              return `${text(desk.motif)} ${sender.entries.length}`;
            };
            return [
              after(hand => { hand.chooseBox({ row: 0, end: 0, lastRow: 1, lastEnd: 1 }); hand.markChosen({ row: 0, end: 0 }, 'over'); }),
              after(hand => hand.putDown({ row: 2, end: 2 }, over)),
              after(hand => hand.coverWith({ row: 0, end: 0, lastRow: 2, lastEnd: 0 }, over)),
            ].join(' | ');
            """));

    [Fact]
    public async Task What_is_given_up_was_never_drawn() => Assert.Equal("xxx/.../... | .../.../... | .../.../... 0 | false", await page.RunAsync<string>(Hand + """
        const { desk, hand, sender } = handOn(new Grid(3, 3), { way: 'line' });
        const said = [];
        hand.press({ row: 0, end: 0 });
        hand.drag({ row: 0, end: 0 }, { row: 2, end: 0 });
        hand.drag({ row: 2, end: 0 }, { row: 0, end: 2 });
        said.push(text(desk.motif));
        hand.giveUp();
        said.push(text(desk.motif));
        hand.press({ row: 1, end: 1 });
        hand.release();
        hand.giveUp();
        said.push(`${text(desk.motif)} ${sender.entries.length}`, String(hand.giveUp()));
        return said.join(' | ');
        """));

    [Fact]
    public async Task A_box_is_covered_from_its_lower_left_corner_and_a_copy_is_put_down_as_far_as_it_fits() => Assert.Equal(
        ".../.x./..x x../.x./..x | 3.3 c1:1-2:2=2.2:AQI= | .../.x./... | 3.3 p2:2-2:2=2.2:AQI=",
        await page.RunAsync<string>(Hand + """
            const piece = new Grid(2, 2);
            piece.set(0, 0, true);
            piece.set(1, 1, true);
            const cover = handOn(new Grid(3, 3), { way: 'cover', mirror: 'both' }, piece);
            cover.hand.press({ row: 2, end: 2 });
            cover.hand.drag({ row: 2, end: 2 }, { row: 1, end: 1 });
            cover.hand.release();
            const full = new Grid(3, 3);
            full.set(1, 1, true);
            full.set(2, 2, false);
            const put = handOn(full);
            put.hand.putDown({ row: 2, end: 2 }, piece.part({ row: 0, end: 1, lastRow: 1, lastEnd: 1 }));
            const whole = handOn(new Grid(3, 3));
            whole.hand.putDown({ row: 2, end: 2 }, piece);
            const diagonal = new Grid(3, 3);
            [0, 1, 2].forEach(at => diagonal.set(at, at, true));
            return `${text(cover.desk.motif)} ${text(diagonal)} | ${cover.sender.entries[0].text} | ${text(put.desk.motif)} | ${whole.sender.entries[0].text}`;
            """));

    [Fact]
    public async Task A_cover_is_read_again_and_takes_less_than_a_kilobyte_on_200_by_200() => Assert.Equal("same 40000 true | null null null", await page.RunAsync<string>("""
        const { Grid } = await editor('grid');
        const { Stroke, readStroke, writeStroke } = await editor('stroke');
        const next = random(13);
        const piece = new Grid(10, 23);
        for (let row = 0; row < 10; row++) { for (let end = 0; end < 23; end++) { piece.set(row, end, next() < 0.5); } }
        const stroke = Stroke.covering({ rows: 200, ends: 200 }, { row: 0, end: 0, lastRow: 199, lastEnd: 199 }, piece);
        const [written, ...more] = writeStroke(stroke);
        const read = readStroke(written);
        const same = more.length === 0 && JSON.stringify([...read]) === JSON.stringify([...stroke]);
        const large = new Grid(200, 200);
        const parts = writeStroke(Stroke.covering({ rows: 200, ends: 200 }, { row: 3, end: 0, lastRow: 199, lastEnd: 199 }, large), 3000);
        const again = new Grid(200, 200), once = new Grid(200, 200);
        parts.map(part => readStroke(part)).forEach(part => [...part].forEach(({ row, end }) => again.set(row, end, true)));
        for (let row = 3; row < 200; row++) { for (let end = 0; end < 200; end++) { once.set(row, end, true); } }
        const kept = [...again.differing(once)].length === 0;
        return `${same ? 'same' : 'other'} ${read.size} ${written.length < 1000 && kept} | ${['3.3 c1:1-3:3=2.2:AQI=', '3.3 c1:1=2.2:AQI=', '3.3 c2:2-1:1=2.2:AQI='].map(one => String(readStroke(one))).join(' ')}`;
        """));

    [Fact]
    public async Task What_is_chosen_is_carried_within_the_motif() => Assert.Equal("moved 1,-1 | 2,0,3,1 | corner 0,0,0,0", await page.RunAsync<string>(Hand + """
        const { hand, told } = handOn(new Grid(4, 4), { way: 'choose' });
        const box = () => Object.values({ ...hand.chosen }).join(',');
        hand.press({ row: 1, end: 1 });
        hand.drag({ row: 1, end: 1 }, { row: 2, end: 2 });
        hand.release();
        hand.press({ row: 2, end: 1 });
        hand.drag({ row: 2, end: 1 }, { row: 3, end: -4 });
        const carried = box();
        hand.release();
        hand.press({ row: 0, end: 0 });
        hand.release();
        return `${told[0]} | ${carried} | ${told[1]} ${box()}`;
        """));

    [Fact]
    public async Task Fingers_that_part_make_cells_larger_and_that_meet_smaller() => Assert.Equal("0 0 1 1 -2 0", await page.RunAsync<string>("""
        const { pinch } = await editor('pinch');
        const steps = [];
        let spread = null;
        for (const apart of [100, 110, 126, 160, 99]) {
          const result = pinch([{ x: 0, y: 0 }, { x: 0, y: apart }], spread);
          steps.push(result.steps);
          spread = result.spread;
        }
        steps.push(pinch([{ x: 0, y: 0 }], spread).steps);
        return steps.join(' ');
        """));

    [Fact]
    public async Task What_is_asked_of_the_server_names_what_is_chosen_and_that_stays_chosen() => Assert.Equal(
        """{"what":"move","row":1,"end":2,"rows":2,"ends":3,"byRows":1,"byEnds":-1} 2-3,1-3 | 3-4,2-4 | 1-2,5-7 |  | 1-2,2-4""",
        await page.RunAsync<string>("""
            const { chosenAfter, shapeRequest } = await editor('shape-panel');
            const box = { row: 1, end: 2, lastRow: 2, lastEnd: 4 };
            const text = after => after && `${after.row}-${after.lastRow},${after.end}-${after.lastEnd}`;
            const by = { rows: 1, ends: -1 };
            return `${JSON.stringify(shapeRequest('move', box, by))} ${['move', 'rowsAbove', 'endsRight', 'removeRows', 'swap'].map(what => text(chosenAfter(what, box, by))).join(' | ')}`;
            """));
}
