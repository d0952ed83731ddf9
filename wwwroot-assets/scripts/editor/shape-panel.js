// The panel beside the chart that changes its shape: fields for what is chosen, so that nothing needs a drag, and a button
// for whatever can be done with it.

import { boxOf, boxWords, endsOf, rowsOf, wholeBox } from './box.js';

export class ShapePanel {
  /** root: the panel; hand: what is chosen; act(name, rows, ends) does what a button says. */
  constructor(root, hand, act) {
    this.root = root;
    this.hand = hand;
    this.fields = Object.fromEntries([...root.querySelectorAll('[data-bound]')].map(field => [field.dataset.bound, field]));
    this.wrong = root.querySelector('[data-bounds-wrong]');
    this.typing = null;
    this.shown = null;
    root.addEventListener('input', event => { this.typing = event.target.dataset.bound ? event.target : null; });
    root.addEventListener('change', event => event.target.dataset.bound && this.typed());
    root.addEventListener('focusout', () => this.left());
    root.addEventListener('click', event => {
      const { act: name, choose } = event.target.closest('button')?.dataset ?? {};
      if (choose) {
        hand.chooseBox(choose === 'all' ? wholeBox(hand.size) : null);
        this.fill();
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
    const box = JSON.stringify(chosen);
    if (box !== this.shown) {
      this.shown = box;
      this.fill();
    }
    this.root.querySelector('[data-aim]').textContent = chosen ? `Chosen: ${boxWords(chosen)}.` : 'Nothing is chosen: copy, shift, mirror and turn act on the whole motif.';
    this.root.querySelectorAll('[data-needs]').forEach(button => { button.disabled = !chosen; });
  }

  // but for a field in which somebody types: what they type is theirs
  fill() {
    const { chosen } = this.hand;
    Object.entries(this.fields).forEach(([name, field]) => {
      if (field !== this.typing) {
        field.value = chosen ? chosen[name] + 1 : '';
      }
    });
    this.showWrong([]);
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

  // One field alone chooses from there to the end. What does not fit stays as it was typed: the other number may come next.
  typed() {
    this.typing = null;
    const { rows, ends } = this.hand.size;
    const wrong = [...this.wrongIn('row', 'lastRow', 'row', rows), ...this.wrongIn('end', 'lastEnd', 'end', ends)];
    if (wrong.length > 0) {
      this.showWrong(wrong);
      return;
    }
    const whole = wholeBox(this.hand.size);
    const value = name => (this.text(name) ? Number(this.text(name)) - 1 : whole[name]);
    this.hand.chooseBox(boxOf({ row: value('row'), end: value('end') }, { row: value('lastRow'), end: value('lastEnd') }));
    this.fill();
  }

  /** Who types back what was there before changes nothing, but may have missed what was chosen meanwhile. */
  left() {
    this.typing = null;
    if (this.wrong.hidden) {
      this.fill();
    }
  }

  wrongIn(first, last, what, count) {
    const wrong = [first, last].flatMap(name => {
      const text = this.text(name);
      const words = !text ? null
        : !/^\d+$/.test(text) ? `“${text}” is not a number. Write digits only.`
          : Number(text) < 1 || Number(text) > count ? `There is no ${what} ${text}: the motif has ${count} ${count === 1 ? what : `${what}s`}.` : null;
      return words ? [{ names: [name], words }] : [];
    });
    const [from, to] = [this.text(first), this.text(last)];
    return wrong.length > 0 || !from || !to || Number(from) <= Number(to) ? wrong
      : [{ names: [first, last], words: `${what === 'row' ? 'Rows' : 'Ends'} from ${from} to ${to} can't be chosen: the second number must be ${from} or more.` }];
  }

  showWrong(wrong) {
    const names = wrong.flatMap(one => one.names);
    Object.entries(this.fields).forEach(([name, field]) => {
      if (names.includes(name)) {
        field.setAttribute('aria-invalid', 'true');
      } else {
        field.removeAttribute('aria-invalid');
      }
    });
    this.wrong.textContent = wrong.map(one => one.words).join(' ');
    this.wrong.hidden = wrong.length === 0;
  }

  text(name) {
    return this.fields[name].value.trim();
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
