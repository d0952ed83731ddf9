// The panel beside the chart that changes its shape: fields for what is chosen, so that nothing needs a drag, and a button
// for whatever can be done with it.

import { boxOf, boxWords, endsOf, rowsOf, wholeBox, within } from './box.js';

export class ShapePanel {
  /** root: the panel; hand: what is chosen; act(name, rows, ends) does what a button says. */
  constructor(root, hand, act) {
    this.root = root;
    this.hand = hand;
    this.fields = Object.fromEntries([...root.querySelectorAll('[data-bound]')].map(field => [field.dataset.bound, field]));
    root.addEventListener('change', event => event.target.dataset.bound && this.typed());
    root.addEventListener('click', event => {
      const { act: name, choose } = event.target.closest('button')?.dataset ?? {};
      if (choose) {
        hand.chooseBox(choose === 'all' ? wholeBox(hand.size) : null);
      } else if (name) {
        const [word, by = '0,0'] = name.split(':');
        const [rows, ends] = by.split(',').map(Number);
        act(word, { rows, ends });
      }
    });
  }

  /** Shows what is chosen and what buttons will be about. */
  show() {
    const { chosen } = this.hand;
    Object.entries(this.fields).forEach(([name, field]) => { field.value = chosen ? chosen[name] + 1 : ''; });
    this.root.querySelector('[data-aim]').textContent = chosen ? `Chosen: ${boxWords(chosen)}.` : 'Nothing is chosen: copy, shift, mirror and turn act on the whole motif.';
    this.root.querySelectorAll('[data-needs]').forEach(button => { button.disabled = !chosen; });
  }

  open() {
    this.root.open = true;
  }

  say(words) {
    this.root.querySelector('[data-shaped]').replaceChildren(...words.map(text => {
      const line = document.createElement('p');
      line.textContent = text;
      return line;
    }));
  }

  // one field alone chooses from there to the end
  typed() {
    const whole = wholeBox(this.hand.size);
    const value = (name, otherwise) => (/^\d+$/.test(this.fields[name].value.trim()) ? Number(this.fields[name].value) - 1 : otherwise);
    const corner = { row: value('row', whole.row), end: value('end', whole.end) };
    this.hand.chooseBox(within(boxOf(corner, { row: value('lastRow', whole.lastRow), end: value('lastEnd', whole.lastEnd) }), this.hand.size));
  }
}

/** What is sent to the server. */
export function shapeRequest(what, chosen, by = { rows: 0, ends: 0 }) {
  const box = chosen ? { row: chosen.row, end: chosen.end, rows: rowsOf(chosen), ends: endsOf(chosen) } : { row: 0, end: 0, rows: 0, ends: 0 };
  return { what, ...box, byRows: by.rows, byEnds: by.ends };
}

/** What is chosen once it is done: what was moved stays chosen, and so does what is new; what is gone does not. */
export function chosenAfter(what, chosen, by) {
  const rows = chosen ? rowsOf(chosen) : 0;
  const ends = chosen ? endsOf(chosen) : 0;
  const moved = (up, right) => ({ row: chosen.row + up, lastRow: chosen.lastRow + up, end: chosen.end + right, lastEnd: chosen.lastEnd + right });
  switch (what) {
    case 'move': return moved(by.rows, by.ends);
    case 'rowsAbove': return moved(rows, 0);
    case 'endsRight': return moved(0, ends);
    case 'removeRows':
    case 'removeEnds': return null;
    default: return chosen;
  }
}
