// Drawing with pen, finger or mouse. A stroke sets every cell that it meets to the opposite of the one it began on; what
// the browser takes away again (pointercancel) or the Escape key gives up was never drawn. A second finger takes back a
// stroke just begun, and both move the chart.

import { cellsBetween } from './line.js';

export class Pointer {
  /** view: where cells lie; desk: begins, extends, ends and takes back a stroke. */
  constructor(view, desk) {
    this.view = view;
    this.desk = desk;
    this.active = null;
    this.fingers = new Map();
    const { canvas } = view;
    canvas.addEventListener('pointerdown', event => this.down(event));
    canvas.addEventListener('pointermove', event => this.move(event));
    canvas.addEventListener('pointerup', event => this.up(event));
    canvas.addEventListener('pointercancel', event => this.cancel(event));
    canvas.addEventListener('lostpointercapture', event => this.up(event));
  }

  down(event) {
    if (event.pointerType === 'touch') {
      this.fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      if (this.fingers.size > 1) {
        this.giveUp();
        return;
      }
    }
    if (this.active || event.button !== 0 || !event.isPrimary || !this.view.isOnCells(event)) {
      return;
    }
    const cell = this.view.cellAt(event);
    if (!this.desk.begin(cell)) {
      return;
    }
    event.preventDefault();
    this.active = { id: event.pointerId, last: cell };
    this.view.canvas.setPointerCapture(event.pointerId);
  }

  move(event) {
    if (this.fingers.size > 1) {
      this.pan(event);
      return;
    }
    if (event.pointerId !== this.active?.id) {
      return;
    }
    const samples = event.getCoalescedEvents?.() ?? [];
    for (const sample of samples.length > 0 ? samples : [event]) {
      const cell = this.view.cellAt(sample);
      if (cell.row !== this.active.last.row || cell.end !== this.active.last.end) {
        this.desk.extend(cellsBetween(this.active.last, cell).slice(1));
        this.active.last = cell;
      }
    }
  }

  // each finger moves the chart by its share
  pan(event) {
    const before = this.fingers.get(event.pointerId);
    if (before) {
      const by = { left: (before.x - event.clientX) / this.fingers.size, top: (before.y - event.clientY) / this.fingers.size };
      this.fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      const { stage } = this.view;
      const top = stage.scrollTop;
      stage.scrollBy(by);
      window.scrollBy(0, by.top - (stage.scrollTop - top));
    }
  }

  up(event) {
    this.fingers.delete(event.pointerId);
    if (event.pointerId === this.active?.id) {
      this.active = null;
      this.desk.end();
    }
  }

  cancel(event) {
    this.fingers.delete(event.pointerId);
    if (event.pointerId === this.active?.id) {
      this.giveUp();
    }
  }

  giveUp() {
    if (this.active) {
      this.active = null;
      this.desk.takeBack();
    }
  }
}
