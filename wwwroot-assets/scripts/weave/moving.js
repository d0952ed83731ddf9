// Somebody in the middle of an earlier version: what changed among the rows woven and to come, and where to go on. It only asks;
// nothing moves before they say so.

import { fill } from './piece.js';

const NAMED = 8;

/** What a place of the earlier version is in the newer one, looked up. A change is [old row or 0, new row or 0, passed when so many rows are woven, kind]. */
export function lookUp(moves, { woven, run }) {
  const row = woven + moves.shifts.filter(([from]) => from <= woven).at(-1)[1] + 1;
  const isBehind = change => change[2] >= 0 && change[2] <= woven;
  // a row that is half woven goes on only where it comes next and reads the same
  const goesOn = !moves.changes.some(([old, now]) => old === woven + 1 || now === row);
  return {
    row,
    isDone: row > moves.rows,
    run: goesOn ? run : 0,
    isTorn: run > 0 && !goesOn,
    weftAt: { l: 'left', r: 'right' }[moves.sides[woven]] ?? '',
    passed: moves.changes.filter(isBehind),
    toCome: moves.changes.filter(change => !isBehind(change)),
  };
}

/** Changes that read alike, together, as [title, before, now]. */
export function listOf(changes, kinds, words, number) {
  const alike = new Map();
  for (const [old, now, , kind] of changes) {
    const rows = alike.get(kind) ?? [];
    rows.push(now || old);
    alike.set(kind, rows);
  }
  return [...alike].map(([kind, rows]) => {
    const [before, now] = kinds[kind];
    const named = rows.slice(0, NAMED).map(number).join(', ');
    const title = fill(rows.length === 1 ? words.row : words.rows, { rows: rows.length > NAMED ? fill(words.more, { rows: named, more: number(rows.length - NAMED) }) : named });
    return [title + (before ? now ? '' : ` · ${words.isGone}` : ` · ${words.isNew}`), before, now];
  });
}

function element(name, { text, className, children = [] }) {
  const made = document.createElement(name);
  if (text) { made.textContent = text; }
  if (className) { made.className = className; }
  made.append(...children);
  return made;
}

function section(label, list, words) {
  const items = list.map(([title, before, now]) => element('li', {
    children: [
      element('b', { text: title }),
      ...(before ? [element('p', { className: 'was', children: [element('i', { text: `${words.before} ` }), before] })] : []),
      ...(now ? [element('p', { children: [element('i', { text: `${words.now} ` }), now] })] : []),
    ],
  }));
  return [element('h3', { text: label }), items.length > 0 ? element('ul', { className: 'rows', children: items }) : element('p', { text: words.none })];
}

/**
 * Asks somebody who is at a place of version `from` whether they go on in version `to`.
 * `choices` holds what they can choose, each { text, take, main }; closing the dialog chooses nothing.
 */
export function ask(dialog, { piece, moves, place, from, to, choose }) {
  const { versions, moveWords: words } = piece.data;
  const found = lookUp(moves, place);
  const number = value => piece.number(value);
  const said = { version: number(from), number: number(to), woven: number(place.woven), all: number(moves.sides.length - 1) };
  const opposite = { left: words.right, right: words.left };
  const notes = [
    fill(found.isDone ? words.done : words.goOn, { ...said, row: number(found.row) }),
    ...(found.isTorn ? [fill(words.middle, { ...said, row: number(place.woven + 1) })] : []),
    ...(found.weftAt ? [fill(words.side, { now: words[found.weftAt], next: opposite[found.weftAt] })] : []),
  ];
  const title = element('h2', { text: versions.newest });
  title.id = 'moving-title';
  title.tabIndex = -1;
  const buttons = choose(found).map(({ form, take, main }) => {
    const button = element('button', { text: fill(words[form], said), className: main ? 'close' : '' });
    button.type = 'button';
    button.addEventListener('click', () => { dialog.close(); take(); });
    return button;
  });
  dialog.replaceChildren(
    title,
    element('p', { text: fill(words.woven, said) }),
    ...notes.map((text, i) => element('p', { text, className: i > 0 ? 'care' : 'go-on' })),
    ...section(words.passed, listOf(found.passed, moves.kinds, words, number), words),
    ...section(words.toCome, listOf(found.toCome, moves.kinds, words, number), words),
    element('div', { className: 'choices', children: buttons }));
  dialog.showModal();
  // not on a button: whoever goes on stepping with keys must not choose by that
  title.focus();
}

/** The moves between two versions; null where they cannot be had, be it that the pattern was withdrawn or that there is no line. */
export async function fetchMoves({ moves }, from, to) {
  try {
    const answer = await fetch(fill(moves, { from, to }));
    return answer.ok ? await answer.json() : null;
  } catch {
    return null;
  }
}
