// Where cells lie on a chart, in device pixels so that every edge is crisp. The first row is at the bottom; numbers stand
// left of the rows and below the ends, and stay in sight while the cells scroll.

/** A cell, in CSS pixels, that lets so many ends fit a width, neither smaller than can be hit nor larger than helps. */
export function cellThatFits(ends, width, least, most) {
  return Math.max(least, Math.min(most, Math.floor(width / ends)));
}

export class Geometry {
  /** size { rows, ends }; cell and gutters { left, below, right } in CSS pixels; ratio is device pixels to one of them. */
  constructor(size, cell, gutters, ratio) {
    this.rows = size.rows;
    this.ends = size.ends;
    this.ratio = ratio;
    this.cell = Math.max(2, Math.round(cell * ratio));
    this.left = Math.round(gutters.left * ratio);
    this.below = Math.round(gutters.below * ratio);
    this.top = Math.max(1, Math.round(ratio));
    this.right = Math.round((gutters.right ?? 1) * ratio);
  }

  /** Size of everything in CSS pixels. */
  get width() {
    return (this.left + this.ends * this.cell + this.right) / this.ratio;
  }

  get height() {
    return (this.top + this.rows * this.cell + this.below) / this.ratio;
  }

  /** The left edge of an end and the top edge of a row, in device pixels, before scrolling. */
  x(end) {
    return this.left + end * this.cell;
  }

  y(row) {
    return this.top + (this.rows - 1 - row) * this.cell;
  }

  /** The cell at a place in CSS pixels, before scrolling. It may lie outside the chart, so that a line can leave and come back. */
  cellAt(x, y) {
    return {
      row: this.rows - 1 - Math.floor((y * this.ratio - this.top) / this.cell),
      end: Math.floor((x * this.ratio - this.left) / this.cell),
    };
  }

  /** The cells that a window of the chart shows, last ones counted; scroll and view in device pixels. */
  visible(scroll, view) {
    const firstEnd = Math.floor(scroll.x / this.cell);
    const lastEnd = Math.floor((scroll.x + view.width - this.left - this.right) / this.cell);
    const topRow = this.rows - 1 - Math.floor((scroll.y - this.top) / this.cell);
    const lowRow = this.rows - 1 - Math.floor((scroll.y + view.height - this.below - this.top) / this.cell);
    return {
      firstEnd: Math.max(0, firstEnd),
      lastEnd: Math.min(this.ends - 1, lastEnd),
      firstRow: Math.max(0, lowRow),
      lastRow: Math.min(this.rows - 1, topRow),
    };
  }

  /** How far to scroll, in CSS pixels, so that a cell is in sight; view in CSS pixels. */
  scrollTo({ row, end }, scroll, view) {
    const margin = this.cell;
    const left = (this.x(end) - this.left - margin) / this.ratio;
    const right = (this.x(end + 1) + margin + this.right) / this.ratio - view.width;
    const top = (this.y(row) - margin) / this.ratio;
    const low = (this.y(row) + this.cell + margin + this.below) / this.ratio - view.height;
    return {
      x: Math.max(0, Math.max(right, Math.min(left, scroll.x))),
      y: Math.max(0, Math.max(low, Math.min(top, scroll.y))),
    };
  }
}
