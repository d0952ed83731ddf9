// Drawing with the keyboard. The chart is one stop of the Tab key; keys move a cursor inside it and do there what the hand does.

import { boxOf, boxWords, stepWithin, wholeBox } from './box.js';
import { cellWords } from './cell-window.js';
import { clampCursor, moveCursor } from './cursor.js';
import { actionOf } from './keys.js';

export class Keyboard {
  /** stage: the element that takes the focus; tell { where(text), say(text) }; acts { copy(), putDown(), carry(box, by) }. */
  constructor(stage, view, hand, ways, grid, tell, acts) {
    Object.assign(this, { stage, view, hand, ways, grid, tell, acts });
    this.at = { row: 0, end: 0 };
    this.corner = null;
    stage.addEventListener('keydown', event => this.key(event));
    stage.addEventListener('focus', () => {
      this.renew();
      if (stage.matches(':focus-visible')) {
        this.show();
      }
    });
    stage.addEventListener('blur', () => this.paintCursor(null));
    this.renew();
  }

  get size() {
    return this.hand.size;
  }

  /** Puts the cursor where a pointer has been; it shows again with the next key. */
  place(cell) {
    this.at = clampCursor(cell, this.size);
    this.corner = null;
    this.paintCursor(null);
    this.tell.where(this.words);
  }

  key(event) {
    const action = actionOf({ key: event.key, shift: event.shiftKey, far: event.ctrlKey || event.metaKey, alt: event.altKey });
    if (action && this[action.act](action) !== false) {
      event.preventDefault();
    }
  }

  move({ key, far }) {
    this.corner = null;
    return this.go(moveCursor(this.at, key, this.size, far));
  }

  grow({ key, far }) {
    const to = moveCursor(this.at, key, this.size, far);
    if (to) {
      this.corner ??= this.at;
      this.choose(boxOf(this.corner, to), to);
    }
    return to !== null;
  }

  go(to) {
    if (!to) {
      return false;
    }
    const last = this.at;
    this.at = to;
    if (this.hand.waits) {
      this.hand.drag(last, to);
    }
    this.show();
    return true;
  }

  choose(box, at = this.at) {
    this.hand.chooseBox(box);
    this.go(at);
    this.tell.say(`chosen: ${boxWords(box)}`);
  }

  chooseRow() {
    this.corner = this.at;
    this.choose({ ...wholeBox(this.size), row: this.at.row, lastRow: this.at.row });
  }

  chooseEnd() {
    this.corner = this.at;
    this.choose({ ...wholeBox(this.size), end: this.at.end, lastEnd: this.at.end });
  }

  chooseAll() {
    this.corner = this.at;
    this.choose(wholeBox(this.size));
  }

  mark({ mark = this.ways.mark }) {
    const { hand } = this;
    if (hand.chosen && !hand.waits && (this.corner || this.ways.way === 'choose')) {
      this.markChosen(mark);
    } else if (hand.press(this.at, mark)) {
      hand.release();
      if (!hand.waits) {
        this.tell.say(this.words);
      }
    }
    this.renew();
  }

  clear() {
    return this.hand.chosen !== null && this.markChosen('under');
  }

  markChosen(mark) {
    const { hand } = this;
    hand.markChosen(this.at, mark);
    this.tell.say(`${boxWords(hand.chosen)}: now ${hand.size.get(this.at.row, this.at.end) ? 'over' : 'under'}`);
    this.renew();
  }

  way({ way }) {
    this.giveUpCorner();
    this.ways.set('way', way);
    this.tell.say(`draw with: ${this.ways.words('way')}`);
  }

  mirror() {
    this.ways.next('mirror');
    this.tell.say(`mirror: ${this.ways.words('mirror')}`);
  }

  copy() {
    this.acts.copy();
  }

  putDown() {
    this.acts.putDown();
    this.renew();
  }

  carry({ by }) {
    const box = this.hand.chosen;
    const step = box && stepWithin(box, by, this.size);
    if (step && (step.rows !== 0 || step.ends !== 0)) {
      this.acts.carry(box, step);
    }
  }

  giveUp() {
    this.corner = null;
    if (this.giveUpCorner()) {
      this.tell.say('given up');
    } else if (this.hand.chosen) {
      this.hand.choose(null);
      this.tell.say('nothing chosen');
    }
    this.renew();
  }

  giveUpCorner() {
    return this.hand.giveUp();
  }

  resized() {
    this.at = clampCursor(this.at, this.size);
    this.corner = null;
    this.renew();
    if (this.view.chart.cursor) {
      this.paintCursor(this.at);
    }
  }

  show() {
    this.paintCursor(this.at);
    this.view.bringIntoSight(this.at);
    this.renew();
    this.tell.where(this.words);
  }

  /** The cells round the cursor as they are now. */
  renew() {
    this.at = clampCursor(this.at, this.size);
    this.grid.show(this.at);
  }

  paintCursor(cell) {
    const { view } = this;
    const before = view.chart.cursor;
    if (!before && !cell) {
      return;
    }
    view.chart.cursor = cell;
    for (const one of [before, cell]) {
      if (one) {
        view.paintCell(one.row, one.end);
      }
    }
    view.paintNumbers();
  }

  get words() {
    return cellWords(this.at, this.size.get(this.at.row, this.at.end));
  }
}
