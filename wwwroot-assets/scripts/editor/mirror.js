// Drawing with a mirror: where else a cell is marked. The mirror stands in the middle of a box. Beyond the last end comes the first
// again, as in the cloth, and so it is with rows.

export const MIRRORS = ['none', 'across', 'along', 'both', 'half'];

/** The cell and its mirror images, each once. middle is a box { row, end, lastRow, lastEnd }, size { rows, ends }. */
export function mirrored({ row, end }, mirror, middle, { rows, ends }) {
  const otherRow = modulo(middle.row + middle.lastRow - row, rows);
  const otherEnd = modulo(middle.end + middle.lastEnd - end, ends);
  const cells = [{ row, end }];
  const add = cell => cells.some(one => one.row === cell.row && one.end === cell.end) || cells.push(cell);
  if (mirror === 'across' || mirror === 'both') {
    add({ row, end: otherEnd });
  }
  if (mirror === 'along' || mirror === 'both') {
    add({ row: otherRow, end });
  }
  if (mirror === 'half' || mirror === 'both') {
    add({ row: otherRow, end: otherEnd });
  }
  return cells;
}

/** The lines to show: between which ends and rows the mirror stands, counted from 0 in halves; null for none. */
export function mirrorLines(mirror, middle) {
  const end = (middle.end + middle.lastEnd + 1) / 2;
  const row = (middle.row + middle.lastRow + 1) / 2;
  return {
    end: mirror === 'across' || mirror === 'both' || mirror === 'half' ? end : null,
    row: mirror === 'along' || mirror === 'both' || mirror === 'half' ? row : null,
  };
}

function modulo(value, by) {
  return ((value % by) + by) % by;
}
