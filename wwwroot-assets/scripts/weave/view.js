import { deedAt } from './place.js';
import { showOwn } from './own.js';
import { columnsOf, drawStrip } from './strip.js';

const SHOWN_NEXT = 7;
const byId = id => document.getElementById(id);

function element(name, className, text) {
  const made = document.createElement(name);
  if (className) { made.className = className; }
  if (text) { made.textContent = text; }
  return made;
}

const ARROW = 'M4 32H78M50 6l30 26-30 26';

function heading(text, fromLeft, { weft = '', notes = '' } = {}) {
  const line = element('p', 'from');
  const arrow = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  arrow.setAttribute('viewBox', '0 0 84 64');
  arrow.setAttribute('aria-hidden', 'true');
  arrow.setAttribute('class', 'arrow');
  const path = document.createElementNS('http://www.w3.org/2000/svg', 'path');
  path.setAttribute('d', ARROW);
  if (!fromLeft) { path.setAttribute('transform', 'matrix(-1 0 0 1 84 0)'); }
  arrow.append(path);
  const words = element('span');
  // spaces, so that what stands on lines of its own is copied and read aloud as words
  if (weft) { words.append(element('b', 'weft', weft), ' '); }
  words.append(text);
  if (notes) { words.append(' ', element('small', '', notes)); }
  line.append(arrow, words);
  return line;
}

// A line of a place ends between its parts rather than within one.
const inParts = text => text.split(/(?<=·) | (?=\()/).flatMap((part, i) => [...(i > 0 ? [' '] : []), element('span', 'part', part)]);

/** Lets what is longer than its place be scrolled by keys too: then, and only then, it is a stop of its own, named by the place in the piece. */
function letScroll(long) {
  if (long.scrollHeight <= long.clientHeight + 1) { return; }
  long.tabIndex = 0;
  long.setAttribute('role', 'group');
  long.setAttribute('aria-labelledby', 'place');
}

/** Shows places; knows nothing but what it is shown. */
export class View {
  #piece;
  #row = -1;

  constructor(piece) {
    this.#piece = piece;
  }

  show(place, { quiet = false } = {}) {
    const piece = this.#piece;
    const deed = deedAt(piece, place);
    const title = deed.kind === 'run' ? piece.placeText(deed.row) : piece.placeText(Math.max(1, Math.min(place.woven, piece.rows)));
    byId('place').replaceChildren(...inParts(deed.kind === 'done' ? piece.doneText() : title));
    const before = byId('runs').querySelector('.scrolls');
    const read = { top: before?.scrollTop ?? 0, byKeys: before !== null && before === document.activeElement };
    byId('runs').replaceChildren(...this.#parts(deed, place));
    const left = deed.kind === 'run' ? piece.reading(deed.row).fromLeft : deed.kind === 'stitch' ? deed.stitch.fromLeft : true;
    byId('hand').classList.toggle('from-right', !left);
    this.#goOnReading(read, deed.row === this.#row);
    byId('back').disabled = place.woven === 0 && place.step === 0 && place.jumps.length === 0;
    byId('next').disabled = deed.kind === 'done';
    showOwn(byId('own'), deed.kind === 'run' ? piece.own(deed.row) : null, piece.data.words.own);
    this.#strip(deed, place);
    if (!quiet) { byId('said').textContent = this.#said(deed, place); }
    this.#row = deed.row ?? 0;
  }

  #parts(deed, place) {
    const piece = this.#piece;
    if (deed.kind === 'done') {
      return [element('p', 'deed scrolls', piece.doneText())];
    }
    if (deed.kind === 'stitch') {
      return [heading(piece.fromText(deed.stitch.fromLeft), deed.stitch.fromLeft), element('p', 'deed scrolls', deed.stitch.text)];
    }
    const reading = piece.reading(deed.row);
    const head = heading(piece.fromText(reading.fromLeft), reading.fromLeft, { weft: piece.weft(deed.row), notes: piece.notes(deed.row) });
    return place.byRows ? [head, this.#wholeRow(reading)] : [head, this.#runs(reading, deed), element('p', 'ends', piece.endsText(deed.row))];
  }

  #written(reading) {
    return reading.items.map(item => this.#piece.itemText(item)).join(', ');
  }

  // A line ends between runs rather than within one.
  #wholeRow(reading) {
    const row = element('p', 'whole scrolls');
    row.append(...this.#written(reading).split(', ').flatMap((run, i) => [...(i > 0 ? [', '] : []), element('span', 'run', run)]));
    return row;
  }

  // Where the same row is drawn again its reader stays where they are in it; whoever reads by keys goes on doing so in the next.
  #goOnReading({ top, byKeys }, isSameRow) {
    const now = byId('runs').querySelector('.scrolls');
    if (!now) { return; }
    letScroll(now);
    if (isSameRow) { now.scrollTop = top; }
    if (byKeys) { now.focus(); }
  }

  #runs(reading, deed) {
    const piece = this.#piece;
    const list = element('ol', 'runs');
    const shown = reading.runs.slice(deed.run, deed.run + 1 + SHOWN_NEXT);
    for (const [i, run] of shown.entries()) {
      const line = element('li', i === 0 ? 'now' : '', '');
      line.append(element('span', 'run', piece.runText(run)));
      if (i === 0 && run.brackets.length > 0) { line.append(element('span', 'bracket', piece.bracketText(run.brackets))); }
      list.append(line);
    }
    if (shown.length <= SHOWN_NEXT && deed.row < piece.rows && piece.stitches(deed.row).length === 0) {
      list.append(element('li', 'turn', piece.turnText(deed.row + 1)));
    }
    return list;
  }

  #said(deed, place) {
    const piece = this.#piece;
    if (deed.kind === 'done') { return piece.doneText(); }
    if (deed.kind === 'stitch') { return deed.stitch.text; }
    const reading = piece.reading(deed.row);
    const run = reading.runs[deed.run];
    const what = place.byRows
      ? this.#written(reading)
      : [piece.runText(run), piece.bracketText(run.brackets)].filter(Boolean).join(', ');
    return deed.row === this.#row && !place.byRows ? what : `${[piece.placeText(deed.row), piece.weft(deed.row), piece.fromText(reading.fromLeft)].filter(Boolean).join(', ')}: ${what}`;
  }

  #strip(deed, place) {
    const svg = byId('strip');
    const { width, height } = svg.getBoundingClientRect();
    if (width < 1 || height < 1) { return; }
    const ends = this.#piece.data.ends;
    const whole = { from: 0, to: ends };
    const row = deed.kind === 'run' ? deed.row : 0;
    const reading = row ? this.#piece.reading(row) : null;
    const mark = row && !place.byRows ? columnsOf(reading, reading.runs[deed.run], ends) : whole;
    drawStrip(svg, this.#piece, { woven: place.woven, row, mark, width: Math.round(width), height: Math.round(height) });
  }
}
