// The motif as a chart to draw on.

const NUMBER_ROOM = 15;

export class MotifChart {
  /** desk: whoever holds the motif. */
  constructor(desk) {
    this.desk = desk;
    this.bars = false;
    this.cursor = null;
    this.marks = null;
  }

  get motif() {
    return this.desk.motif;
  }

  get rows() {
    return this.motif.rows;
  }

  get ends() {
    return this.motif.ends;
  }

  isOver(row, end) {
    return this.motif.get(row, end);
  }

  gutters() {
    return { left: 14 + 8 * String(this.rows).length, below: 22, right: 2 };
  }

  rowName(row) {
    return String(row + 1);
  }

  endName(end) {
    return String(end + 1);
  }

  isBoldRow(row) {
    return this.cursor ? this.cursor.row === row : isFifth(row + 1);
  }

  isBoldEnd(end) {
    return this.cursor ? this.cursor.end === end : isFifth(end + 1);
  }

  namesRow(row, cell) {
    return cell >= NUMBER_ROOM || this.isBoldRow(row) || isFifth(row + 1);
  }

  namesEnd(end, cell) {
    return cell >= 7.5 * String(this.ends).length + 4 || this.isBoldEnd(end) || isFifth(end + 1);
  }

  /** How strong the rule below a row or left of an end is, from 0 to 2. */
  rowRule(row) {
    return ruleAt(row, this.rows);
  }

  endRule(end) {
    return ruleAt(end, this.ends);
  }
}

function ruleAt(place, count) {
  return place === 0 || place === count ? 2 : isFifth(place) ? 1 : 0;
}

function isFifth(number) {
  return number % 5 === 0;
}
