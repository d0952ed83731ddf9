// The rows of the chart around the needle: the row being woven in the window of a sheet of paper, the last two woven below it.
// Left is always the weaver's left.

const GAP = 0.09;
const LETTER = 7.2;
const BELOW = 16;
const NEEDLE = 16;
const LARGEST = 30;
const SMALLEST = 18;
const WOVEN_ROWS = 2;

const box = (x, y, width, height) => `M${x.toFixed(1)} ${y.toFixed(1)}h${width.toFixed(1)}v${height.toFixed(1)}h${(-width).toFixed(1)}z`;

/** Which ends are shown when not all fit: those around the needle. */
export function windowOf(ends, fit, from, to) {
  if (ends <= fit) {
    return { first: 0, count: ends };
  }
  const first = Math.round((from + to) / 2 - fit / 2);
  return { first: Math.min(Math.max(first, 0), ends - fit), count: fit };
}

/** The columns, from the left, of a run that the needle meets after passing so many ends. */
export function columnsOf(reading, run, ends) {
  const from = reading.fromLeft ? run.passed : ends - run.passed - run.count;
  return { from, to: from + run.count };
}

function rowPaths(cells, view, x0, y, cell) {
  let over = '', under = '';
  for (let i = 0; i < view.count; i++) {
    const x = x0 + i * cell;
    if (cells[view.first + i]) {
      over += box(x + cell * GAP / 2, y + cell * GAP / 2, cell * (1 - GAP), cell * (1 - GAP));
    } else {
      under += `M${(x + cell / 2).toFixed(1)} ${(y + cell * GAP / 2).toFixed(1)}v${(cell * (1 - GAP)).toFixed(1)}`;
    }
  }
  return `<path class="over" d="${over}"/><path class="under" d="${under}" stroke-width="${(cell * 0.12).toFixed(1)}"/>`;
}

/** F for a floating end, every fifth number, and 1; what would touch another is left out, the floating ends last of all. Gives [name, place]. */
export function endLabels(piece, view, cell) {
  const { ends, floating } = piece.data;
  const wanted = [];
  for (let i = 0; i < view.count; i++) {
    const column = view.first + i, number = column - floating + 1;
    const isFloating = column < floating || column >= ends - floating;
    const name = isFloating ? 'F' : number % 5 === 0 || number === 1 ? piece.number(number) : '';
    if (name) { wanted.push({ name, at: (i + 0.5) * cell, half: name.length * LETTER / 2 + 1, rank: isFloating ? 0 : number % 10 === 0 ? 1 : number === 1 ? 2 : 3 }); }
  }
  const placed = [];
  for (const label of wanted.sort((a, b) => a.rank - b.rank)) {
    if (placed.every(other => Math.abs(other.at - label.at) >= other.half + label.half)) { placed.push(label); }
  }
  return placed;
}

// A needle above the row, its eye where the weft comes from, its point where the marked ends are left.
function needle(fromLeft, left, right, mark, y) {
  const tip = fromLeft ? mark.right : mark.left, tail = fromLeft ? left : right, back = fromLeft ? -1 : 1;
  return `<path class="needle" d="M${tail.toFixed(1)} ${y}H${(tip + back * 6).toFixed(1)}"/>`
    + `<path class="point" d="M${tip.toFixed(1)} ${y}l${back * 12} -5v10z"/>`;
}

/** Draws the rows around the needle into an svg element of so many pixels. `row` is the row being woven, 0 for none; `mark` the columns under the needle. */
export function drawStrip(svg, piece, { woven, row, mark, width, height }) {
  const { ends } = piece.data;
  const beside = piece.number(piece.rows).length * LETTER + 12, margin = 12;
  const room = width - beside - margin;
  const byHeight = Math.min(LARGEST, (height - NEEDLE - BELOW - 6) / (WOVEN_ROWS + 1));
  const cell = Math.max(8, Math.floor(Math.min(byHeight, Math.max(SMALLEST, room / ends))));
  const view = windowOf(ends, Math.max(1, Math.floor(room / cell)), mark.from, mark.to);
  const x0 = beside + Math.max(0, (room - view.count * cell) / 2);
  const x1 = x0 + view.count * cell;
  const y0 = height - BELOW - (WOVEN_ROWS + 1) * cell - 2, foot = height - BELOW;
  const at = number => y0 + ((row || woven + 1) - number) * cell;
  const rows = [];
  for (let number = Math.max(1, woven - WOVEN_ROWS + 1); number <= (row || woven); number++) {
    // where rows are low, only the one being woven has room for its number
    const name = number === row || cell >= 14 ? `<text x="${(x0 - 7).toFixed(1)}" y="${(at(number) + cell / 2 + 4).toFixed(1)}" text-anchor="end">${piece.number(number)}</text>` : '';
    rows.push(`<g class="${number === row ? 'now' : 'woven'}">${rowPaths(piece.cells(number), view, x0, at(number), cell)}${name}</g>`);
  }
  const left = Math.max(x0, x0 + (mark.from - view.first) * cell), right = Math.min(x1, x0 + (mark.to - view.first) * cell);
  const opening = `M${x0 - 3} ${y0 - 2}V${foot}H${x1 + 3}V${y0 - 2}z`;
  const labels = endLabels(piece, view, cell).map(({ name, at: x }) => `<text x="${(x0 + x).toFixed(1)}" y="${foot + 12}" text-anchor="middle">${name}</text>`);
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.innerHTML = `<rect class="ground" x="${x0 - 3}" y="${y0 - 2}" width="${x1 - x0 + 6}" height="${foot - y0 + 2}"/>`
    + `<path class="sheet" fill-rule="evenodd" d="M0 0H${width}V${height}H0z${opening}"/><path class="opening" d="${opening}"/>`
    + rows.join('')
    + labels.join('')
    + (row ? `<rect class="mark" x="${left.toFixed(1)}" y="${y0}" width="${(right - left).toFixed(1)}" height="${cell}"/>` + needle(piece.reading(row).fromLeft, x0, x1, { left, right }, y0 - NEEDLE / 2) : '');
}
