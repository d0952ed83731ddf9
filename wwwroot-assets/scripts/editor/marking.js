// What a cell becomes when it is marked.

export const MARKS = ['opposite', 'over', 'under'];

/** True for over. was is what the cell is on which the stroke began. */
export function overFor(mark, was) {
  return mark === 'opposite' ? !was : mark === 'over';
}
