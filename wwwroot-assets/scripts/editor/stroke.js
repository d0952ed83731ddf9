// A stroke: cells of the motif and what each becomes; setting them again changes nothing. As text, which is what is
// kept and sent, it names the size of the motif it was drawn on:
//   8.8 o0:3-5/2,7 u4:0      (row 0, ends 3 to 5 over; row 1, ends 2 and 7 over; row 4, end 0 under)
// Numbers are in base 36, rows and ends from 0; a row without its number is the one after the last.

export class Stroke {
  constructor(rows, ends) {
    this.rows = rows;
    this.ends = ends;
    this.cells = new Map();
  }

  get size() {
    return this.cells.size;
  }

  /** Sets a cell; false when it is outside the motif or was set like that before. */
  add(row, end, over) {
    const key = row * this.ends + end;
    if (row < 0 || row >= this.rows || end < 0 || end >= this.ends || this.cells.get(key) === over) {
      return false;
    }
    this.cells.set(key, over);
    return true;
  }

  * [Symbol.iterator]() {
    for (const [key, over] of this.cells) {
      yield { row: Math.floor(key / this.ends), end: key % this.ends, over };
    }
  }

  applyTo(grid) {
    for (const { row, end, over } of this) {
      grid.set(row, end, over);
    }
  }
}

/** The stroke as texts of at most so many characters each; most strokes are one. */
export function writeStroke(stroke, most = 16000) {
  const head = `${stroke.rows.toString(36)}.${stroke.ends.toString(36)}`;
  const texts = [];
  let text = head;
  for (const over of [true, false]) {
    let row = -2;
    for (const run of runs(stroke, over)) {
      const begins = run.row !== row && run.row !== row + 1;
      const where = run.first === run.last ? run.first.toString(36) : `${run.first.toString(36)}-${run.last.toString(36)}`;
      let part = row === -2 ? ` ${over ? 'o' : 'u'}` : run.row === row ? ',' : '/';
      part += (begins ? `${run.row.toString(36)}:` : '') + where;
      if (text.length + part.length > most) {
        texts.push(text);
        text = head;
        part = ` ${over ? 'o' : 'u'}${run.row.toString(36)}:${where}`;
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
  const stroke = new Stroke(rows, ends);
  for (const group of groups) {
    if (!addGroup(stroke, group)) {
      return null;
    }
  }
  return stroke;
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

function * runs(stroke, over) {
  const keys = [...stroke.cells].filter(cell => cell[1] === over).map(cell => cell[0]).sort((a, b) => a - b);
  let run = null;
  for (const key of keys) {
    const row = Math.floor(key / stroke.ends);
    const end = key % stroke.ends;
    if (run && run.row === row && run.last + 1 === end) {
      run.last = end;
    } else {
      if (run) {
        yield run;
      }
      run = { row, first: end, last: end };
    }
  }
  if (run) {
    yield run;
  }
}
