// Keeps the screen on where the browser can and the weaver asks for it; a refusal changes nothing but the tick.

export function keepAwake(choice, tick) {
  if (!navigator.wakeLock) { return; }
  choice.hidden = false;
  let lock = null;
  const ask = async () => {
    try { lock = await navigator.wakeLock.request('screen'); } catch { tick.checked = false; }
  };
  tick.addEventListener('change', () => {
    if (tick.checked) { ask(); } else { lock?.release(); lock = null; }
  });
  // the browser lets go when the page is out of sight
  document.addEventListener('visibilitychange', () => {
    if (tick.checked && document.visibilityState === 'visible') { ask(); }
  });
}
