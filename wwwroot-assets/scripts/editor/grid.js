// A grid of cells that are over (true) or under (false). Rows and ends count from 0: row 0 is woven first, end 0 is the weaver's left.
// A row is packed into bytes, the lowest bit leftmost.

export class Grid {
  constructor(rows, ends, bytes = new Uint8Array(rows * bytesPerRow(ends))) {
    this.rows = rows;
    this.ends = ends;
    this.perRow = bytesPerRow(ends);
    this.bytes = bytes;
  }

  static fromBase64(rows, ends, text) {
    return new Grid(rows, ends, bytesOf(text));
  }

  has(row, end) {
    return row >= 0 && row < this.rows && end >= 0 && end < this.ends;
  }

  get(row, end) {
    return (this.bytes[row * this.perRow + (end >> 3)] >> (end & 7) & 1) === 1;
  }

  set(row, end, over) {
    const at = row * this.perRow + (end >> 3);
    const bit = 1 << (end & 7);
    this.bytes[at] = over ? this.bytes[at] | bit : this.bytes[at] & ~bit;
  }

  setRow(row, text) {
    this.bytes.set(bytesOf(text), row * this.perRow);
  }

  isSizeOf(other) {
    return this.rows === other.rows && this.ends === other.ends;
  }

  /** Every cell that is over, row by row. */
  * cells() {
    for (let at = 0; at < this.bytes.length; at++) {
      for (let left = this.bytes[at], bit = 0; left > 0; left >>= 1, bit++) {
        if (left & 1) {
          yield { row: Math.floor(at / this.perRow), end: (at % this.perRow) * 8 + bit };
        }
      }
    }
  }

  /** The cells that another grid of this size has otherwise, row by row. */
  * differing(other) {
    yield* new Grid(this.rows, this.ends, this.bytes.map((byte, at) => byte ^ other.bytes[at])).cells();
  }

  /** A part of the grid; box as in box.js. */
  part(box) {
    const part = new Grid(box.lastRow - box.row + 1, box.lastEnd - box.end + 1);
    for (let row = 0; row < part.rows; row++) {
      for (let end = 0; end < part.ends; end++) {
        part.set(row, end, this.get(row + box.row, end + box.end));
      }
    }
    return part;
  }

  toBase64() {
    let letters = '';
    this.bytes.forEach(byte => { letters += String.fromCharCode(byte); });
    return btoa(letters);
  }

  copy() {
    return new Grid(this.rows, this.ends, this.bytes.slice());
  }
}

function bytesPerRow(ends) {
  return (ends + 7) >> 3;
}

function bytesOf(base64) {
  return Uint8Array.from(atob(base64), letter => letter.charCodeAt(0));
}
