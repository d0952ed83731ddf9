// The drawing part of the editor page: ties the parts together and is what the server talks to.

import { ChartView } from './chart-view.js';
import { goneClients, holdClient, newClient } from './clients.js';
import { Desk } from './desk.js';
import { Drafts } from './drafts.js';
import { Echo } from './echo.js';
import { Fields } from './fields.js';
import { cellThatFits } from './geometry.js';
import { Grid } from './grid.js';
import { Keyboard } from './keyboard.js';
import { marksOf } from './marks.js';
import { MotifChart } from './motif-chart.js';
import { Outbox } from './outbox.js';
import { PieceChart } from './piece-chart.js';
import { PieceMap } from './piece-map.js';
import { Pointer } from './pointer.js';
import { RefusedList } from './refused-list.js';
import { savingState } from './saving.js';
import { Sender } from './sender.js';

const MOST_ZOOM = 4;
const line = { connected: true };
const client = newClient();
let editor = null;

// a stroke under way is drawn, whatever happens to the page
addEventListener('pagehide', () => editor?.desk.end());

/** Called by the page's start when the connection goes and comes. */
export function connectionChanged(connected) {
  line.connected = connected;
  editor?.connectionChanged();
}

/** Called by the server: shows the pattern and lets it be drawn on. */
export function open(root, server, pattern, update) {
  holdClient(client);
  editor = new Editor(root, server, pattern, update);
  return editor;
}

export function clientId() {
  return client;
}

/** Whether anything that was done on this page is in the store. */
export function hasSaved() {
  return editor?.hasSaved ?? false;
}

/** Whether the browser keeps every stroke that is not in the store; those that it had no room for are tried once more. */
export function isKept() {
  editor?.desk.end();
  return editor?.outbox.keepAll() ?? true;
}

class Editor {
  constructor(root, server, pattern, update) {
    this.root = root;
    this.zoom = 0;
    this.hasSaved = false;
    this.server = server;
    this.outbox = new Outbox(localStorage, pattern, client);
    this.sender = new Sender(
      this.outbox,
      (entry, after) => server.invokeMethodAsync('Stroke', entry.client, entry.sequence, after, entry.text),
      () => this.showSaving());
    const { motif } = update;
    this.desk = new Desk(new Echo(update.revision, Grid.fromBase64(motif.rows, motif.ends, motif.cells)), this.sender, {
      cell: (row, end) => this.paintCell(row, end),
      all: () => this.paint(),
      resized: () => this.resized(),
    });
    this.refused = new RefusedList(root.querySelector('[data-refused]'), this.outbox);
    this.fields = new Fields(
      root.querySelectorAll('[data-fields]'),
      new Drafts(localStorage, pattern),
      () => server.invokeMethodAsync('Settle'),
      () => this.showSaving());
    this.openMotif();
    this.showPiece(update);
    root.querySelectorAll('[data-zoom]').forEach(button => button.addEventListener('click', () => this.zoomBy(Number(button.dataset.zoom))));
    root.addEventListener('click', event => this.leave(event));
    this.onKey = event => this.key(event);
    document.addEventListener('keydown', this.onKey);
    this.onTouch = () => this.unmark();
    document.addEventListener('pointerdown', this.onTouch);
    addEventListener('storage', () => this.refused.show());
    if (line.connected) {
      this.sender.connect();
    }
    this.fields.open(line.connected);
    this.fields.restore();
    goneClients(this.outbox.others()).then(gone => this.sender.adopt(gone));
  }

  openMotif() {
    const stage = this.root.querySelector('[data-motif]');
    const say = this.root.querySelector('[data-say]');
    this.motifView = new ChartView(stage, new MotifChart(this.desk), ({ ends }, width) => zoomed(cellThatFits(ends, width, 14, 40), this.zoom));
    this.keyboard = new Keyboard(stage, this.motifView, this.desk, text => { say.textContent = text; });
    const { desk, keyboard } = this;
    this.pointer = new Pointer(this.motifView, {
      begin: cell => {
        keyboard.place(cell);
        return desk.begin(cell);
      },
      extend: cells => desk.extend(cells),
      end: () => desk.end(),
      takeBack: () => desk.takeBack(),
    });
  }

  /** Larger or smaller cells, in steps; what was at the bottom left stays there. */
  zoomBy(steps) {
    this.zoom = Math.max(-MOST_ZOOM, Math.min(MOST_ZOOM, this.zoom + steps));
    this.motifView.layOut();
  }

  /** Called by the server. */
  receive(update) {
    this.hasSaved ||= update.settled.some(one => one.outcome === 'saved');
    if (update.motif || update.piece || update.rows.length > 0 || update.settled.length > 0) {
      this.unmark();
    }
    this.desk.receive(update);
    this.showPiece(update);
    this.refused.show();
    this.showSaving();
  }

  /** Called by the server: points at cells in both charts until the next touch, and brings the first of them into sight. */
  mark(blocks) {
    const marks = marksOf(blocks, this.pieceView.chart.map, this.desk.motif);
    this.motifView.chart.marks = marks.motif.isEmpty ? null : marks.motif;
    this.pieceView.chart.marks = marks.piece.isEmpty ? null : marks.piece;
    this.paint();
    const marked = [this.motifView, this.pieceView].filter(view => view.chart.marks);
    marked.forEach(view => view.bringIntoSight(view.chart.marks.first));
    if (!marked.some(view => view.isInWindow(view.chart.marks.first))) {
      marked[0]?.goTo();
    }
    this.root.dataset.marked = String(marked.length > 0);
  }

  unmark() {
    if (this.motifView.chart.marks || this.pieceView?.chart.marks) {
      this.motifView.chart.marks = null;
      this.pieceView.chart.marks = null;
      this.paint();
      this.root.dataset.marked = 'false';
    }
  }

  showPiece({ piece, bars }) {
    this.motifView.chart.bars = bars;
    if (piece) {
      const chart = new PieceChart(new PieceMap(piece), this.desk);
      chart.bars = bars;
      if (this.pieceView) {
        this.pieceView.chart = chart;
        this.pieceView.layOut();
      } else {
        this.pieceView = new ChartView(this.root.querySelector('[data-piece]'), chart, ({ ends }, width) => cellThatFits(ends, width, 8, 22));
      }
      this.motifView.paint();
    }
  }

  paintCell(row, end) {
    this.motifView.paintCell(row, end);
    for (const place of this.pieceView.chart.map.placesOf(row, end)) {
      this.pieceView.paintCell(place.row, place.column);
    }
  }

  paint() {
    this.motifView.paint();
    this.pieceView.paint();
  }

  resized() {
    this.pointer.giveUp();
    this.motifView.layOut();
    this.keyboard.resized();
  }

  key(event) {
    if (event.key === 'Escape') {
      this.pointer.giveUp();
      this.unmark();
    }
    const letter = event.key.toLowerCase();
    if (!(event.ctrlKey || event.metaKey) || event.altKey || event.target.closest('input, textarea, select')) {
      return;
    }
    const step = letter === 'y' || (letter === 'z' && event.shiftKey) ? 'Redo' : letter === 'z' ? 'Undo' : null;
    if (step) {
      event.preventDefault();
      this.fields.ask(() => this.server.invokeMethodAsync(step));
    }
  }

  connectionChanged() {
    this.fields.open(line.connected);
    if (line.connected) {
      this.server.invokeMethodAsync('Resync').then(() => this.sender.connect(), () => { });
    } else {
      this.sender.disconnect();
    }
    this.showSaving();
  }

  showSaving() {
    if (!this.fields) {
      return;
    }
    const { sender, fields } = this;
    const { kind, text } = savingState({
      signedOut: sender.signedOut || fields.signedOut,
      connected: line.connected,
      waiting: sender.waiting,
      unsent: fields.unsent.size > 0,
      kept: sender.kept && fields.kept,
      failing: sender.failing || fields.failing,
      fields: fields.busy,
      typing: fields.typing,
    });
    this.isSaved = kind === 'saved';
    this.goOnward();
    const place = this.root.querySelector('[data-saving]');
    if (place.dataset.saving !== kind || place.textContent !== text) {
      place.dataset.saving = kind;
      place.textContent = text;
    }
  }

  /** Leaves for another page once everything is saved: what comes next is made from what the store has. */
  leave(event) {
    const link = event.target.closest('a[data-onward]');
    if (link && !this.isSaved) {
      event.preventDefault();
      event.stopPropagation();
      this.onward = link.href;
    }
  }

  goOnward() {
    if (this.onward && this.isSaved) {
      location.assign(this.onward);
    }
  }

  close() {
    document.removeEventListener('keydown', this.onKey);
    document.removeEventListener('pointerdown', this.onTouch);
    this.motifView.close();
    this.pieceView?.close();
    editor = null;
  }
}

function zoomed(cell, steps) {
  return Math.round(cell * 1.25 ** steps);
}
