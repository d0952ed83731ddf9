// Keeps the screen on where the browser can and the weaver asks for it. The wish is remembered on this device and asked for again on
// every page and whenever one comes back into sight, for the browser lets go when it is out of sight. A refusal is told and changes no wish.

/**
 * `tick` is the choice, `missing` what is told where the browser cannot; `tell` is told whether it could and does not; `wish` reads
 * and writes what is remembered.
 */
export function keepAwake({ tick, missing, tell, wish }) {
  const { wakeLock } = navigator;
  if (!wakeLock) {
    tick.disabled = true;
    missing.hidden = false;
    return;
  }

  let lock = null, asked = 0;
  const isSeen = () => document.visibilityState === 'visible';
  const hold = next => {
    const before = lock;
    lock = next;
    before?.release();
  };

  const ask = async () => {
    const mine = ++asked;
    let given = null;
    try { given = await wakeLock.request('screen'); } catch { /* told below */ }
    // meanwhile the weaver may have changed their mind
    if (mine !== asked) {
      given?.release();
      return;
    }
    hold(given);
    // devices also let go by themselves, for instance when the battery is low
    given?.addEventListener('release', () => { if (lock === given && isSeen()) { tell(true); } });
    tell(!given && isSeen());
  };
  const letGo = () => {
    asked++;
    hold(null);
    tell(false);
  };
  const askAgain = () => { if (tick.checked && isSeen()) { ask(); } };

  tick.checked = wish.read();
  tick.addEventListener('change', () => {
    wish.write(tick.checked);
    if (tick.checked) { ask(); } else { letGo(); }
  });
  document.addEventListener('visibilitychange', askAgain);
  askAgain();
}
