// Where a key takes the cursor of the chart. Row 0 is at the bottom, so up is the next row.

const PAGE = 5;

const MOVES = {
  ArrowLeft: ({ row, end }) => ({ row, end: end - 1 }),
  ArrowRight: ({ row, end }) => ({ row, end: end + 1 }),
  ArrowUp: ({ row, end }) => ({ row: row + 1, end }),
  ArrowDown: ({ row, end }) => ({ row: row - 1, end }),
  PageUp: ({ row, end }) => ({ row: row + PAGE, end }),
  PageDown: ({ row, end }) => ({ row: row - PAGE, end }),
  Home: ({ row }) => ({ row, end: 0 }),
  End: ({ row }, { ends }) => ({ row, end: ends - 1 }),
};

const FAR_MOVES = {
  Home: () => ({ row: 0, end: 0 }),
  End: (at, { rows, ends }) => ({ row: rows - 1, end: ends - 1 }),
};

/** The new place inside a motif of { rows, ends }, or null when the key moves nothing; far is the key with Ctrl. */
export function moveCursor(at, key, size, far = false) {
  const move = far ? FAR_MOVES[key] : MOVES[key];
  return move ? clampCursor(move(at, size), size) : null;
}

export function clampCursor({ row, end }, { rows, ends }) {
  return { row: clamp(row, rows), end: clamp(end, ends) };
}

function clamp(value, count) {
  return Math.max(0, Math.min(count - 1, value));
}
