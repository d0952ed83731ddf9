// What the keys of the chart do.

import { MARKS } from './marking.js';
import { WAYS } from './hand.js';

const MOVES = ['ArrowLeft', 'ArrowRight', 'ArrowUp', 'ArrowDown', 'Home', 'End', 'PageUp', 'PageDown'];
const STEPS = {
  ArrowLeft: { rows: 0, ends: -1 }, ArrowRight: { rows: 0, ends: 1 }, ArrowUp: { rows: 1, ends: 0 }, ArrowDown: { rows: -1, ends: 0 },
};
const MARK_KEYS = { p: MARKS[0], o: MARKS[1], u: MARKS[2] };
const FAR_KEYS = { a: 'chooseAll', c: 'copy', v: 'putDown', ' ': 'chooseEnd' };

/** The keys and what they do, as they are listed beside the chart. */
export const KEY_LIST = [
  ['Arrows', 'one end or row on'],
  ['Home, End', 'first and last end of the row; with Ctrl, first and last cell'],
  ['Page up, Page down', 'five rows on'],
  ['Space', 'marks the cell in the way that is set; sets the corners of a line or box'],
  ['O, U, P', 'marks over, under, the opposite'],
  ['1 to 6', 'free hand, line, box, outline, cover, choose'],
  ['M', 'the next mirror'],
  ['Shift with arrows, Home, End', 'chooses cells; Space, O, U and P then mark all of them'],
  ['Shift Space, Ctrl Space, Ctrl A', 'chooses the row, the end, everything'],
  ['Ctrl C, Ctrl V', 'copies what is chosen; puts the copy down at the cursor'],
  ['Alt with arrows', 'moves what is chosen'],
  ['Delete', 'what is chosen becomes under'],
  ['Escape', 'gives up what is under way, then what is chosen'],
  ['Ctrl Z, Ctrl Y', 'undo, redo'],
];

/** What a key does: { act, … }, or null. far is Ctrl or its like. */
export function actionOf({ key, shift = false, far = false, alt = false }) {
  if (alt) {
    return STEPS[key] && !far && !shift ? { act: 'carry', by: STEPS[key] } : null;
  }
  if (MOVES.includes(key)) {
    return { act: shift ? 'grow' : 'move', key, far };
  }
  const letter = key.toLowerCase();
  if (far) {
    return FAR_KEYS[letter] && !shift ? { act: FAR_KEYS[letter] } : null;
  }
  if (key === ' ') {
    return { act: shift ? 'chooseRow' : 'mark' };
  }
  if (MARK_KEYS[letter]) {
    return { act: 'mark', mark: MARK_KEYS[letter] };
  }
  const way = WAYS[Number(key) - 1];
  return way ? { act: 'way', way }
    : letter === 'm' ? { act: 'mirror' }
      : key === 'Delete' || key === 'Backspace' ? { act: 'clear' }
        : key === 'Escape' ? { act: 'giveUp' } : null;
}
