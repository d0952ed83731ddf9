// Cells that are pointed at, until the next touch. What is marked in one chart is marked in the other where it shows there; knows
// nothing of canvases.

export class Marks {
  /** blocks: [{ rows: Set, ends: Set }], both from 0; a cell is marked where a block has its row and its end. */
  constructor(blocks) {
    this.blocks = blocks.filter(({ rows, ends }) => rows.size > 0 && ends.size > 0);
  }

  get isEmpty() {
    return this.blocks.length === 0;
  }

  has(row, end) {
    return this.blocks.some(({ rows, ends }) => rows.has(row) && ends.has(end));
  }

  /** A marked cell to begin with. */
  get first() {
    const { rows, ends } = this.blocks[0];
    return { row: Math.min(...rows), end: Math.min(...ends) };
  }
}

/**
 * The marks of both charts. blocks: what the server sends, { of, firstRow, lastRow, firstEnd, lastEnd }, rows of the motif from 1 and of the
 * piece by their printed number, ends from 0; map: the piece.
 */
export function marksOf(blocks, map, motif) {
  const rowOfNumber = new Map(map.numbers.map((number, row) => [number, row]));
  const inMotif = [];
  const inPiece = [];
  for (const block of blocks) {
    const ends = span(block.firstEnd, block.lastEnd);
    if (block.of === 'motif') {
      const rows = new Set(span(block.firstRow - 1, block.lastRow - 1));
      inMotif.push({ rows, ends: new Set(ends) });
      inPiece.push(inPieceOf(rows, new Set(ends), map));
    } else {
      const rows = span(block.firstRow, block.lastRow).map(number => rowOfNumber.get(number)).filter(row => row !== undefined);
      inPiece.push({ rows: new Set(rows), ends: new Set(ends) });
      inMotif.push(inMotifOf(rows, ends, map));
    }
  }
  return { motif: new Marks(inMotif.map(block => within(block, motif))), piece: new Marks(inPiece) };
}

function inPieceOf(rows, ends, map) {
  const shown = [];
  map.readingOf.forEach((reading, row) => {
    if (rows.has(map.readings[reading][0])) {
      shown.push(row);
    }
  });
  return { rows: new Set(shown), ends: new Set(span(0, map.ends - 1).filter(column => ends.has(map.motifEnd(column)))) };
}

function inMotifOf(rows, ends, map) {
  const sources = rows.map(row => map.readings[map.readingOf[row]][0]).filter(source => source >= 0);
  return { rows: new Set(sources), ends: new Set(ends.map(column => map.motifEnd(column)).filter(end => end !== null)) };
}

function within({ rows, ends }, motif) {
  return { rows: new Set([...rows].filter(row => row < motif.rows)), ends: new Set([...ends].filter(end => end < motif.ends)) };
}

function span(first, last) {
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, at) => first + at);
}
