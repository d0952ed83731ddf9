// A chart on the page: a canvas as large as the window through which it is seen, so that a chart of any size is painted
// in the same time. The stage scrolls; the canvas stays and paints what lies below it.

import { Geometry } from './geometry.js';
import { paintAll, paintCell, paintNumbers } from './cell-painter.js';

const COLOURS = {
  ground: '--chart-ground', paper: '--chart-paper', over: '--chart-over', under: '--chart-under', faint: '--chart-faint',
  five: '--chart-five', border: '--chart-border', ink: '--chart-ink', soft: '--chart-soft', cursor: '--chart-cursor',
};

export class ChartView {
  /** stage: the scrolling element; chart: what to paint; cellFor(size, width): the side of a cell in CSS pixels. */
  constructor(stage, chart, cellFor) {
    this.stage = stage;
    this.chart = chart;
    this.cellFor = cellFor;
    this.sheet = stage.appendChild(document.createElement('div'));
    this.sheet.className = 'chart-sheet';
    this.canvas = this.sheet.appendChild(document.createElement('canvas'));
    this.canvas.setAttribute('aria-hidden', 'true');
    this.context = this.canvas.getContext('2d');
    this.observer = new ResizeObserver(() => this.layOut());
    this.observer.observe(stage.parentElement);
    stage.addEventListener('scroll', () => this.paint(), { passive: true });
    for (const query of ['(prefers-color-scheme: dark)', '(prefers-contrast: more)', '(forced-colors: active)']) {
      matchMedia(query).addEventListener('change', () => this.layOut());
    }
    document.fonts?.ready.then(() => this.paint());
    this.layOut();
  }

  layOut() {
    const ratio = window.devicePixelRatio || 1;
    const gutters = this.chart.gutters();
    const room = this.stage.parentElement.clientWidth;
    if (room === 0) {
      return;
    }
    this.geometry = new Geometry(this.chart, this.cellFor(this.chart, room - gutters.left - (gutters.right ?? 1) - 2), gutters, ratio);
    this.sheet.style.width = `${Math.ceil(this.geometry.width)}px`;
    this.sheet.style.height = `${Math.ceil(this.geometry.height)}px`;
    const width = Math.min(this.stage.clientWidth, Math.ceil(this.geometry.width));
    const height = Math.min(this.stage.clientHeight, Math.ceil(this.geometry.height));
    this.canvas.style.width = `${width}px`;
    this.canvas.style.height = `${height}px`;
    this.canvas.width = Math.round(width * ratio);
    this.canvas.height = Math.round(height * ratio);
    const style = getComputedStyle(this.stage);
    this.theme = Object.fromEntries(Object.entries(COLOURS).map(([name, property]) => [name, style.getPropertyValue(property).trim()]));
    this.theme.font = style.fontFamily;
    this.paint();
  }

  get picture() {
    const { geometry, context, canvas, theme, chart, stage } = this;
    const scroll = { x: Math.round(stage.scrollLeft * geometry.ratio), y: Math.round(stage.scrollTop * geometry.ratio) };
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
    const box = this.canvas.getBoundingClientRect();
    return this.geometry.cellAt(clientX - box.left + this.stage.scrollLeft, clientY - box.top + this.stage.scrollTop);
  }

  /** Whether a pointer is over the cells, not over the numbers round them. */
  isOnCells({ clientX, clientY }) {
    const box = this.canvas.getBoundingClientRect();
    const { ratio, left, right, below } = this.geometry;
    return clientX >= box.left + left / ratio && clientX < box.right - right / ratio && clientY >= box.top && clientY < box.bottom - below / ratio;
  }

  bringIntoSight(cell) {
    const { stage, geometry } = this;
    const to = geometry.scrollTo(cell, { x: stage.scrollLeft, y: stage.scrollTop }, { width: this.canvas.clientWidth, height: this.canvas.clientHeight });
    stage.scrollTo(to.x, to.y);
  }

  close() {
    this.observer.disconnect();
  }
}
