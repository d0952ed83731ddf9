using Microsoft.Playwright;

namespace PatternShop.EndToEnd;

/// <summary>
/// A script in the page that draws as a pointer does, stroke by stroke, and notes in the window's own storage, which outlives the
/// page, what the chart must look like then. A stroke and its note are one task of the browser: a page that goes takes both or none.
/// </summary>
internal sealed class DrawingScript(IPage page)
{
    private const string Code = """
        (() => {
          const random = seed => () => {
            seed = seed + 0x6D2B79F5 | 0;
            let t = Math.imul(seed ^ seed >>> 15, 1 | seed);
            t = t + Math.imul(t ^ t >>> 7, 61 | t) ^ t;
            return ((t ^ t >>> 14) >>> 0) / 4294967296;
          };
          const LEFT = 30, RIGHT = 2, TOP = 1;
          const canvas = () => document.querySelector('[data-motif] canvas');
          const saving = () => document.querySelector('[data-saving]')?.textContent;

          // where the middle of a cell of a chart of 10 to 99 rows is, all of it in sight
          const places = ({ rows, ends }) => {
            const box = canvas().getBoundingClientRect();
            const cell = (box.width - LEFT - RIGHT) / ends;
            return { cell, box, at: ({ row, end }) => ({ clientX: box.left + LEFT + (end + 0.5) * cell, clientY: box.top + TOP + (rows - row - 0.5) * cell }) };
          };
          const fire = (type, place, more = {}) => canvas().dispatchEvent(new PointerEvent(type, {
            ...place, pointerId: 1, pointerType: 'mouse', isPrimary: true, button: type === 'pointermove' ? -1 : 0, buttons: type === 'pointerup' ? 0 : 1, bubbles: true, ...more,
          }));
          const noted = () => JSON.parse(sessionStorage.drawing);

          // A stroke goes where the hand sees the chart, which is where it was painted last. This hand knows only where it lies now, so it waits until that has been the same for some frames.
          let frames = [];
          const lies = () => { const { left, top } = canvas()?.getBoundingClientRect() ?? {}; return `${left} ${top}`; };
          const look = () => {
            frames = [lies(), ...frames].slice(0, 3);
            requestAnimationFrame(() => setTimeout(look));
          };
          const stands = () => canvas() && frames.length === 3 && frames.every(frame => frame === lies());
          const untilItStands = async () => { while (!stands()) { await new Promise(done => setTimeout(done, 5)); } };
          look();

          window.drawing = {
            note(rows, ends) {
              sessionStorage.drawing = JSON.stringify({ rows, ends, drawn: 0, cells: Array(rows).fill('.'.repeat(ends)) });
            },

            // three cells of a row become the opposite of what they were, others each time until all had their turn
            stroke() {
              const note = noted();
              const slots = note.rows * Math.floor(note.ends / 3);
              const slot = (note.drawn++ * 37 + 11) % slots;
              const [row, end] = [slot % note.rows, 3 * Math.floor(slot / note.rows)];
              const { at } = places(note);
              fire('pointerdown', at({ row, end }));
              fire('pointermove', at({ row, end: end + 2 }));
              fire('pointerup', at({ row, end: end + 2 }));
              const line = [...note.cells[row]];
              line.fill(line[end] === 'x' ? '.' : 'x', end, end + 3);
              note.cells[row] = line.join('');
              sessionStorage.drawing = JSON.stringify(note);
            },

            // draws until the page goes: faster while there is a server, at times that a seed gives
            go(seed) {
              const next = random(seed);
              const once = () => {
                if (stands()) { this.stroke(); }
                setTimeout(once, saving()?.includes('no connection') ? 150 : 5 + 45 * next());
              };
              once();
            },

            // ends as soon as the page says that it is saved
            async strokeAndSaved(wait) {
              await new Promise(done => setTimeout(done, wait));
              await untilItStands();
              this.stroke();
              await new Promise(done => {
                const look = () => saving() === 'saved' && done();
                new MutationObserver(look).observe(document.querySelector('[data-saving]'), { childList: true, characterData: true, subtree: true });
                look();
              });
            },

            // the chart as it is seen: a cell is dark beside its middle where it is over
            seen(size) {
              const { cell, box } = places(size);
              const ratio = canvas().width / box.width;
              const { data, width } = canvas().getContext('2d').getImageData(0, 0, canvas().width, canvas().height);
              const dark = (row, end) => {
                const x = Math.round((LEFT + (end + 0.28) * cell) * ratio), y = Math.round((TOP + (size.rows - row - 0.72) * cell) * ratio);
                return data[4 * (y * width + x)] < 128;
              };
              return Array.from({ length: size.rows }, (_, row) => Array.from({ length: size.ends }, (_, end) => dark(row, end)));
            },

            // a fast stroke through a few places far apart, some outside the chart; what is wrong with what came of it
            scribble(size, next) {
              const any = (count, beyond) => Math.floor(next() * (count + 2 * beyond)) - beyond;
              const beyond = next() < 0.2 ? 4 : 0;
              const points = Array.from({ length: 2 + Math.floor(next() * 5) }, (_, at) => ({ row: any(size.rows, at && beyond), end: any(size.ends, at && beyond) }));
              const { at } = places(size);
              const before = this.seen(size);
              fire('pointerdown', at(points[0]));
              for (let from = 1; from < points.length;) {
                const samples = points.slice(from, from + 1 + Math.floor(next() * 3)).map(at);
                fire('pointermove', samples.at(-1), { coalescedEvents: samples.map(place => new PointerEvent('pointermove', { ...place, pointerId: 1, isPrimary: true, buttons: 1 })) });
                from += samples.length;
              }
              fire('pointerup', at(points.at(-1)));
              const after = this.seen(size);
              return judge(size, points, before, after).map(fault => `${fault} of ${points.map(({ row, end }) => `${row},${end}`).join(' ')}`);
            },

            async scribbles(count, size, seed) {
              await untilItStands();
              const next = random(seed), faults = [];
              for (let time = 0; time < count && faults.length < 5; time++) {
                faults.push(...this.scribble(size, next));
                if (time % 10 === 9) { await new Promise(done => setTimeout(done)); }
              }
              return faults;
            },
          };

          // for every step along a straight line from sample to sample one of the cells nearest to it is marked, unless one as near lies outside, and no cell is that lies further off
          const judge = ({ rows, ends }, points, before, after) => {
            const over = !before[points[0].row][points[0].end];
            const inside = (row, end) => row >= 0 && row < rows && end >= 0 && end < ends;
            const near = Array.from({ length: rows }, () => Array(ends).fill(false));
            const faults = [];
            points.slice(1).forEach((to, at) => {
              const from = points[at];
              const steep = Math.abs(to.row - from.row) > Math.abs(to.end - from.end);
              const steps = Math.max(1, Math.abs(to.row - from.row), Math.abs(to.end - from.end));
              for (let step = 0; step <= steps; step++) {
                const [row, end] = [from.row + (to.row - from.row) * step / steps, from.end + (to.end - from.end) * step / steps];
                const other = steep ? end : row;
                const nearest = [...new Set([Math.floor(other), Math.ceil(other)])].filter(one => Math.abs(one - other) <= 0.5 + 1e-9)
                  .map(one => steep ? [Math.round(row), one] : [one, Math.round(end)]);
                nearest.filter(cell => inside(...cell)).forEach(([r, e]) => { near[r][e] = true; });
                if (nearest.every(cell => inside(...cell)) && !nearest.some(([r, e]) => after[r][e] === over)) { faults.push(`gap at ${row},${end}`); }
              }
            });
            for (let row = 0; row < rows; row++) {
              for (let end = 0; end < ends; end++) {
                if (before[row][end] !== after[row][end] && !(near[row][end] && after[row][end] === over)) { faults.push(`marked beside it at ${row},${end}`); }
              }
            }
            return faults;
          };
        })();
        """;

    /// <summary>Every load of the page brings the script with it from now on.</summary>
    public Task BringAsync() => page.AddInitScriptAsync(Code);

    /// <summary>Begins to note what is drawn on a blank chart.</summary>
    public Task NoteAsync(int rows, int ends) => page.EvaluateAsync("size => drawing.note(size.rows, size.ends)", new { rows, ends });

    /// <summary>The chart, row 1 first, as it must be after every stroke that was finished.</summary>
    public Task<string[]> NotedAsync() => page.EvaluateAsync<string[]>("() => JSON.parse(sessionStorage.drawing).cells");

    /// <summary>Draws one stroke after another until the page goes.</summary>
    public Task GoAsync(int seed) => page.EvaluateAsync("seed => drawing.go(seed)", seed);

    /// <summary>Draws one stroke after some milliseconds; ends the moment the page says that it is saved.</summary>
    public Task StrokeAndSavedAsync(int wait) => page.EvaluateAsync("wait => drawing.strokeAndSaved(wait)", wait);

    /// <summary>Draws fast strokes in any direction; what is wrong with what is seen after each.</summary>
    public Task<string[]> ScribblesAsync(int count, int rows, int ends, int seed) =>
        page.EvaluateAsync<string[]>("({ count, rows, ends, seed }) => drawing.scribbles(count, { rows, ends }, seed)", new { count, rows, ends, seed });

    /// <summary>The chart, row 1 first, as it is seen.</summary>
    public Task<string[]> SeenAsync(int rows, int ends) =>
        page.EvaluateAsync<string[]>("size => drawing.seen(size).map(row => row.map(over => over ? 'x' : '.').join(''))", new { rows, ends });
}
