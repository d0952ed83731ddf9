// What pen, finger, mouse or keys do to the motif, in whatever way they are to draw. Knows nothing of any of them: they press
// on a cell, drag over cells and let go. All ways but the free hand go from one corner to another; where a corner was
// pressed and let go at once, the next press sets the other one, so that nothing needs a drag. A press that becomes a drag
// begins anew where it was pressed, so that a corner which was set by mistake never gets into it.

import { boxOf, isIn, moved, stepWithin, within, wholeBox } from './box.js';
import { cellsBetween } from './line.js';
import { overFor } from './marking.js';
import { mirrored } from './mirror.js';
import { SHAPES } from './shapes.js';
import { Stroke } from './stroke.js';

export const WAYS = ['free', 'line', 'box', 'outline', 'cover', 'choose'];

export class Hand {
  /** ways { way, mark, mirror }, read at each stroke; copied() is what covers, a grid or null; tell { chosen(), moved(box, by), corner(cell) }, where the cell of the corner that waits is null once none does. */
  constructor(desk, ways, copied, tell) {
    this.desk = desk;
    this.ways = ways;
    this.copied = copied;
    this.tell = tell;
    this.chosen = null;
    this.carried = null;
    this.from = null;
    this.at = null;
    this.corner = null;
    this.second = null;
    this.piece = null;
    this.way = null;
    this.hasMoved = false;
  }

  /** Whether a shape is under way: its first corner is set, and the other one is not. */
  get waits() {
    return this.from !== null;
  }

  /** Whether a press that is let go at once means something of its own. */
  get isTapped() {
    return this.ways.way !== 'free';
  }

  get size() {
    return this.desk.motif;
  }

  /** The box in whose middle the mirror stands. */
  get middle() {
    return this.chosen ?? wholeBox(this.size);
  }

  /** Presses on a cell; mark is how, where it is not that of the ways. False when there is nothing to do. */
  press(cell, mark = this.ways.mark) {
    if (this.waits) {
      this.second = { cell, mark, before: this.at };
      this.goTo(cell);
      this.hasMoved = true;
      return true;
    }
    if (!this.size.has(cell.row, cell.end)) {
      return false;
    }
    this.way = this.ways.way;
    this.hasMoved = false;
    if (this.way === 'choose') {
      this.from = cell;
      this.at = cell;
      this.carried = this.chosen && isIn(this.chosen, cell) && !this.isOneCell(this.chosen) ? this.chosen : null;
      if (!this.carried) {
        this.choose(boxOf(cell));
      }
      return true;
    }
    this.piece = this.copied() ?? this.size.copy();
    if (!this.desk.begin(cell, overFor(mark, this.size.get(cell.row, cell.end)))) {
      this.way = null;
      return false;
    }
    this.at = cell;
    if (this.way === 'free') {
      this.desk.extend(this.images([cell]));
    } else {
      this.from = cell;
      this.reach(cell);
    }
    return true;
  }

  drag(last, cell) {
    if (last.row === cell.row && last.end === cell.end) {
      return;
    }
    if (this.second) {
      this.beginAnew();
    }
    if (!this.way) {
      return;
    }
    this.hasMoved = true;
    if (this.way === 'free') {
      this.at = cell;
      this.desk.extend(this.images(cellsBetween(last, cell).slice(1)));
    } else {
      this.goTo(cell);
    }
  }

  // what was chosen so far is the box from the corner that is forgotten
  beginAnew() {
    const { cell, mark } = this.second;
    const isChoosing = this.way === 'choose';
    this.giveUp();
    if (isChoosing) {
      this.choose(null);
    }
    this.press(cell, mark);
  }

  goTo(cell) {
    this.at = cell;
    if (this.way === 'choose') {
      this.drawBox(cell);
    } else {
      this.reach(cell);
    }
  }

  release() {
    if (this.way === 'free') {
      this.desk.end();
      this.way = null;
    } else if (this.hasMoved) {
      this.finish();
    } else if (this.carried) {
      // a press on what is chosen, without moving it, begins to choose anew
      this.carried = null;
      this.choose(boxOf(this.from));
    } else if (this.way) {
      this.setCorner(this.from);
    }
  }

  /** Gives up a press that is not let go: the corner that waited before it goes on waiting. */
  giveUpPress() {
    if (this.second) {
      const { before } = this.second;
      this.second = null;
      this.goTo(before);
    } else {
      this.giveUp();
    }
  }

  /** The page goes: what is under way is drawn, but for a corner that waits. */
  leave() {
    if (this.corner) {
      this.giveUp();
    } else {
      this.desk.end();
    }
  }

  /** Gives up what is under way: it was never drawn. False when nothing was. */
  giveUp() {
    const busy = this.way !== null;
    const { carried } = this;
    this.forget();
    this.desk.takeBack();
    if (carried) {
      this.choose(carried);
    }
    return busy;
  }

  /** Marks every cell that is chosen; the opposite is that of the cell given. */
  markChosen(cell, mark) {
    this.giveUp();
    const box = this.chosen;
    this.desk.draw(this.strokeOf(SHAPES.box(corner(box), farCorner(box), this.size), overFor(mark, this.size.get(cell.row, cell.end))));
  }

  /** Puts a copy down with its lower left corner on a cell; what does not fit falls away. */
  putDown(cell, piece) {
    this.giveUp();
    const box = within({ ...cell, lastRow: cell.row + piece.rows - 1, lastEnd: cell.end + piece.ends - 1 }, this.size);
    this.desk.draw(Stroke.covering(this.size, box, piece, 'p'));
    return box;
  }

  /** Covers a box of the motif with a piece. */
  coverWith(box, piece) {
    this.giveUp();
    this.desk.draw(Stroke.covering(this.size, box, piece));
  }

  /** Chooses a box by other means than corners. */
  chooseBox(box) {
    this.giveUp();
    this.choose(box);
  }

  choose(box) {
    this.chosen = box && within(box, this.size);
    this.tell.chosen();
  }

  /** The motif has another size. */
  resized() {
    this.forget();
    this.choose(this.chosen);
  }

  finish() {
    const { way, carried, from, at } = this;
    this.forget();
    const step = carried && this.stepOf(carried, from, at);
    if (carried && (step.rows !== 0 || step.ends !== 0)) {
      this.tell.moved(carried, step);
    } else if (carried) {
      this.choose(carried);
    } else if (way !== 'choose') {
      this.desk.end();
    }
  }

  forget() {
    this.way = null;
    this.from = null;
    this.second = null;
    this.carried = null;
    this.setCorner(null);
  }

  setCorner(cell) {
    if (cell !== this.corner) {
      this.corner = cell;
      this.tell.corner(cell);
    }
  }

  reach(cell) {
    this.desk.replace(this.way === 'cover'
      ? this.coverOf(boxOf(this.from, cell))
      : this.strokeOf(this.images(SHAPES[this.way](this.from, cell, this.size)), this.desk.strokeOver));
  }

  drawBox(cell) {
    this.choose(this.carried ? moved(this.carried, this.stepOf(this.carried, this.from, cell)) : boxOf(this.from, cell));
  }

  stepOf(box, from, to) {
    return stepWithin(box, { rows: to.row - from.row, ends: to.end - from.end }, this.size);
  }

  coverOf(box) {
    return Stroke.covering(this.size, within(box, this.size), this.piece);
  }

  strokeOf(cells, over) {
    const stroke = new Stroke(this.size.rows, this.size.ends);
    cells.forEach(({ row, end }) => stroke.add(row, end, over));
    return stroke;
  }

  images(cells) {
    const { mirror } = this.ways;
    return mirror === 'none' ? cells : cells.filter(cell => this.size.has(cell.row, cell.end)).flatMap(cell => mirrored(cell, mirror, this.middle, this.size));
  }

  isOneCell(box) {
    return box.row === box.lastRow && box.end === box.lastEnd;
  }
}

function corner({ row, end }) {
  return { row, end };
}

function farCorner({ lastRow, lastEnd }) {
  return { row: lastRow, end: lastEnd };
}
