// The rows of the chart around the needle: the row being woven in the window of a sheet of paper, the last two woven below it.
// Left is always the weaver's left.

const GAP = 0.09;
const LABEL = 34;
const BELOW = 15;
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

// Every fifth end, and F for a floating one.
function endLabels(piece, view, x0, y, cell) {
  const { ends, floating } = piece.data;
  let text = '';
  for (let i = 0; i < view.count; i++) {
    const column = view.first + i, number = column - floating + 1;
    const name = column < floating || column >= ends - floating ? 'F' : number % 5 === 0 || number === 1 ? piece.number(number) : '';
    text += name && `<text x="${(x0 + (i + 0.5) * cell).toFixed(1)}" y="${y + 12}" text-anchor="middle">${name}</text>`;
  }
  return text;
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
  const byHeight = Math.min(LARGEST, (height - NEEDLE - BELOW - 6) / (WOVEN_ROWS + 1));
  const byWidth = Math.max(SMALLEST, (width - LABEL - 12) / ends);
  const cell = Math.max(8, Math.floor(Math.min(byHeight, byWidth)));
  const fit = Math.max(1, Math.floor((width - LABEL - 12) / cell));
  const view = windowOf(ends, fit, mark.from, mark.to);
  const x0 = LABEL + Math.max(0, (width - LABEL - 12 - view.count * cell) / 2);
  const x1 = x0 + view.count * cell;
  const y0 = height - BELOW - (WOVEN_ROWS + 1) * cell - 2;
  const at = number => y0 + ((row || woven + 1) - number) * cell;
  const rows = [];
  for (let number = Math.max(1, woven - WOVEN_ROWS + 1); number <= (row || woven); number++) {
    rows.push(`<g class="${number === row ? 'now' : 'woven'}">${rowPaths(piece.cells(number), view, x0, at(number), cell)}<text x="${x0 - 6}" y="${at(number) + cell / 2 + 4}" text-anchor="end">${piece.number(number)}</text></g>`);
  }
  const left = Math.max(x0, x0 + (mark.from - view.first) * cell), right = Math.min(x1, x0 + (mark.to - view.first) * cell);
  const sheet = `M0 0H${width}V${height}H0zM${x0 - 3} ${y0 - 2}V${height - BELOW}H${x1 + 3}V${y0 - 2}z`;
  svg.setAttribute('viewBox', `0 0 ${width} ${height}`);
  svg.innerHTML = `<rect class="ground" x="${x0 - 3}" y="${y0 - 2}" width="${x1 - x0 + 6}" height="${height - BELOW - y0 + 2}"/>`
    + `<path class="sheet" fill-rule="evenodd" d="${sheet}"/>`
    + rows.join('')
    + endLabels(piece, view, x0, height - BELOW, cell)
    + (row ? `<rect class="mark" x="${left.toFixed(1)}" y="${y0}" width="${(right - left).toFixed(1)}" height="${cell}"/>` + needle(piece.reading(row).fromLeft, x0, x1, { left, right }, y0 - NEEDLE / 2) : '');
}
