// What the motif looks like to the person who draws: what the store has confirmed, and on top of it every stroke that is
// not confirmed yet. So a stroke shows at once, and whatever the server says later cannot lose it.

import { Grid } from './grid.js';

export class Echo {
  constructor(revision, confirmed) {
    this.revision = revision;
    this.confirmed = confirmed;
    this.pending = new Map();
    this.shown = confirmed.copy();
  }

  /** Adds a stroke that is finished and not confirmed. */
  draw(sequence, stroke) {
    this.pending.set(sequence, stroke);
    this.apply(stroke);
  }

  /** Takes in what the server says; true when the motif has another size now. */
  receive({ revision, motif, rows = [], saved = [], dropped = [] }) {
    const resized = motif != null && (motif.rows !== this.shown.rows || motif.ends !== this.shown.ends);
    for (const sequence of saved) {
      const stroke = this.pending.get(sequence);
      if (stroke?.rows === this.confirmed.rows && stroke.ends === this.confirmed.ends) {
        stroke.applyTo(this.confirmed);
      }
    }
    [...saved, ...dropped].forEach(sequence => this.pending.delete(sequence));
    if (motif) {
      this.confirmed = Grid.fromBase64(motif.rows, motif.ends, motif.cells);
    }
    rows.forEach(({ row, cells }) => this.confirmed.setRow(row, cells));
    this.revision = revision;
    this.renew();
    return resized;
  }

  /** Shows what is confirmed and pending, and nothing else. */
  renew() {
    this.shown = this.confirmed.copy();
    this.pending.forEach(stroke => this.apply(stroke));
  }

  apply(stroke) {
    if (stroke.rows === this.shown.rows && stroke.ends === this.shown.ends) {
      stroke.applyTo(this.shown);
    }
  }
}
