// Which row was woven last? The weaver says its runs, one after another, and those of the row below where that does not suffice.
// Everything is looked up among the readings that the page already has.

import { fill } from './piece.js';

const LISTED = 6;
const byId = id => document.getElementById(id);
const alike = (a, b) => a.over === b.over && a.count === b.count;

/** The runs of a reading as they are met from a side. */
const runsFrom = (reading, fromLeft) => reading.fromLeft === fromLeft ? reading.runs : reading.runs.toReversed();

/** Whether a reading begins so from a side; kept for each reading, of which there are few. */
function beginner(fromLeft, seen) {
  const known = new Map();
  return reading => {
    if (!known.has(reading)) {
      const runs = runsFrom(reading, fromLeft);
      known.set(reading, seen.length <= runs.length && seen.every((run, i) => alike(run, runs[i])));
    }
    return known.get(reading);
  };
}

/** Numbers of the rows that begin as `row`, above rows that begin as `below`, in weaving order. */
export function candidates(piece, { fromLeft, row, below }) {
  const begins = beginner(fromLeft, row), belowBegins = beginner(fromLeft, below);
  const rows = [];
  for (let number = 1; number <= piece.rows; number++) {
    if (begins(piece.reading(number)) && (below.length === 0 || (number > 1 && belowBegins(piece.reading(number - 1))))) { rows.push(number); }
  }
  return rows;
}

/** The readings that are read now: of the candidates, or of the rows below them. */
const readingsOf = (piece, rows, atBelow) => [...new Set(rows.map(number => number - (atBelow ? 1 : 0)).filter(number => number > 0).map(number => piece.reading(number)))];

/** The runs that can come next, each once, over before under, few before many. */
export function nextRuns(piece, look, rows) {
  const at = look.atBelow ? look.below.length : look.row.length;
  const next = new Map();
  for (const reading of readingsOf(piece, rows, look.atBelow)) {
    const run = runsFrom(reading, look.fromLeft)[at];
    if (run) { next.set((run.over ? 0 : 10000) + run.count, { over: run.over, count: run.count }); }
  }
  return [...next].sort(([a], [b]) => a - b).map(([, run]) => run);
}

/** Whether the rows below the candidates differ, so that the one below says more. */
export function belowTells(piece, rows) {
  const cells = reading => runsFrom(reading, true).map(run => `${run.over ? 'o' : 'u'}${run.count}`).join('');
  const readings = readingsOf(piece, rows, true);
  return new Set(readings.map(cells)).size + (rows.includes(1) ? 1 : 0) > 1;
}

/** Asks in a dialog; `take` is told the row that the weaver chooses as the one woven last. */
export function askLost(piece, woven, take) {
  const words = JSON.parse(byId('lost').dataset.words);
  let look = { fromLeft: true, row: [], below: [], atBelow: false };
  byId('lost').querySelector('[value=left]').checked = true;
  const number = value => piece.number(value);

  const button = (text, act) => {
    const made = document.createElement('button');
    made.type = 'button';
    made.textContent = text;
    made.addEventListener('click', act);
    return made;
  };
  const listed = items => items.map(item => {
    const line = document.createElement('li');
    line.append(item);
    return line;
  });
  const seen = runs => runs.map(run => piece.runText(run)).join(', ');

  function show() {
    const rows = candidates(piece, look);
    const next = rows.length > 1 ? nextRuns(piece, look, rows) : [];
    const tells = rows.length > 1 && belowTells(piece, rows);
    byId('lost-ask').textContent = look.atBelow ? words.askBelow : words.askRow;
    byId('lost-seen').textContent = [seen(look.row), seen(look.below)].filter(Boolean).join(' / ');
    byId('lost-runs').replaceChildren(...next.map(run => button(piece.runText(run), () => add(run))));
    const read = look.row.length > 0;
    byId('lost-count').textContent = !read ? '' : rows.length === 1 ? words.one : fill(words.many, { count: number(rows.length) });
    // the nearest to where the weaver was come first
    const near = rows.toSorted((a, b) => Math.abs(a - woven) - Math.abs(b - woven)).slice(0, LISTED).sort((a, b) => a - b);
    const few = read && (rows.length <= LISTED || !tells && next.length === 0);
    byId('lost-rows').replaceChildren(...listed(few ? near.map(row => button(
      fill(row < piece.rows ? words.goOn : words.last, { place: piece.placeText(row), next: number(row + 1) }),
      () => { byId('lost').close(); take(row); })) : []));
    byId('lost-more').textContent = few && rows.length > 1 && !tells ? words.alike : '';
    byId('lost-below').hidden = !read || look.atBelow || !tells;
    byId('lost-undo').hidden = !read && !look.atBelow;
  }

  function to(changed) {
    look = changed;
    show();
    byId('lost-ask').focus();
  }

  const add = run => to(look.atBelow ? { ...look, below: [...look.below, run] } : { ...look, row: [...look.row, run] });
  byId('lost-below').onclick = () => to({ ...look, atBelow: true });
  byId('lost-undo').onclick = () => to(look.below.length > 0 ? { ...look, below: look.below.slice(0, -1) } : look.atBelow ? { ...look, atBelow: false } : { ...look, row: look.row.slice(0, -1) });
  byId('lost').onchange = event => {
    look = { fromLeft: event.target.value === 'left', row: [], below: [], atBelow: false };
    show();
  };
  show();
  byId('lost').showModal();
  byId('lost-ask').focus();
}
