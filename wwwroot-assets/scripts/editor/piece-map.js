// The whole piece as the server describes it: for every printed row where its cells come from and what the floating ends
// do, for every end which end of the motif it shows. With it the piece follows each stroke at once; nothing here knows weaving.

const PLAIN_UNDER_FIRST = -1;

export class PieceMap {
  /** readings: [source, left, right] a reading, source a row of the motif from 0, -1 or -2 for plain rows; rows: index of the reading of each printed row. */
  constructor({ readings, rows, numbers, motifEnds, offset, patternEnds, floating, balance, bands }) {
    Object.assign(this, { readings, numbers, motifEnds, offset, patternEnds, floating, balance, bands });
    this.readingOf = rows;
    this.rows = rows.length;
    this.ends = patternEnds + 2 * floating;
    this.rowsOfMotif = new Map();
    rows.forEach((reading, row) => this.shows(readings[reading][0], row));
  }

  shows(source, row) {
    if (source >= 0) {
      const rows = this.rowsOfMotif.get(source);
      if (rows) {
        rows.push(row);
      } else {
        this.rowsOfMotif.set(source, [row]);
      }
    }
  }

  isFloating(column) {
    return this.floating === 1 && (column === 0 || column === this.ends - 1);
  }

  isBalance(column) {
    return !this.isFloating(column) && column - this.floating >= this.patternEnds - this.balance;
  }

  /** The end of the motif that a column shows; null for a floating one. */
  motifEnd(column) {
    return this.isFloating(column) ? null : (column - this.floating + this.offset) % this.motifEnds;
  }

  /** What the weft does at a printed row and a column, both from 0: true for over. */
  isOver(row, column, motif) {
    const [source, left, right] = this.readings[this.readingOf[row]];
    if (this.isFloating(column)) {
      return (column === 0 ? left : right) === 1;
    }
    const end = column - this.floating;
    if (source >= 0) {
      return motif.get(source, (end + this.offset) % this.motifEnds);
    }
    return (end % 2 === 0) === (source !== PLAIN_UNDER_FIRST);
  }

  /** Every place of the piece that shows a cell of the motif. */
  * placesOf(motifRow, motifEnd) {
    const first = ((motifEnd - this.offset) % this.motifEnds + this.motifEnds) % this.motifEnds;
    for (const row of this.rowsOfMotif.get(motifRow) ?? []) {
      for (let end = first; end < this.patternEnds; end += this.motifEnds) {
        yield { row, column: end + this.floating };
      }
    }
  }
}
