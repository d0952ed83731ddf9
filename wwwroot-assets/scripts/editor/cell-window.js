// Which cells stand in the page for assistive technology: some around the cursor, as far as the motif goes.

const ROWS = 5;
const ENDS = 9;

/** A box of at most so many rows and ends that holds the cursor, near its middle where the motif allows. */
export function windowAround({ row, end }, { rows, ends }) {
  const firstRow = first(row, rows, ROWS);
  const firstEnd = first(end, ends, ENDS);
  return { row: firstRow, end: firstEnd, lastRow: Math.min(rows, firstRow + ROWS) - 1, lastEnd: Math.min(ends, firstEnd + ENDS) - 1 };
}

export function cellWords({ row, end }, over) {
  return `row ${row + 1}, end ${end + 1}, ${over ? 'over' : 'under'}`;
}

function first(at, count, most) {
  return Math.max(0, Math.min(count - most, at - (most >> 1)));
}
