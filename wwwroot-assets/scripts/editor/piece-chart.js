// The whole piece as a chart to look at: floating selvedges, balance ends and repeated rows set apart.

import { write } from './cell-painter.js';

const ARROWS = 18;
const ROOM_FOR_LABELS = 480;

export class PieceChart {
  /** desk: whoever holds the motif. */
  constructor(map, desk) {
    this.map = map;
    this.desk = desk;
    this.bars = false;
    this.cursor = null;
    this.marks = null;
    this.bandStarts = new Set(map.bands.map(band => band.first));
  }

  get rows() {
    return this.map.rows;
  }

  get ends() {
    return this.map.ends;
  }

  isOver(row, column) {
    return this.map.isOver(row, column, this.desk.motif);
  }

  /** Where there is little room, what is said of bands is left to the order of work. */
  gutters(room) {
    this.labels = room >= ROOM_FOR_LABELS;
    const label = this.labels ? Math.max(0, ...this.map.bands.map(band => band.label.length)) : 0;
    return { left: 14 + ARROWS + 8 * String(this.map.numbers.at(-1)).length, below: 30, right: ARROWS + (label > 0 ? 12 + 6.6 * label : 0) };
  }

  rowName(row) {
    return String(this.map.numbers[row]) + (this.startsLeft(row) ? '  →' : '     ');
  }

  endName(column) {
    return this.map.isFloating(column) ? 'F' : String(column - this.map.floating + 1);
  }

  isBoldRow(row) {
    return this.map.numbers[row] % 5 === 0;
  }

  isBoldEnd(column) {
    return this.map.isFloating(column) || (column - this.map.floating + 1) % 5 === 0;
  }

  namesRow(row, cell) {
    return cell >= 13 || this.isBoldRow(row) || row === 0;
  }

  namesEnd(column, cell) {
    return cell >= 7.5 * String(this.map.patternEnds).length + 4 || this.isBoldEnd(column) || column === this.map.floating;
  }

  rowRule(row) {
    return row === 0 || row === this.rows || this.bandStarts.has(row) ? 2 : this.map.numbers[row] % 5 === 1 ? 1 : 0;
  }

  endRule(column) {
    const end = column - this.map.floating;
    if (column === 0 || column === this.ends || (this.map.floating === 1 && (end === 0 || end === this.map.patternEnds))) {
      return 2;
    }
    return end % this.map.motifEnds === 0 ? 1 : 0;
  }

  startsLeft(row) {
    return this.map.readings[this.map.readingOf[row]][3] === 0;
  }

  /** Arrows of rows that start at the right, what is said of each band, and the balance ends. */
  paintSide(picture, seen) {
    const { geometry, scroll, view } = picture;
    const right = view.width - geometry.right;
    for (let row = seen.firstRow; row <= seen.lastRow; row++) {
      const middle = geometry.y(row) - scroll.y + geometry.cell / 2;
      if (!this.startsLeft(row) && this.namesRow(row, geometry.cell / geometry.ratio) && middle > 0 && middle < view.height - geometry.below) {
        write(picture, '←', right + 4 * geometry.ratio, middle, 'left', this.isBoldRow(row));
      }
    }
    if (this.labels) {
      this.map.bands.forEach(band => this.paintBand(picture, band, right));
    }
    this.paintBalance(picture);
  }

  paintBand(picture, band, right) {
    const { context, geometry, scroll, view, theme } = picture;
    const top = Math.max(2, geometry.y(band.first + band.rows - 1) - scroll.y + 2);
    const low = Math.min(view.height - geometry.below, geometry.y(band.first) - scroll.y + geometry.cell) - 2;
    if (!band.label || low - top < geometry.cell / 2) {
      return;
    }
    const x = right + ARROWS * geometry.ratio;
    const thick = Math.max(1, Math.round(1.5 * geometry.ratio));
    context.fillStyle = theme.soft;
    context.fillRect(x, top, thick, low - top);
    write(picture, band.label, x + 6 * geometry.ratio, (top + low) / 2, 'left', true);
  }

  paintBalance(picture) {
    const { context, geometry, scroll, view, theme } = picture;
    if (this.map.balance === 0) {
      return;
    }
    const last = this.map.floating + this.map.patternEnds;
    const left = Math.max(geometry.left, geometry.x(last - this.map.balance) - scroll.x + 2);
    const right = Math.min(view.width - geometry.right, geometry.x(last) - scroll.x - 2);
    context.fillStyle = theme.soft;
    context.fillRect(left, view.height - geometry.below + 20 * geometry.ratio, Math.max(0, right - left), Math.max(1, Math.round(2 * geometry.ratio)));
  }
}
