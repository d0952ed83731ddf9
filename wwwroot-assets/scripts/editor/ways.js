// The ways to draw that are set beside the chart: lists of choices that keys can set too.

import { WAYS } from './hand.js';
import { MARKS } from './marking.js';
import { MIRRORS } from './mirror.js';

const ALL = { way: WAYS, mark: MARKS, mirror: MIRRORS };

export class Ways {
  /** root holds radio buttons and lists named way, mark and mirror; changed() hears of every change. */
  constructor(root, changed) {
    this.root = root;
    this.changed = changed;
    Object.entries(ALL).forEach(([name, all]) => { this[name] = all[0]; });
    root.addEventListener('change', ({ target }) => ALL[target.name]?.includes(target.value) && this.set(target.name, target.value));
    Object.keys(ALL).forEach(name => this.show(name));
  }

  set(name, value) {
    this[name] = value;
    this.show(name);
    this.changed(name);
  }

  /** The next one of the list, and the first after the last. */
  next(name) {
    const all = ALL[name];
    this.set(name, all[(all.indexOf(this[name]) + 1) % all.length]);
  }

  /** What is set, in the words of the page. */
  words(name) {
    const field = this.field(name, this[name]);
    return field?.dataset.words ?? field?.textContent.trim() ?? '';
  }

  show(name) {
    const field = this.field(name, this[name]);
    if (field?.localName === 'option') {
      field.parentElement.value = this[name];
    } else if (field) {
      field.checked = true;
    }
  }

  field(name, value) {
    return this.root.querySelector(`input[name=${name}][value=${value}], select[name=${name}] option[value=${value}]`);
  }
}
