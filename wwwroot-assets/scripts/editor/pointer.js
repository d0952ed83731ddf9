// Pen, finger or mouse: presses, drags and lets go, with every sample that the browser took in between. What the browser
// takes away again (pointercancel) or the Escape key gives up was never drawn. A second finger takes back a stroke just
// begun; two fingers move the chart, and make its cells larger or smaller.

import { pinch } from './pinch.js';

// CSS pixels within which a pointer still taps, where a tap means something: fingers do not keep to small cells
const WOBBLE = 8;

export class Pointer {
  /** view: where cells lie; hand { press(cell), drag(last, cell), release(), giveUpPress(), isTapped }; zoom(steps) makes cells larger. */
  constructor(view, hand, zoom) {
    this.view = view;
    this.hand = hand;
    this.zoom = zoom;
    this.spread = null;
    this.active = null;
    this.fingers = new Map();
    const { canvas } = view;
    canvas.addEventListener('pointerdown', event => this.down(event));
    canvas.addEventListener('pointermove', event => this.move(event));
    canvas.addEventListener('pointerrawupdate', event => this.moveAtOnce(event));
    canvas.addEventListener('pointerup', event => this.up(event));
    canvas.addEventListener('pointercancel', event => this.cancel(event));
    canvas.addEventListener('lostpointercapture', event => this.up(event));
  }

  down(event) {
    this.view.handIsNear();
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
    if (!this.hand.press(cell)) {
      return;
    }
    event.preventDefault();
    this.active = { id: event.pointerId, last: cell, atOnce: false, tapAt: this.hand.isTapped ? { x: event.clientX, y: event.clientY } : null };
    this.view.canvas.setPointerCapture(event.pointerId);
  }

  move(event) {
    this.view.handIsNear();
    if (this.fingers.size > 1) {
      this.pan(event);
      return;
    }
    if (event.pointerId === this.active?.id && !this.active.atOnce) {
      this.follow(event);
    }
  }

  // Where the browser tells of a move before the next frame is due, the stroke need not wait for it. It tells of the same samples once more with the frame.
  moveAtOnce(event) {
    if (event.pointerId === this.active?.id && this.fingers.size < 2) {
      this.active.atOnce = true;
      this.follow(event);
    }
  }

  follow(event) {
    const samples = event.getCoalescedEvents?.() ?? [];
    for (const sample of samples.length > 0 ? samples : [event]) {
      if (this.mayTap(sample)) {
        continue;
      }
      const cell = this.view.cellAt(sample);
      if (cell.row !== this.active.last.row || cell.end !== this.active.last.end) {
        this.hand.drag(this.active.last, cell);
        this.active.last = cell;
      }
    }
  }

  mayTap({ clientX, clientY }) {
    const { tapAt } = this.active;
    if (tapAt && Math.hypot(clientX - tapAt.x, clientY - tapAt.y) > WOBBLE) {
      this.active.tapAt = null;
    }
    return this.active.tapAt !== null;
  }

  // each finger moves the chart by its share
  pan(event) {
    const before = this.fingers.get(event.pointerId);
    if (before) {
      this.stretch();
      const by = { left: (before.x - event.clientX) / this.fingers.size, top: (before.y - event.clientY) / this.fingers.size };
      this.fingers.set(event.pointerId, { x: event.clientX, y: event.clientY });
      const { stage } = this.view;
      const top = stage.scrollTop;
      stage.scrollBy(by);
      window.scrollBy(0, by.top - (stage.scrollTop - top));
    }
  }

  stretch() {
    const { steps, spread } = pinch([...this.fingers.values()], this.spread);
    this.spread = spread;
    if (steps !== 0) {
      this.zoom(steps);
    }
  }

  lift(event) {
    this.fingers.delete(event.pointerId);
    this.spread = null;
  }

  up(event) {
    this.lift(event);
    if (event.pointerId === this.active?.id) {
      this.active = null;
      this.hand.release();
    }
  }

  cancel(event) {
    this.lift(event);
    if (event.pointerId === this.active?.id) {
      this.giveUp();
    }
  }

  giveUp() {
    if (this.active) {
      this.active = null;
      this.hand.giveUpPress();
    }
  }
}
