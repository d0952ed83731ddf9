// Where the weaver is. A place is { pattern, version, woven, step, byRows, jumps }: so many rows are woven, and so many steps are done
// since. The steps after a row are the edge stitches worked there, one each, then the runs of the next row, one each. `jumps` remembers
// where a jump came from, so that it too can be undone; `told` is the newest version that the
// weaver was asked about. What is kept has `run` besides: the runs of the next row that are woven.
//
// The browser keeps it in localStorage under "patternshop.weave.<pattern>.<version>", as JSON; a sample's version is 0.

const MOST_JUMPS = 20;

export const keyOf = (pattern, version) => `patternshop.weave.${pattern}.${version}`;

export function startOf(piece) {
  return { pattern: piece.data.pattern, version: piece.data.version, woven: 0, step: 0, byRows: false, jumps: [], told: 0 };
}

const runsAfter = (piece, woven) => woven < piece.rows ? piece.reading(woven + 1).runs.length : 0;

/** The last step after so many rows: the last run of the next row, or, at the end, past the last stitch. */
function lastStep(piece, woven) {
  const stitches = piece.stitches(woven).length;
  return woven < piece.rows ? stitches + runsAfter(piece, woven) - 1 : stitches;
}

export function isDone(piece, place) {
  return place.woven === piece.rows && place.step >= piece.stitches(place.woven).length;
}

/** How many runs of the next row are woven. */
export const runsWoven = (piece, place) => Math.max(0, place.step - piece.stitches(place.woven).length);

/** What is to be done at a place: an edge stitch, a run of a row, or nothing more. */
export function deedAt(piece, place) {
  const stitches = piece.stitches(place.woven);
  if (place.step < stitches.length) {
    return { kind: 'stitch', stitch: stitches[place.step] };
  }
  return place.woven === piece.rows ? { kind: 'done' } : { kind: 'run', row: place.woven + 1, run: place.step - stitches.length };
}

export function forward(piece, place) {
  if (isDone(piece, place)) {
    return place;
  }
  const inStitches = place.step < piece.stitches(place.woven).length;
  const stays = place.step < lastStep(piece, place.woven) && (inStitches || !place.byRows);
  return stays ? { ...place, step: place.step + 1 } : { ...place, woven: place.woven + 1, step: 0 };
}

/** Undoes a step, or the jump that led here. */
export function back(piece, place) {
  const jump = place.jumps.at(-1);
  if (jump && jump.to.woven === place.woven && jump.to.step === place.step) {
    return { ...place, ...jump.from, jumps: place.jumps.slice(0, -1) };
  }
  const stitches = piece.stitches(place.woven).length;
  if (place.step > 0) {
    return { ...place, step: place.byRows && place.step > stitches ? stitches : place.step - 1 };
  }
  if (place.woven === 0) {
    return place;
  }
  const woven = place.woven - 1;
  return { ...place, woven, step: place.byRows ? piece.stitches(woven).length : lastStep(piece, woven) };
}

function jump(place, to) {
  const from = { woven: place.woven, step: place.step };
  return { ...place, ...to, jumps: [...place.jumps, { from, to }].slice(-MOST_JUMPS) };
}

/** Goes to what follows a row that is woven: the stitches worked there, then the next row. */
export function goOnAfter(place, row) {
  return jump(place, { woven: row, step: 0 });
}

/** Goes to a run of a row, the first unless said otherwise; runs are counted from 0. */
export function jumpTo(piece, place, row, run = 0) {
  const woven = Math.min(Math.max(row, 1), piece.rows) - 1;
  return jump(place, { woven, step: Math.min(piece.stitches(woven).length + (place.byRows ? 0 : run), lastStep(piece, woven)) });
}

/** A place as it is kept: with the runs of the next row that are woven, which a later version may want to know. */
export const toKeep = (piece, place) => ({ ...place, run: runsWoven(piece, place) });

/** A place as it was kept, put right where it does not fit the piece. */
export function read(piece, text) {
  const start = startOf(piece);
  let kept = null;
  try { kept = JSON.parse(text); } catch { /* whatever stands there is no place */ }
  if (!kept || kept.pattern !== start.pattern || kept.version !== start.version || !Number.isInteger(kept.woven) || !Number.isInteger(kept.step)) {
    return start;
  }
  const woven = Math.min(Math.max(kept.woven, 0), piece.rows);
  const step = woven === kept.woven ? Math.min(Math.max(kept.step, 0), lastStep(piece, woven)) : 0;
  return { ...start, woven, step, byRows: kept.byRows === true, told: Number.isInteger(kept.told) ? kept.told : 0, jumps: Array.isArray(kept.jumps) ? kept.jumps.filter(jump => jump?.from && jump?.to) : [] };
}

/** Which way a key steps: 1, -1, or 0 for none. */
export function wayOf({ key, shiftKey }) {
  switch (key) {
    case ' ': return shiftKey ? -1 : 1;
    case 'Enter': case 'ArrowRight': case 'ArrowDown': case 'PageDown': return 1;
    case 'Backspace': case 'ArrowLeft': case 'ArrowUp': case 'PageUp': return -1;
    default: return 0;
  }
}
