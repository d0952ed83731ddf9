// The cells of a straight line between two cells, both counted, without a gap: neighbours touch at a side or a corner.
// A pointer is sampled now and then; this fills in what it passed between two samples.

export function cellsBetween(from, to) {
  const across = Math.abs(to.end - from.end);
  const up = Math.abs(to.row - from.row);
  const endStep = Math.sign(to.end - from.end);
  const rowStep = Math.sign(to.row - from.row);
  const cells = [{ row: from.row, end: from.end }];
  let { row, end } = from;
  let left = across - up;
  while (row !== to.row || end !== to.end) {
    const twice = 2 * left;
    if (twice > -up) {
      left -= up;
      end += endStep;
    }
    if (twice < across) {
      left += across;
      row += rowStep;
    }
    cells.push({ row, end });
  }
  return cells;
}
