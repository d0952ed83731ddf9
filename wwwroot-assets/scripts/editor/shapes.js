// The cells of a line, a box and an outline between two corners, and those outside the motif left out.

import { boxOf, within } from './box.js';
import { cellsBetween } from './line.js';

export const SHAPES = {
  line: (from, to, size) => cellsBetween(from, to).filter(({ row, end }) => row >= 0 && row < size.rows && end >= 0 && end < size.ends),
  box: (from, to, size) => cellsOf(boxOf(from, to), size, () => true),
  outline: (from, to, size) => {
    const box = boxOf(from, to);
    return cellsOf(box, size, (row, end) => row === box.row || row === box.lastRow || end === box.end || end === box.lastEnd);
  },
};

function cellsOf(box, size, holds) {
  const part = within(box, size);
  const cells = [];
  for (let row = part?.row ?? 0; row <= (part?.lastRow ?? -1); row++) {
    for (let end = part.end; end <= part.lastEnd; end++) {
      if (holds(row, end)) {
        cells.push({ row, end });
      }
    }
  }
  return cells;
}
