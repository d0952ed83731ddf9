// Drawing with the keyboard. The chart is one stop of the Tab key; keys move a cursor inside it, space changes the cell.

import { clampCursor, moveCursor } from './cursor.js';

export class Keyboard {
  /** stage: the element that takes the focus; say: tells a screen reader where the cursor is. */
  constructor(stage, view, desk, say) {
    this.stage = stage;
    this.view = view;
    this.desk = desk;
    this.say = say;
    this.at = { row: 0, end: 0 };
    stage.addEventListener('keydown', event => this.key(event));
    stage.addEventListener('focus', () => stage.matches(':focus-visible') && this.show(this.at));
    stage.addEventListener('blur', () => this.show(null));
  }

  /** Puts the cursor where a pointer has been; it shows again with the next key. */
  place(cell) {
    this.at = clampCursor(cell, this.desk.motif);
    this.mark(null);
  }

  key(event) {
    const far = event.ctrlKey || event.metaKey;
    if (event.key === ' ' && !far) {
      event.preventDefault();
      this.desk.toggle(this.at);
      this.tell();
      return;
    }
    const next = event.altKey || event.shiftKey ? null : moveCursor(this.at, event.key, this.desk.motif, far);
    if (next) {
      event.preventDefault();
      this.at = next;
      this.show(next);
    }
  }

  resized() {
    this.at = clampCursor(this.at, this.desk.motif);
    if (this.view.chart.cursor) {
      this.mark(this.at);
    }
  }

  show(cell) {
    this.mark(cell && clampCursor(cell, this.desk.motif));
    if (cell) {
      this.view.bringIntoSight(cell);
      this.tell();
    }
  }

  mark(cell) {
    const { view } = this;
    const before = view.chart.cursor;
    view.chart.cursor = cell;
    for (const one of [before, cell]) {
      if (one) {
        view.paintCell(one.row, one.end);
      }
    }
    view.paintNumbers();
  }

  tell() {
    const { row, end } = this.at;
    this.say(`row ${row + 1}, end ${end + 1}, ${this.desk.motif.get(row, end) ? 'over' : 'under'}`);
  }
}
