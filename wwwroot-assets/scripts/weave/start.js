import { Piece } from './piece.js';
import { back, forward, goOnAfter, jumpTo, keyOf, read, toKeep, wayOf } from './place.js';
import { View } from './view.js';
import { keepAwake } from './awake.js';
import { askLost } from './lost.js';
import { minding } from './versions.js';

const byId = id => document.getElementById(id);
const piece = new Piece(JSON.parse(byId('piece').textContent));
const view = new View(piece);
const key = keyOf(piece.data.pattern, piece.data.version);

function kept(from = key) {
  try { return localStorage.getItem(from); } catch { return null; }
}

// a browser that keeps nothing can still be woven from
function keepAt(at, place) {
  try { localStorage.setItem(at, JSON.stringify(place)); } catch { /* full or forbidden */ }
}

const keep = place => keepAt(key, toKeep(piece, place));

let place = read(piece, kept());
let due = false;

// steps count at once, however fast they come; the picture follows with the next frame
function show() {
  if (!due) {
    due = true;
    requestAnimationFrame(() => { due = false; view.show(place); });
  }
}

function go(to) {
  if (to !== place) {
    place = to;
    keep(place);
    show();
  }
}

const step = way => go(way > 0 ? forward(piece, place) : back(piece, place));

function showList(list) {
  document.documentElement.classList.toggle('weaving', !list);
  for (const id of ['at', 'hand', 'more', 'back']) { byId(id).hidden = list; }
  byId('list').hidden = !list;
  byId('return').hidden = !list;
  if (!list) { show(); }
}

function showReport() {
  const report = byId('report');
  if (report) {
    const row = Math.min(place.woven + 1, piece.rows);
    report.href = `${report.href.split('?')[0]}?row=${row}`;
    report.textContent = piece.reportText(row);
  }
}

// Keys belong to whatever control has the focus, unless it is one of the two that step.
const own = target => target.closest?.('#next, #back') ? null : target.closest?.('button, a, input, select, dialog');
const weaving = () => document.documentElement.classList.contains('weaving') && !document.querySelector('dialog[open]');

addEventListener('keydown', event => {
  if (!weaving() || event.ctrlKey || event.altKey || event.metaKey) { return; }
  const way = wayOf(event);
  const onBack = event.target.closest?.('#back') && (event.key === 'Enter' || event.key === ' ');
  if (way === 0 || own(event.target)) { return; }
  event.preventDefault();
  if (!event.repeat) { step(onBack ? -1 : way); }
});
// a browser may click the focused button when the space bar comes up, although its going down was taken
addEventListener('keyup', event => {
  if (event.key === ' ' && weaving() && event.target.closest?.('#next, #back')) { event.preventDefault(); }
});

byId('next').addEventListener('click', () => step(1));
byId('back').addEventListener('click', () => step(-1));
byId('more').addEventListener('click', () => {
  byId('jump-row').value = String(Math.min(place.woven + 1, piece.rows));
  byId('by-rows').checked = place.byRows;
  showReport();
  byId('options').showModal();
});
byId('jump').addEventListener('submit', () => go(jumpTo(piece, place, Number(byId('jump-row').value))));
byId('by-rows').addEventListener('change', event => go({ ...place, byRows: event.target.checked }));
byId('show-rows').addEventListener('click', () => { byId('options').close(); showList(true); });
byId('lost-open').addEventListener('click', () => {
  byId('options').close();
  askLost(piece, place.woven, row => {
    go(goOnAfter(place, row));
    // on a button that steps, once it can be pressed there, so that keys step at once
    requestAnimationFrame(() => byId(row < piece.rows ? 'next' : 'back').focus());
  });
});
byId('one-row').addEventListener('click', () => showList(false));
addEventListener('resize', show);
addEventListener('storage', event => {
  if (event.key === key) { place = read(piece, event.newValue); show(); }
});

const asked = /^#row=(\d{1,6})(?:&run=(\d{1,6}))?$/.exec(location.hash);
if (asked) {
  go(jumpTo(piece, place, Number(asked[1]), Number(asked[2] ?? 0)));
  history.replaceState(null, '', location.pathname);
}
keepAwake(byId('awake-choice'), byId('awake'));
showList(false);
if (piece.data.versions) {
  minding({ piece, place: () => place, kept, keep, keepAt, go, isOneRow: weaving, isAsked: asked !== null });
}
