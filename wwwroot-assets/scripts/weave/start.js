import { Piece } from './piece.js';
import { back, forward, goOnAfter, isDone, jumpTo, keyOf, read, toKeep, wayOf } from './place.js';
import { View } from './view.js';
import { keepAwake } from './awake.js';
import { askLost } from './lost.js';
import { minding } from './versions.js';

const byId = id => document.getElementById(id);
const piece = new Piece(JSON.parse(byId('piece').textContent));
const view = new View(piece);
const key = keyOf(piece.data.pattern, piece.data.version);
// the wish to keep the screen on is the device's, whatever is woven
const AWAKE = 'patternshop.awake';

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

function draw() {
  if (due) {
    due = false;
    view.show(place);
  }
}

// steps count at once, however fast they come; the picture follows with the next frame
function show() {
  if (!due) {
    due = true;
    requestAnimationFrame(draw);
  }
}

// Keys and pedals go on stepping when something else was used meanwhile. The button must be drawn as one that can be pressed.
function toButton() {
  draw();
  byId(isDone(piece, place) ? 'back' : 'next').focus();
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

// after a choice of the weaver's, not when the page begins
function turnTo(list) {
  showList(list);
  if (list) { byId('one-row').focus(); } else { toButton(); }
}

function showReport() {
  const report = byId('report');
  if (report) {
    const row = Math.min(place.woven + 1, piece.rows);
    report.href = `${report.href.split('?')[0]}?row=${row}`;
    report.textContent = piece.reportText(row);
  }
}

// Keys belong to whatever control has the focus, unless it is one of the two that step. What is longer than its place keeps those that scroll.
const SCROLLING = new Set(['ArrowUp', 'ArrowDown', 'PageUp', 'PageDown']);
const isOwn = ({ target, key }) => target.closest?.('button:not(#next, #back), a, input, select, dialog') || (SCROLLING.has(key) && target.closest?.('.scrolls, .own'));
const weaving = () => document.documentElement.classList.contains('weaving') && !document.querySelector('dialog[open]');

addEventListener('keydown', event => {
  if (!weaving() || event.ctrlKey || event.altKey || event.metaKey) { return; }
  const way = wayOf(event);
  const onBack = event.target.closest?.('#back') && (event.key === 'Enter' || event.key === ' ');
  if (way === 0 || isOwn(event)) { return; }
  event.preventDefault();
  if (!event.repeat) { step(onBack ? -1 : way); }
});
// a browser may click the focused button when the space bar comes up, although its going down was taken
addEventListener('keyup', event => {
  if (event.key === ' ' && weaving() && event.target.closest?.('#next, #back')) { event.preventDefault(); }
});

byId('next').addEventListener('click', () => step(1));
byId('back').addEventListener('click', event => {
  step(-1);
  // a tap, after which a pedal that sends Enter would go on going back
  if (event.detail > 0) { toButton(); }
});
// beside a text that scrolls the button is only as high as its word; a tap is a step all the same, unless it has selected words
const selected = () => String(getSelection());
let selectedBefore = '';
byId('runs').addEventListener('pointerdown', () => { selectedBefore = selected(); });
byId('runs').addEventListener('click', () => {
  if (selected() === '' || selected() === selectedBefore) {
    step(1);
    toButton();
  }
});
byId('more').addEventListener('click', () => {
  byId('jump-row').value = String(Math.min(place.woven + 1, piece.rows));
  byId('by-rows').checked = place.byRows;
  showReport();
  byId('options').showModal();
});
byId('jump').addEventListener('submit', () => go(jumpTo(piece, place, Number(byId('jump-row').value))));
byId('by-rows').addEventListener('change', event => go({ ...place, byRows: event.target.checked }));
byId('show-rows').addEventListener('click', () => { byId('options').close(); turnTo(true); });
byId('lost-open').addEventListener('click', () => {
  byId('options').close();
  askLost(piece, place.woven, row => go(goOnAfter(place, row)));
});
// the browser gives the focus back to the button that opened a dialog, where keys would open it again; a dialog that leads to another closes too
for (const dialog of document.querySelectorAll('dialog')) {
  dialog.addEventListener('close', () => { if (weaving()) { toButton(); } });
}
byId('one-row').addEventListener('click', () => turnTo(false));
addEventListener('resize', show);
addEventListener('storage', event => {
  if (event.key === key) { place = read(piece, event.newValue); show(); }
});

const asked = /^#row=(\d{1,6})(?:&run=(\d{1,6}))?$/.exec(location.hash);
if (asked) {
  go(jumpTo(piece, place, Number(asked[1]), Number(asked[2] ?? 0)));
  history.replaceState(null, '', location.pathname);
}
keepAwake({
  tick: byId('awake'),
  missing: byId('awake-missing'),
  tell: isRefused => {
    for (const id of ['awake-refused', 'dark']) { byId(id).hidden = !isRefused; }
    // there is more or less room for the picture
    show();
  },
  wish: { read: () => kept(AWAKE) === 'true', write: wish => keepAt(AWAKE, wish) },
});
showList(false);
if (piece.data.versions) {
  minding({ piece, place: () => place, kept, keep, keepAt, go, isOneRow: weaving, isAsked: asked !== null });
}
