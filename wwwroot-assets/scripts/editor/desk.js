// What happens to the motif on this page: strokes begin, grow and end; each is kept in the browser before it is sent; the
// server's word is taken in. Knows nothing of pointers, keys or canvases.

import { Stroke, readStroke, writeStroke } from './stroke.js';

const MOST_ONE_BY_ONE = 300;

export class Desk {
  /** show: paints { cell(row, end), all(), resized(motif) }. */
  constructor(echo, sender, show) {
    this.echo = echo;
    this.sender = sender;
    this.show = show;
    this.stroke = null;
    this.strokeOver = false;
  }

  get motif() {
    return this.echo.shown;
  }

  /** Begins a stroke on a cell; over is what it and those to come become, by default the opposite of what it is. */
  begin({ row, end }, over = this.motif.has(row, end) && !this.motif.get(row, end)) {
    if (this.stroke || !this.motif.has(row, end)) {
      return false;
    }
    this.stroke = new Stroke(this.motif.rows, this.motif.ends);
    this.strokeOver = over;
    this.extend([{ row, end }]);
    return true;
  }

  extend(cells) {
    for (const { row, end } of this.stroke ? cells : []) {
      if (this.stroke.add(row, end, this.strokeOver)) {
        this.motif.set(row, end, this.strokeOver);
        this.show.cell(row, end);
      }
    }
  }

  /** Puts another stroke in the place of the one under way: a line, say, that is drawn to another cell now. */
  replace(stroke) {
    if (this.stroke) {
      this.stroke = stroke;
      this.renew();
    }
  }

  end() {
    const stroke = this.stroke;
    this.stroke = null;
    if (stroke?.size > 0) {
      this.keep(stroke);
    }
  }

  /** Gives up the stroke under way: it was never drawn. */
  takeBack() {
    if (this.stroke) {
      this.stroke = null;
      this.renew();
    }
  }

  renew() {
    const before = this.motif;
    this.echo.renew();
    this.stroke?.applyTo(this.motif);
    const changed = [...before.differing(this.motif)];
    if (changed.length > MOST_ONE_BY_ONE) {
      this.show.all();
    } else {
      changed.forEach(({ row, end }) => this.show.cell(row, end));
    }
  }

  toggle(cell) {
    if (this.begin(cell)) {
      this.end();
    }
  }

  /** A whole stroke at once. */
  draw(stroke) {
    if (!this.stroke && stroke.size > 0) {
      this.stroke = stroke;
      this.renew();
      this.end();
    }
  }

  keep(stroke) {
    for (const text of writeStroke(stroke)) {
      const part = readStroke(text);
      this.echo.draw(this.sender.add(text, part.size).sequence, part);
    }
  }

  /** An update of the server: where the motif stands, and what became of strokes. */
  receive({ revision, motif, rows, settled }) {
    const mine = settled.filter(one => one.client === this.sender.outbox.client);
    const sequencesOf = outcomes => mine.filter(one => outcomes.includes(one.outcome)).map(one => one.sequence);
    const saved = sequencesOf(['saved']);
    const dropped = sequencesOf(['had', 'refused']);
    const resized = this.echo.receive({ revision, motif, rows, saved, dropped });
    settled.forEach(one => this.sender.settle(one));
    if (resized) {
      this.stroke = null;
      this.show.resized();
      return;
    }
    // the stroke under the pointer is not pending yet
    this.stroke?.applyTo(this.motif);
    if (motif || rows.length > 0 || dropped.length > 0) {
      this.show.all();
    }
  }
}
