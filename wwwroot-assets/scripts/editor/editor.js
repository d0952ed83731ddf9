// The drawing part of the editor page: ties the parts together and is what the server talks to.

import { boxOf, boxWords, countOf, endsOf, rowsOf, wholeBox } from './box.js';
import { CellGrid } from './cell-grid.js';
import { ChartView } from './chart-view.js';
import { goneClients, holdClient, newClient } from './clients.js';
import { Copied } from './copied.js';
import { Desk } from './desk.js';
import { Drafts } from './drafts.js';
import { Echo } from './echo.js';
import { Fields } from './fields.js';
import { cellThatFits } from './geometry.js';
import { Grid } from './grid.js';
import { Hand } from './hand.js';
import { Keyboard } from './keyboard.js';
import { marksOf } from './marks.js';
import { KEY_LIST } from './keys.js';
import { MotifChart } from './motif-chart.js';
import { Overlay } from './overlay.js';
import { Outbox } from './outbox.js';
import { PieceChart } from './piece-chart.js';
import { PieceMap } from './piece-map.js';
import { Pointer } from './pointer.js';
import { RefusedList } from './refused-list.js';
import { savingState } from './saving.js';
import { Sayer } from './sayer.js';
import { Sender } from './sender.js';
import { chosenAfter, shapeRequest, ShapePanel } from './shape-panel.js';
import { Ways } from './ways.js';

const MOST_ZOOM = 4;
const line = { connected: true, ended: false };
const client = newClient();
let editor = null;

// a stroke under way is drawn, whatever happens to the page
addEventListener('pagehide', () => editor?.hand.leave());

/** Called by the page's start when the connection goes and comes. */
export function connectionChanged(connected) {
  line.connected = connected;
  editor?.connectionChanged();
}

/** Whether the maker's session has ended: the page has no other half any more, and stays as it is. */
export function hasEnded() {
  return line.ended;
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
  editor?.hand.leave();
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
    const [where, said] = ['[data-where]', '[data-say]'].map(name => this.root.querySelector(name));
    const sayer = new Sayer(text => { said.textContent = text; });
    this.say = text => sayer.say(text);
    this.copied = new Copied(localStorage);
    this.motifView = new ChartView(stage, new MotifChart(this.desk), ({ ends }, width) => zoomed(cellThatFits(ends, width, 14, 40), this.zoom));
    this.motifView.onHand = isNear => { this.root.dataset.hand = isNear ? 'near' : 'away'; };
    this.ways = new Ways(this.root.querySelector('[data-ways]'), name => this.wayChanged(name));
    this.hand = new Hand(this.desk, this.ways, () => this.copied.piece, {
      chosen: () => this.showChosen(),
      corner: cell => this.showCorner(cell),
      moved: (box, by) => this.shape('move', by, box),
    });
    const { hand } = this;
    this.overlay = new Overlay(this.motifView, hand, this.ways);
    this.root.querySelector('[data-corner]').addEventListener('click', () => this.hand.giveUp());
    const tell = { where: text => { where.textContent = text; }, say: text => { this.say(text); where.textContent = text; } };
    this.keyboard = new Keyboard(stage, this.motifView, this.hand, this.ways, new CellGrid(stage, this.motifView, this.hand), tell, {
      copy: () => this.copy(),
      putDown: () => this.putDown(this.keyboard.at),
      carry: (box, by) => this.shape('move', by, box),
    });
    this.pointer = new Pointer(this.motifView, {
      press: cell => {
        const pressed = this.hand.press(cell);
        this.keyboard.place(cell);
        return pressed;
      },
      drag: (last, cell) => this.hand.drag(last, cell),
      release: () => this.hand.release(),
      giveUpPress: () => this.hand.giveUpPress(),
      get isTapped() { return hand.isTapped; },
    }, steps => this.zoomBy(steps));
    this.shapes = new ShapePanel(this.root.querySelector('[data-shape]'), this.hand, (act, by) => this.act(act, by));
    showKeys(this.root.querySelector('[data-keys]'));
    this.showChosen();
  }

  wayChanged(name) {
    if (name === 'way') {
      this.hand.giveUp();
      if (this.ways.way === 'choose') {
        this.shapes.open();
      }
    }
    this.overlay.show();
  }

  showChosen() {
    this.shapes?.show();
    this.overlay?.show();
  }

  showCorner(cell) {
    this.root.querySelector('[data-corner]').hidden = !cell;
    this.overlay.show();
    this.showSaving();
    if (cell) {
      this.say(`first corner: ${boxWords(boxOf(cell))}. Now the other corner.`);
    }
  }

  /** Called by the server: the first row and end that are chosen, and how many of each; null when nothing is. */
  chosenCells() {
    const { chosen } = this.hand;
    return chosen && [chosen.row, chosen.end, rowsOf(chosen), endsOf(chosen)];
  }

  /** What a button of the shape panel says. */
  act(name, by) {
    const { chosen } = this.hand;
    switch (name) {
      case 'copy': return this.copy();
      case 'putDown': return this.putDown({ row: chosen.row, end: chosen.end });
      case 'coverWith': return this.coverWith(chosen);
      case 'clear': return this.hand.markChosen({ row: chosen.row, end: chosen.end }, 'under');
      default: return this.shape(name, by);
    }
  }

  coverWith(box) {
    const { piece } = this.copied;
    if (piece) {
      this.hand.coverWith(box, piece);
    }
    this.tell([piece ? `Covered: ${boxWords(box)}.` : 'Nothing is copied yet.']);
  }

  /** Asks the server to change the shape; what was chosen stays chosen where it goes. */
  async shape(what, by, chosen = this.hand.chosen) {
    this.hand.giveUp();
    let answer = { done: false, words: ['This is not done: there is no connection. Try again when it is back.'] };
    await this.fields.ask(async () => { answer = await this.server.invokeMethodAsync('Shape', shapeRequest(what, chosen, by)) ?? answer; });
    this.hand.choose(answer.done ? chosenAfter(what, chosen, by) : chosen);
    this.tell(answer.words);
  }

  tell(words) {
    this.shapes.say(words);
    this.say(words.join(' '));
  }

  /** Copies what is chosen, or the whole motif. */
  copy() {
    const box = this.hand.chosen ?? wholeBox(this.desk.motif);
    this.copied.keep(this.desk.motif.part(box));
    this.tell([`Copied: ${countOf(box)}.`]);
  }

  putDown(cell) {
    const { piece } = this.copied;
    if (!piece) {
      this.tell(['Nothing is copied yet.']);
      return;
    }
    const box = this.hand.putDown(cell, piece);
    this.hand.choose(box);
    this.tell([`Put down: ${boxWords(box)}.`]);
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
    this.hand.resized();
    this.motifView.layOut();
    this.keyboard.resized();
  }

  key(event) {
    if (event.key === 'Escape') {
      this.pointer.giveUp();
      this.unmark();
      this.hand.giveUp();
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

  /** Called by the server, and the last thing that it says: the maker is signed out. What is drawn from now on is kept in the browser. */
  signedOut() {
    line.ended = true;
    this.sender.signedOut = true;
    this.sender.disconnect();
    this.fields.open(false);
    // nobody is left on the server to follow a link
    document.querySelectorAll('a[href]:not([target])').forEach(link => { link.target = '_top'; });
    this.showSaving();
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
      cornered: this.hand.corner !== null && this.ways.way !== 'choose',
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
    if (link) {
      this.hand.leave();
    }
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

function showKeys(list) {
  for (const [keys, words] of KEY_LIST) {
    const line = list.appendChild(document.createElement('div'));
    line.appendChild(document.createElement('dt')).textContent = keys;
    line.appendChild(document.createElement('dd')).textContent = words;
  }
}
