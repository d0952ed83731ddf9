// The chart as a grid for assistive technology: the cells around the cursor as elements, the one at the cursor named as the
// active one. They lie over the canvas at their places and let every pointer through.

import { isIn } from './box.js';
import { cellWords, windowAround } from './cell-window.js';

export class CellGrid {
  /** stage: the element with the focus and the role. */
  constructor(stage, view, hand) {
    this.stage = stage;
    this.view = view;
    this.hand = hand;
    this.body = view.sheet.appendChild(document.createElement('div'));
    this.body.className = 'cell-grid';
    this.body.setAttribute('role', 'rowgroup');
  }

  show(at) {
    const motif = this.hand.size;
    const box = windowAround(at, motif);
    this.stage.setAttribute('aria-rowcount', motif.rows);
    this.stage.setAttribute('aria-colcount', motif.ends);
    const rows = [];
    for (let row = box.row; row <= box.lastRow; row++) {
      rows.push(this.row(row, box, motif));
    }
    this.body.replaceChildren(...rows);
    this.stage.setAttribute('aria-activedescendant', idOf(at));
  }

  row(row, box, motif) {
    const line = document.createElement('div');
    line.setAttribute('role', 'row');
    line.setAttribute('aria-rowindex', row + 1);
    for (let end = box.end; end <= box.lastEnd; end++) {
      line.append(this.cell({ row, end }, motif.get(row, end)));
    }
    return line;
  }

  cell(at, over) {
    const { geometry } = this.view;
    const cell = document.createElement('div');
    cell.id = idOf(at);
    cell.setAttribute('role', 'gridcell');
    cell.setAttribute('aria-colindex', at.end + 1);
    cell.setAttribute('aria-label', cellWords(at, over));
    cell.setAttribute('aria-selected', this.hand.chosen !== null && isIn(this.hand.chosen, at));
    if (geometry) {
      const side = geometry.cell / geometry.ratio;
      Object.assign(cell.style, {
        left: `${geometry.x(at.end) / geometry.ratio}px`, top: `${geometry.y(at.row) / geometry.ratio}px`, width: `${side}px`, height: `${side}px`,
      });
    }
    return cell;
  }
}

function idOf({ row, end }) {
  return `motif-${row + 1}-${end + 1}`;
}
