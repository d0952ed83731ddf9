// Boxes of cells: { row, end, lastRow, lastEnd }, all from 0, last ones counted.

export function boxOf(one, other = one) {
  return {
    row: Math.min(one.row, other.row),
    end: Math.min(one.end, other.end),
    lastRow: Math.max(one.row, other.row),
    lastEnd: Math.max(one.end, other.end),
  };
}

export function wholeBox({ rows, ends }) {
  return { row: 0, end: 0, lastRow: rows - 1, lastEnd: ends - 1 };
}

export function rowsOf(box) {
  return box.lastRow - box.row + 1;
}

export function endsOf(box) {
  return box.lastEnd - box.end + 1;
}

export function isWhole(box, { rows, ends }) {
  return rowsOf(box) === rows && endsOf(box) === ends;
}

export function isIn(box, { row, end }) {
  return row >= box.row && row <= box.lastRow && end >= box.end && end <= box.lastEnd;
}

/** The part of a box that lies in a motif; null when none does. */
export function within(box, { rows, ends }) {
  const part = { row: Math.max(0, box.row), end: Math.max(0, box.end), lastRow: Math.min(rows - 1, box.lastRow), lastEnd: Math.min(ends - 1, box.lastEnd) };
  return part.row <= part.lastRow && part.end <= part.lastEnd ? part : null;
}

/** By how much a box can really move and stay in the motif. */
export function stepWithin(box, { rows, ends }, size) {
  return {
    rows: Math.max(-box.row, Math.min(size.rows - 1 - box.lastRow, rows)),
    ends: Math.max(-box.end, Math.min(size.ends - 1 - box.lastEnd, ends)),
  };
}

export function moved(box, { rows, ends }) {
  return { row: box.row + rows, end: box.end + ends, lastRow: box.lastRow + rows, lastEnd: box.lastEnd + ends };
}

/** A box in words: "rows 2–5, end 3". */
export function boxWords(box) {
  return `${range('row', box.row, box.lastRow)}, ${range('end', box.end, box.lastEnd)}`;
}

/** What is chosen, counted: "3 rows of 4 ends". */
export function countOf(box) {
  const rows = rowsOf(box);
  const ends = endsOf(box);
  return `${rows} ${rows === 1 ? 'row' : 'rows'} of ${ends} ${ends === 1 ? 'end' : 'ends'}`;
}

function range(what, first, last) {
  return first === last ? `${what} ${first + 1}` : `${what}s ${first + 1}–${last + 1}`;
}
