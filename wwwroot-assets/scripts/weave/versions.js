// Minds the versions: whoever is in the middle of an earlier one is told what changed, once, and asked. Without script the page of
// changes does the same.

import { fill } from './piece.js';
import { jumpTo, keyOf, runsWoven } from './place.js';

const isBegun = place => place.woven > 0 || place.step > 0;

/** desk: { piece, place(), kept(key), keep(place), keepAt(key, place), go(place), isOneRow(), isAsked }. */
export function minding(desk) {
  const { version, newest } = desk.piece.data;
  if (version < newest) {
    mindEarlier(desk);
  } else if (!desk.isAsked && desk.kept() === null) {
    mindNewest(desk);
  }
}

// the page of an earlier version: the place is here
function mindEarlier(desk) {
  const { piece, place, go } = desk;
  const { version, newest } = piece.data;
  const ask = () => askToMove(desk, version, { woven: place().woven, run: runsWoven(piece, place()) }, found => [
    ...moveTo(found, () => { location.href = `${along(piece, newest)}#row=${found.row}${found.run > 0 ? `&run=${found.run}` : ''}`; }),
    { form: 'stay', take: () => { } },
  ]);
  const link = document.getElementById('changes');
  link.addEventListener('click', async event => {
    link.href = `${link.href.split('&')[0]}&woven=${place().woven}`;
    if (desk.isOneRow()) {
      event.preventDefault();
      if (!await ask()) { location.href = link.href; }
    }
  });
  if (isBegun(place()) && place().told < newest && !desk.isAsked) {
    ask().then(isShown => { if (isShown) { go({ ...place(), told: newest }); } });
  }
}

// the page of the newest version, which is not begun: the place is that of the last version that was
function mindNewest(desk) {
  const { piece, place, go, keep, kept } = desk;
  const { pattern, newest } = piece.data;
  for (let from = newest - 1; from > 0; from--) {
    const key = keyOf(pattern, from), earlier = readEarlier(kept(key));
    if (earlier) {
      askToMove(desk, from, earlier, found => [
        ...moveTo(found, () => go(jumpTo(piece, place(), found.row, found.run))),
        // and is not asked again there
        { form: 'stay', take: () => { desk.keepAt(key, { ...earlier.kept, told: newest }); location.href = along(piece, from); } },
        { form: 'anew', take: () => keep(place()) },
      ]);
      return;
    }
  }
}

function readEarlier(text) {
  let one = null;
  try { one = JSON.parse(text); } catch { /* whatever stands there is no place */ }
  return Number.isInteger(one?.woven) && Number.isInteger(one.step) && isBegun(one) ? { woven: one.woven, run: Number.isInteger(one.run) ? one.run : 0, kept: one } : null;
}

const along = (piece, number) => fill(piece.data.versions.along, { number });

const moveTo = (found, take) => found.isDone ? [] : [{ form: 'move', main: true, take }];

// Says whether it could ask: the moves may be out of reach, and whoever has woven all has nothing to move.
async function askToMove({ piece }, from, place, choose) {
  const moving = await import('./moving.js');
  const to = piece.data.newest;
  const moves = await moving.fetchMoves(piece.data.versions, from, to);
  if (!moves || place.woven < 0 || place.woven >= moves.sides.length - 1) { return false; }
  moving.ask(document.getElementById('moving'), { piece, moves, place, from, to, choose });
  return true;
}
