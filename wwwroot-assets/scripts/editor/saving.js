// The state of saving, in words that are true: "saved" only when the store has everything that was done here.

/** facts: signedOut, connected, waiting (strokes), unsent (a change of a field), kept (whether the browser holds them), failing (the store refused to save), fields (a change of a field is on its way), typing, cornered (the first corner of a shape waits for the other one). */
export function savingState({ signedOut, connected, waiting, unsent, kept, failing, fields, typing, cornered }) {
  const open = waiting > 0 || unsent;
  const place = kept ? 'kept in this browser' : 'kept only while this page stays open';
  if (signedOut) {
    return state('stopped', open ? `signed out: not saved, ${place}` : 'signed out: nothing can be saved');
  }
  if (!connected) {
    return state('stopped', open ? `not saved yet: no connection, ${place}` : 'no connection: what you draw is kept in this browser');
  }
  if (failing) {
    return state('stopped', open ? `not saved yet: the server cannot store it now, ${place}` : 'not saved yet: the server cannot store it now');
  }
  if (open || fields) {
    return state('busy', 'saving…');
  }
  if (cornered) {
    return state('busy', 'first corner set: now the other one');
  }
  return typing ? state('busy', 'not saved yet: still typing') : state('saved', 'saved');
}

function state(kind, text) {
  return { kind, text };
}
