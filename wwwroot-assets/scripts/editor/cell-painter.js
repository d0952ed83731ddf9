// Draws cells, rules and numbers of a chart on a canvas, in device pixels. A picture here is { context, geometry, scroll,
// view, theme, chart }; a chart answers isOver(row, end), rowName, endName, isBold and where stronger rules lie.

const GAP = 0.08;
const UNDER_LINE = 0.11;
const OVER_BAR = 0.42;
const UNDER_BAR = 0.18;
const THICK = [0.5, 1.4, 2.4];

export function paintAll(picture) {
  const { context, view, theme } = picture;
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.fillStyle = theme.ground;
  context.fillRect(0, 0, view.width, view.height);
  inCells(picture, () => {
    const seen = picture.geometry.visible(picture.scroll, view);
    paintBlock(picture, seen);
  });
  paintNumbers(picture);
}

/** Paints one cell again, with the rules around it. */
export function paintCell(picture, row, end) {
  const seen = picture.geometry.visible(picture.scroll, picture.view);
  if (row >= seen.firstRow && row <= seen.lastRow && end >= seen.firstEnd && end <= seen.lastEnd) {
    inCells(picture, () => paintBlock(picture, { firstRow: row, lastRow: row, firstEnd: end, lastEnd: end }));
  }
}

function inCells({ context, geometry, view }, paint) {
  context.save();
  context.beginPath();
  context.rect(geometry.left - 1, 0, view.width - geometry.left - geometry.right + 2, view.height - geometry.below + 1);
  context.clip();
  paint();
  context.restore();
}

function paintBlock(picture, block) {
  const { context, geometry, scroll, theme, chart } = picture;
  const { cell } = geometry;
  const left = geometry.x(block.firstEnd) - scroll.x;
  const top = geometry.y(block.lastRow) - scroll.y;
  const width = (block.lastEnd - block.firstEnd + 1) * cell;
  const height = (block.lastRow - block.firstRow + 1) * cell;
  context.fillStyle = theme.paper;
  context.fillRect(left, top, width, height);
  const glyphs = glyphsOf(chart.bars, cell);
  const over = new Path2D();
  const under = new Path2D();
  for (let row = block.firstRow; row <= block.lastRow; row++) {
    const y = geometry.y(row) - scroll.y;
    for (let end = block.firstEnd; end <= block.lastEnd; end++) {
      const x = geometry.x(end) - scroll.x;
      const [path, glyph] = chart.isOver(row, end) ? [over, glyphs.over] : [under, glyphs.under];
      path.rect(x + glyph.x, y + glyph.y, glyph.width, glyph.height);
    }
  }
  context.fillStyle = theme.over;
  context.fill(over);
  context.fillStyle = theme.under;
  context.fill(under);
  paintRules(picture, block);
  if (chart.marks) {
    paintMarks(picture, block);
  }
  if (chart.cursor && within(block, chart.cursor)) {
    paintCursor(picture, chart.cursor);
  }
}

function glyphsOf(bars, cell) {
  const gap = Math.max(1, Math.round(cell * GAP));
  const line = Math.max(1, Math.round(cell * (bars ? UNDER_BAR : UNDER_LINE)));
  const under = { x: Math.floor((cell - line) / 2), y: gap, width: line, height: cell - 2 * gap };
  if (!bars) {
    return { under, over: { x: gap, y: gap, width: cell - 2 * gap, height: cell - 2 * gap } };
  }
  const bar = Math.max(2, Math.round(cell * OVER_BAR));
  return { under, over: { x: gap, y: Math.floor((cell - bar) / 2), width: cell - 2 * gap, height: bar } };
}

// Faint rules between cells, stronger ones where people count: after every fifth, and where the chart says so. Each goes on
// a little, so that a cell painted alone mends the crossings that it touched.
function paintRules({ context, geometry, scroll, theme, chart }, block) {
  const { cell, ratio } = geometry;
  const left = geometry.x(block.firstEnd) - scroll.x;
  const top = geometry.y(block.lastRow) - scroll.y;
  const right = left + (block.lastEnd - block.firstEnd + 1) * cell;
  const low = top + (block.lastRow - block.firstRow + 1) * cell;
  const more = Math.max(1, Math.round(ratio * THICK.at(-1)));
  const rule = (strength, vertical, at) => {
    const thick = Math.max(1, Math.round(ratio * THICK[strength]));
    const from = at - Math.floor(thick / 2);
    context.fillStyle = [theme.faint, theme.five, theme.border][strength];
    if (vertical) {
      context.fillRect(from, top - more, thick, low - top + 2 * more);
    } else {
      context.fillRect(left - more, from, right - left + 2 * more, thick);
    }
  };
  for (const strength of [0, 1, 2]) {
    for (let end = block.firstEnd; end <= block.lastEnd + 1; end++) {
      if (chart.endRule(end) === strength) {
        rule(strength, true, geometry.x(end) - scroll.x);
      }
    }
    for (let row = block.firstRow; row <= block.lastRow + 1; row++) {
      if (chart.rowRule(row) === strength) {
        rule(strength, false, geometry.y(row) - scroll.y + cell);
      }
    }
  }
}

// A line round what is marked, drawn within its cells, and a lighter one inside it, so that it shows on dark and on light.
function paintMarks({ context, geometry, scroll, theme, chart }, block) {
  const { cell, ratio } = geometry;
  const thick = Math.max(2, Math.min(Math.round(cell / 4), Math.round(ratio * 3)));
  for (let row = block.firstRow; row <= block.lastRow; row++) {
    for (let end = block.firstEnd; end <= block.lastEnd; end++) {
      if (chart.marks.has(row, end)) {
        const x = geometry.x(end) - scroll.x;
        const y = geometry.y(row) - scroll.y;
        context.fillStyle = theme.paper;
        paintSides(context, chart.marks, { row, end }, { x, y, cell }, thick + Math.max(1, Math.round(ratio)));
        context.fillStyle = theme.mark;
        paintSides(context, chart.marks, { row, end }, { x, y, cell }, thick);
      }
    }
  }
}

function paintSides(context, marks, { row, end }, { x, y, cell }, thick) {
  const sides = [
    [marks.has(row + 1, end), x, y, cell, thick],
    [marks.has(row - 1, end), x, y + cell - thick, cell, thick],
    [marks.has(row, end - 1), x, y, thick, cell],
    [marks.has(row, end + 1), x + cell - thick, y, thick, cell],
  ];
  for (const [goesOn, left, top, width, height] of sides) {
    if (!goesOn) {
      context.fillRect(left, top, width, height);
    }
  }
}

function paintCursor({ context, geometry, scroll, theme }, { row, end }) {
  const thick = Math.max(2, Math.round(geometry.ratio * 2.5));
  const x = geometry.x(end) - scroll.x;
  const y = geometry.y(row) - scroll.y;
  for (const [inset, colour] of [[thick / 2, theme.cursor], [thick * 1.5, theme.paper]]) {
    context.lineWidth = thick;
    context.strokeStyle = colour;
    context.strokeRect(x + inset, y + inset, geometry.cell - 2 * inset + 1, geometry.cell - 2 * inset + 1);
  }
}

/** Numbers and names round the cells; they stay while the cells scroll below them. */
export function paintNumbers(picture) {
  const { context, geometry, view, theme } = picture;
  context.fillStyle = theme.ground;
  const right = view.width - geometry.right;
  const foot = view.height - geometry.below;
  context.fillRect(0, 0, geometry.left - 1, view.height);
  context.fillRect(right + 2, 0, geometry.right, view.height);
  context.fillRect(0, foot + 2, view.width, geometry.below);
  const seen = geometry.visible(picture.scroll, view);
  for (let row = seen.firstRow; row <= seen.lastRow; row++) {
    paintRowName(picture, row);
  }
  for (let end = seen.firstEnd; end <= seen.lastEnd; end++) {
    paintEndName(picture, end);
  }
  picture.chart.paintSide?.(picture, seen);
}

function paintRowName(picture, row) {
  const { geometry, scroll, view, chart } = picture;
  const middle = geometry.y(row) - scroll.y + geometry.cell / 2;
  if (middle < 0 || middle > view.height - geometry.below || !chart.namesRow(row, geometry.cell / geometry.ratio)) {
    return;
  }
  write(picture, chart.rowName(row), geometry.left - 7 * geometry.ratio, middle, 'right', chart.isBoldRow(row));
}

function paintEndName(picture, end) {
  const { geometry, scroll, view, chart } = picture;
  const middle = geometry.x(end) - scroll.x + geometry.cell / 2;
  if (middle < geometry.left || middle > view.width - geometry.right || !chart.namesEnd(end, geometry.cell / geometry.ratio)) {
    return;
  }
  write(picture, chart.endName(end), middle, view.height - geometry.below + 11 * geometry.ratio, 'center', chart.isBoldEnd(end));
}

export function write({ context, geometry, theme }, text, x, y, align, bold, size = 12.5) {
  context.font = `${bold ? 700 : 400} ${size * geometry.ratio}px ${theme.font}`;
  context.fillStyle = bold ? theme.ink : theme.soft;
  context.textAlign = align;
  context.textBaseline = 'middle';
  context.fillText(text, x, y);
}

function within(block, { row, end }) {
  return row >= block.firstRow && row <= block.lastRow && end >= block.firstEnd && end <= block.lastEnd;
}
