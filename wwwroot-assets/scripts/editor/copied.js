// What was copied, kept in the browser: it can be put down on another pattern, and tomorrow.

import { Grid } from './grid.js';

const KEY = 'patternshop:copied';

export class Copied {
  /** storage is localStorage or behaves like it. */
  constructor(storage) {
    this.storage = storage;
    this.held = null;
  }

  keep(piece) {
    this.held = piece;
    try {
      this.storage.setItem(KEY, JSON.stringify({ rows: piece.rows, ends: piece.ends, cells: piece.toBase64() }));
    } catch {
      // it is too large for the browser to keep, and stays on this page
    }
  }

  /** The piece, or null. */
  get piece() {
    return this.held ?? read(this.storage.getItem(KEY));
  }
}

function read(text) {
  try {
    const { rows, ends, cells } = JSON.parse(text);
    const piece = Grid.fromBase64(rows, ends, cells);
    return rows > 0 && ends > 0 && piece.bytes.length === rows * piece.perRow ? piece : null;
  } catch {
    return null;
  }
}
