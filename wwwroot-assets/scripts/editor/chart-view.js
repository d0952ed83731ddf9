// A chart on the page: a canvas as large as the window through which it is seen, so that a chart of any size is painted
// in the same time. The stage scrolls; the canvas stays and paints what lies below it.

import { Geometry } from './geometry.js';
import { paintAll, paintCell, paintNumbers } from './cell-painter.js';

const COLOURS = {
  ground: '--chart-ground', paper: '--chart-paper', over: '--chart-over', under: '--chart-under', faint: '--chart-faint',
  five: '--chart-five', border: '--chart-border', ink: '--chart-ink', soft: '--chart-soft', cursor: '--chart-cursor',
  mark: '--chart-mark',
};

const STUCK = 80;
const NEAR_FRAMES = 60;

export class ChartView {
  /** stage: the scrolling element; chart: what to paint; cellFor(size, width): the side of a cell in CSS pixels. */
  constructor(stage, chart, cellFor) {
    this.stage = stage;
    this.chart = chart;
    this.cellFor = cellFor;
    this.onLayOut = () => { };
    this.onHand = () => { };
    this.sheet = stage.appendChild(document.createElement('div'));
    this.sheet.className = 'chart-sheet';
    this.canvas = this.sheet.appendChild(document.createElement('canvas'));
    this.canvas.setAttribute('aria-hidden', 'true');
    this.context = this.canvas.getContext('2d');
    this.observer = new ResizeObserver(() => this.layOut());
    this.observer.observe(stage.parentElement);
    this.scroll = { x: 0, y: 0 };
    this.painted = null;
    this.frames = 0;
    stage.addEventListener('scroll', () => {
      this.noteScroll();
      this.paint();
    }, { passive: true });
    for (const query of ['(prefers-color-scheme: dark)', '(prefers-contrast: more)', '(forced-colors: active)']) {
      matchMedia(query).addEventListener('change', () => this.layOut());
    }
    document.fonts?.ready.then(() => this.paint());
    this.layOut();
  }

  layOut() {
    const room = roomIn(this.stage.parentElement);
    if (room <= 0) {
      return;
    }
    const ratio = window.devicePixelRatio || 1;
    const gutters = this.chart.gutters(room);
    const before = this.geometry;
    this.geometry = new Geometry(this.chart, this.cellFor(this.chart, room - gutters.left - gutters.right - 2), gutters, ratio);
    this.theme = themeOf(this.stage);
    this.sizeSheet(before);
    this.sizeCanvas(ratio);
    this.paint();
    this.onLayOut();
  }

  // row 1 is in sight at first; whatever is at the bottom left afterwards stays there
  sizeSheet(before) {
    const { stage, sheet, geometry } = this;
    const growth = before ? geometry.cell / before.cell : 1;
    const low = before ? (stage.scrollHeight - stage.clientHeight - stage.scrollTop) * growth : 0;
    const across = stage.scrollLeft * growth;
    const height = Math.ceil(geometry.height);
    sheet.style.width = `${Math.ceil(geometry.width)}px`;
    sheet.style.height = `${height}px`;
    stage.style.overflowY = height > parseFloat(getComputedStyle(stage).maxHeight) ? 'scroll' : 'hidden';
    stage.scrollLeft = across;
    stage.scrollTop = stage.scrollHeight - stage.clientHeight - low;
    this.noteScroll();
  }

  // how far it is scrolled is noted and not asked at every stroke: the answer would wait for all that changed elsewhere on the page to be laid out
  noteScroll() {
    this.scroll = { x: this.stage.scrollLeft, y: this.stage.scrollTop };
  }

  sizeCanvas(ratio) {
    const { canvas, stage, geometry } = this;
    const width = Math.min(stage.clientWidth, Math.ceil(geometry.width));
    const height = Math.min(stage.clientHeight, Math.ceil(geometry.height));
    canvas.style.width = `${width}px`;
    canvas.style.height = `${height}px`;
    canvas.width = Math.round(width * ratio);
    canvas.height = Math.round(height * ratio);
  }

  get picture() {
    const { geometry, context, canvas, theme, chart } = this;
    const scroll = { x: Math.round(this.scroll.x * geometry.ratio), y: Math.round(this.scroll.y * geometry.ratio) };
    return { context, geometry, scroll, theme, chart, view: { width: canvas.width, height: canvas.height } };
  }

  paint() {
    if (this.geometry) {
      paintAll(this.picture);
    }
  }

  paintCell(row, end) {
    if (this.geometry) {
      paintCell(this.picture, row, end);
    }
  }

  paintNumbers() {
    if (this.geometry) {
      paintNumbers(this.picture);
    }
  }

  /** The cell under a pointer; it may lie outside the chart. */
  cellAt({ clientX, clientY }) {
    const { left, top } = this.place;
    return this.geometry.cellAt(clientX - left + this.scroll.x, clientY - top + this.scroll.y);
  }

  /** Whether a pointer is over the cells, not over the numbers round them. */
  isOnCells({ clientX, clientY }) {
    const box = this.place;
    const { ratio, left, right, below } = this.geometry;
    return clientX >= box.left + left / ratio && clientX < box.right - right / ratio && clientY >= box.top && clientY < box.bottom - below / ratio;
  }

  /**
   * Where the canvas is in the window. While a hand is near it is where it was painted last, which is what the hand sees: to ask
   * anew at every sample would wait for all that changed elsewhere on the page to be laid out.
   */
  get place() {
    return this.painted ?? this.canvas.getBoundingClientRect();
  }

  /** A hand is near: for some frames from now on the place is noted after each one. */
  handIsNear() {
    const follows = this.frames > 0;
    this.frames = NEAR_FRAMES;
    if (!follows) {
      this.onHand(true);
      this.follow();
    }
  }

  follow() {
    afterPaint(() => {
      this.frames--;
      this.painted = this.frames > 0 ? this.canvas.getBoundingClientRect() : null;
      if (this.painted) {
        this.noteScroll();
        this.follow();
      } else {
        this.onHand(false);
      }
    });
  }

  bringIntoSight(cell) {
    const { stage, geometry } = this;
    const to = geometry.scrollTo(cell, { x: stage.scrollLeft, y: stage.scrollTop }, { width: this.canvas.clientWidth, height: this.canvas.clientHeight });
    stage.scrollTo(to.x, to.y);
    this.noteScroll();
  }

  /** Whether a cell is in the window, below the tools that stick to its top. */
  isInWindow({ row, end }) {
    const { geometry, stage } = this;
    const box = this.canvas.getBoundingClientRect();
    const middle = box.top - stage.scrollTop + (geometry.y(row) + geometry.cell / 2) / geometry.ratio;
    const across = box.left - stage.scrollLeft + (geometry.x(end) + geometry.cell / 2) / geometry.ratio;
    return middle > STUCK && middle < innerHeight && across > 0 && across < innerWidth;
  }

  goTo() {
    this.stage.scrollIntoView({ block: 'center', behavior: matchMedia('(prefers-reduced-motion: reduce)').matches ? 'auto' : 'smooth' });
  }

  close() {
    this.observer.disconnect();
  }
}

function afterPaint(then) {
  requestAnimationFrame(() => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = then;
    port2.postMessage(null);
  });
}

function roomIn(element) {
  const { paddingLeft, paddingRight } = getComputedStyle(element);
  return element.clientWidth - parseFloat(paddingLeft) - parseFloat(paddingRight);
}

function themeOf(stage) {
  const style = getComputedStyle(stage);
  const colours = Object.entries(COLOURS).map(([name, property]) => [name, style.getPropertyValue(property).trim()]);
  return { ...Object.fromEntries(colours), font: style.fontFamily };
}
