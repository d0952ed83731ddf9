// A stroke: cells of the motif and what each becomes; setting them again changes nothing. As text, which is what is
// kept and sent, it names the size of the motif it was drawn on:
//   8.8 o0:3-5/2,7 u4:0      (row 0, ends 3 to 5 over; row 1, ends 2 and 7 over; row 4, end 0 under)
// Numbers are in base 36, rows and ends from 0; a row without its number is the one after the last. A box that is
// covered with a piece, repeated from the lower left corner, is
//   8.8 c0:0-3:5=2.2:AQI=    (rows 0 to 3 of ends 0 to 5, with a piece of 2 rows of 2 ends, packed as a grid is)
// and p instead of c where a copy was put down.

import { Grid } from './grid.js';

export class Stroke {
  constructor(rows, ends) {
    this.rows = rows;
    this.ends = ends;
    this.size = 0;
    this.chosen = new Grid(rows, ends);
    this.over = new Grid(rows, ends);
    this.covering = null;
  }

  /** A stroke that covers a box of the motif with a piece (a grid); act is 'c' for covering and 'p' for putting a copy down. */
  static covering(size, box, piece, act = 'c') {
    const stroke = new Stroke(size.rows, size.ends);
    for (let row = box.row; row <= box.lastRow; row++) {
      for (let end = box.end; end <= box.lastEnd; end++) {
        stroke.add(row, end, piece.get((row - box.row) % piece.rows, (end - box.end) % piece.ends));
      }
    }
    stroke.covering = { box, piece, act };
    return stroke;
  }

  /** Sets a cell; false when it is outside the motif or was set like that before. */
  add(row, end, over) {
    if (!this.chosen.has(row, end) || (this.chosen.get(row, end) && this.over.get(row, end) === over)) {
      return false;
    }
    this.size += this.chosen.get(row, end) ? 0 : 1;
    this.chosen.set(row, end, true);
    this.over.set(row, end, over);
    return true;
  }

  * [Symbol.iterator]() {
    for (const { row, end } of this.chosen.cells()) {
      yield { row, end, over: this.over.get(row, end) };
    }
  }

  applyTo(grid) {
    const { bytes } = grid;
    for (let at = 0; at < bytes.length; at++) {
      bytes[at] = (bytes[at] & ~this.chosen.bytes[at]) | this.over.bytes[at];
    }
  }
}

// the largest motif, packed, and what stands round it; the server takes as much
const MOST = 200000;

/** The stroke as texts of at most so many characters each; one, as long as the motif keeps its bounds. */
export function writeStroke(stroke, most = MOST) {
  const head = `${write(stroke.rows)}.${write(stroke.ends)}`;
  const whole = stroke.covering ? `${head} ${writeCovering(stroke.covering)}` : '';
  return whole !== '' && whole.length <= most ? [whole] : writeRuns(stroke, head, most);
}

function writeCovering({ box, piece, act }) {
  return `${act}${write(box.row)}:${write(box.end)}-${write(box.lastRow)}:${write(box.lastEnd)}=${write(piece.rows)}.${write(piece.ends)}:${piece.toBase64()}`;
}

function writeRuns(stroke, head, most) {
  const texts = [];
  let text = head;
  for (const over of [true, false]) {
    let row = -2;
    for (const run of runs(stroke, over)) {
      const begins = run.row !== row && run.row !== row + 1;
      const where = run.first === run.last ? write(run.first) : `${write(run.first)}-${write(run.last)}`;
      let part = row === -2 ? ` ${over ? 'o' : 'u'}` : run.row === row ? ',' : '/';
      part += (begins ? `${write(run.row)}:` : '') + where;
      if (text.length + part.length > most) {
        texts.push(text);
        text = head;
        part = ` ${over ? 'o' : 'u'}${write(run.row)}:${where}`;
      }
      text += part;
      row = run.row;
    }
  }
  return text === head ? texts : [...texts, text];
}

/** The stroke that a text stands for; null when it is none. */
export function readStroke(text) {
  const [size, ...groups] = text.split(' ');
  const [rows, ends] = size.split('.').map(number);
  if (!(rows > 0) || !(ends > 0)) {
    return null;
  }
  if (groups.length === 1 && /^[cp]/.test(groups[0])) {
    return readCovering({ rows, ends }, groups[0]);
  }
  const stroke = new Stroke(rows, ends);
  for (const group of groups) {
    if (!addGroup(stroke, group)) {
      return null;
    }
  }
  return stroke;
}

function readCovering(size, text) {
  const parts = /^([cp])(\w+):(\w+)-(\w+):(\w+)=(\w+)\.(\w+):([\w+/=]+)$/.exec(text);
  if (!parts) {
    return null;
  }
  const [row, end, lastRow, lastEnd, rows, ends] = parts.slice(2, 8).map(number);
  if (!(row <= lastRow && lastRow < size.rows && end <= lastEnd && lastEnd < size.ends && rows > 0 && ends > 0)) {
    return null;
  }
  return Stroke.covering(size, { row, end, lastRow, lastEnd }, Grid.fromBase64(rows, ends, parts[8]), parts[1]);
}

function addGroup(stroke, group) {
  const over = group[0] === 'o';
  let row = -2;
  for (const line of group.slice(1).split('/')) {
    const colon = line.indexOf(':');
    row = colon < 0 ? row + 1 : number(line.slice(0, colon));
    for (const run of line.slice(colon + 1).split(',')) {
      const [first, last = first] = run.split('-').map(number);
      if (!(row >= 0 && row < stroke.rows && first >= 0 && last >= first && last < stroke.ends)) {
        return false;
      }
      for (let end = first; end <= last; end++) {
        stroke.add(row, end, over);
      }
    }
  }
  return group[0] === 'o' || group[0] === 'u';
}

function number(text) {
  return /^[0-9a-z]{1,4}$/.test(text) ? parseInt(text, 36) : NaN;
}

function write(value) {
  return value.toString(36);
}

function * runs(stroke, over) {
  let run = null;
  for (const cell of stroke) {
    if (cell.over !== over) {
      continue;
    }
    if (run && run.row === cell.row && run.last + 1 === cell.end) {
      run.last = cell.end;
    } else {
      if (run) {
        yield run;
      }
      run = { row: cell.row, first: cell.end, last: cell.end };
    }
  }
  if (run) {
    yield run;
  }
}
