// What lies over the chart: the outline of what is chosen, the first corner that waits for the other one, and where the mirror stands.

import { isWhole } from './box.js';
import { mirrorLines } from './mirror.js';

export class Overlay {
  constructor(view, hand, ways) {
    this.view = view;
    this.hand = hand;
    this.ways = ways;
    this.chosen = piece(view.sheet, 'chosen-box');
    this.corner = piece(view.sheet, 'first-corner');
    this.upright = piece(view.sheet, 'mirror-line');
    this.level = piece(view.sheet, 'mirror-line');
    view.onLayOut = () => this.show();
  }

  show() {
    const { geometry } = this.view;
    if (!geometry) {
      return;
    }
    const { chosen, corner, middle, size } = this.hand;
    const side = geometry.cell / geometry.ratio;
    const left = end => geometry.left / geometry.ratio + end * side;
    const top = row => geometry.top / geometry.ratio + (size.rows - row) * side;
    place(this.chosen, chosen && { left: left(chosen.end), top: top(chosen.lastRow + 1), width: (chosen.lastEnd - chosen.end + 1) * side, height: (chosen.lastRow - chosen.row + 1) * side });
    place(this.corner, corner && { left: left(corner.end), top: top(corner.row + 1), width: side, height: side });
    const lines = mirrorLines(this.ways.mirror, middle);
    place(this.upright, lines.end !== null && { left: left(lines.end), top: top(size.rows), width: 0, height: size.rows * side });
    place(this.level, lines.row !== null && { left: left(0), top: top(lines.row), width: size.ends * side, height: 0 });
    this.chosen.classList.toggle('whole', chosen !== null && isWhole(chosen, size));
  }
}

function piece(sheet, name) {
  const one = sheet.appendChild(document.createElement('div'));
  one.className = name;
  one.hidden = true;
  one.setAttribute('aria-hidden', 'true');
  return one;
}

function place(one, box) {
  one.hidden = !box;
  if (box) {
    Object.assign(one.style, { left: `${box.left}px`, top: `${box.top}px`, width: `${box.width}px`, height: `${box.height}px` });
  }
}
