// Keeps the page connected without ever asking the person to do anything: tries again while the server still knows the
// page, and loads the page anew when it does not.

const PAUSES = [0, 300, 700, 1000];
const LEAST_BETWEEN_LOADS = 3000;
const LOADED = 'patternshop:loaded-anew';

export function connect(blazor, { down, up }) {
  let trying = false;

  const lost = async () => {
    if (trying) {
      return;
    }
    trying = true;
    down();
    for (let time = 0; ; time++) {
      await pause(PAUSES[Math.min(time, PAUSES.length - 1)]);
      if (await answers() && await comeBack(blazor)) {
        break;
      }
    }
    trying = false;
    up();
  };

  return blazor.start({
    circuit: {
      reconnectionHandler: { onConnectionDown: lost, onConnectionUp: () => { } },
    },
  }).catch(lost);
}

// the circuit is gone for good when the server answers and does not know it
async function comeBack(blazor) {
  try {
    if (await blazor.reconnect()) {
      return true;
    }
  } catch {
    if (!await answers()) {
      return false;
    }
  }
  await loadAnew();
  return false;
}

/** Loads the page again, not more often than every few seconds. */
export async function loadAnew() {
  const since = Date.now() - Number(sessionStorage.getItem(LOADED) ?? 0);
  await pause(Math.max(0, LEAST_BETWEEN_LOADS - since));
  sessionStorage.setItem(LOADED, String(Date.now()));
  location.reload();
  await new Promise(() => { });
}

async function answers() {
  try {
    return (await fetch('/healthz', { cache: 'no-store' })).ok;
  } catch {
    return false;
  }
}

function pause(milliseconds) {
  return new Promise(done => setTimeout(done, milliseconds));
}
