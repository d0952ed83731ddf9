import { readItems, writeOut } from './writing.js';

// What the page says about the piece, looked up: rows, their readings, the stitches between them, and the words for all of it.

export const fill = (form, values) => form.replace(/\{(\w+)\}/g, (_, name) => values[name]);

export class Piece {
  #readings = new Map();
  #firstOfBand = [];
  #stitches = new Map();
  #format;

  constructor(data) {
    this.data = data;
    this.rows = data.rows;
    this.#format = new Intl.NumberFormat(data.words.language);
    let first = 1;
    for (const band of data.bands) {
      this.#firstOfBand.push(first);
      first += band.each * band.times;
    }
    for (const [after, text, side] of data.stitches) {
      const there = this.#stitches.get(after) ?? [];
      there.push({ text: data.stitchTexts[text], fromLeft: side === 0 });
      this.#stitches.set(after, there);
    }
  }

  /** Where a row, counted from 1, stands: its band, its number within and which time through. */
  placeOf(number) {
    let low = 0, high = this.#firstOfBand.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#firstOfBand[middle] <= number) { low = middle; } else { high = middle - 1; }
    }
    const band = this.data.bands[low];
    const into = number - this.#firstOfBand[low];
    return { band, into, within: into % band.each + 1, each: band.each, time: Math.floor(into / band.each) + 1, times: band.times };
  }

  /** The reading of a row: its side, its items as written and its runs written out. */
  reading(number) {
    const { band, into } = this.placeOf(number);
    const index = band.readings[into % band.readings.length];
    if (!this.#readings.has(index)) {
      const text = this.data.readings[index];
      const items = readItems(text);
      this.#readings.set(index, { fromLeft: text[0] === 'l', items, runs: writeOut(items) });
    }
    return this.#readings.get(index);
  }

  /** The cells of a row from the left, true where the weft is over. */
  cells(number) {
    const { runs, fromLeft } = this.reading(number);
    const met = runs.flatMap(run => Array(run.count).fill(run.over));
    return fromLeft ? met : met.reverse();
  }

  /** The edge stitches that are worked when so many rows are woven. */
  stitches(woven) {
    return this.#stitches.get(woven) ?? [];
  }

  number(value) {
    return this.#format.format(value);
  }

  placeText(number) {
    const { words } = this.data;
    const place = this.placeOf(number);
    const said = Object.fromEntries(['within', 'each', 'time', 'times'].map(name => [name, this.number(place[name])]));
    return fill(place.times === 1 ? words.place : words.placeAgain, { ...said, number: this.number(number), all: this.number(this.rows) });
  }

  notes(number) {
    const { band, into } = this.placeOf(number);
    return this.data.notes[band.notes[into % band.notes.length]];
  }

  /** The weft of a row by its name; empty where there is only one. */
  weft(number) {
    const { band, into } = this.placeOf(number);
    return band.wefts ? this.data.wefts[band.wefts[into % band.wefts.length]] : '';
  }

  /** What the maker says and shows at a row; null where they say nothing. */
  own(number) {
    const { band, into } = this.placeOf(number);
    const own = band.own ? this.data.own[band.own[into % band.own.length]] : null;
    return own && (own.text || own.videos.length > 0) ? own : null;
  }

  runText(run) {
    return `${run.over ? this.data.words.over : this.data.words.under} ${this.number(run.count)}`;
  }

  /** An item as it is written; a bracket inside another is round. */
  itemText(item, inside = false) {
    if (!item.items) { return this.runText(item); }
    const items = item.items.map(inner => this.itemText(inner, true)).join(', ');
    return `${inside ? `(${items})` : `[${items}]`} × ${this.number(item.times)}`;
  }

  /** How far the needle is in the brackets around a run; empty outside of any. */
  bracketText([outer, inner]) {
    const { bracket, innerBracket } = this.data.words;
    const said = ({ time, times }, form) => fill(form, { time: this.number(time), times: this.number(times) });
    return outer ? said(outer, bracket) + (inner ? said(inner, innerBracket) : '') : '';
  }

  endsText(number) {
    return fill(this.data.words.ends, { run: this.runText(this.reading(number).runs.at(-1)) });
  }

  fromText(fromLeft) {
    return fromLeft ? this.data.words.fromLeft : this.data.words.fromRight;
  }

  turnText(number) {
    return fill(this.data.words.turn, { number: this.number(number), from: this.fromText(this.reading(number).fromLeft) });
  }

  reportText(number) {
    return fill(this.data.words.report, { number: this.number(number) });
  }

  doneText() {
    return fill(this.data.words.done, { all: this.number(this.rows) });
  }
}
