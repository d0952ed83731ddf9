// Keeps the page connected without ever asking the person to do anything: tries again while the server still knows the
// page, and has the page loaded anew when it does not.

// a server that is started anew is back within a few seconds: who draws shall not wait longer than it takes
const PAUSES = [0, 200, 300, 300, 300, 300, 300, 300, 500, 1000];
const PATIENCE = 20000;

/**
 * fault: the element that the framework shows when the page's other half on the server has failed; loadAnew() never
 * comes back; down() and up() hear of the connection; ended(): whether the page is to stay as it is when it loses its connection.
 */
export function connect(blazor, fault, loadAnew, { down, up, ended = () => false }) {
  let trying = false;

  const lost = async () => {
    if (trying) {
      return;
    }
    trying = true;
    down();
    if (ended()) {
      return;
    }
    for (let time = 0; ; time++) {
      await pause(PAUSES[Math.min(time, PAUSES.length - 1)]);
      if (await answers('/healthz') && await comeBack(blazor, loadAnew)) {
        break;
      }
    }
    trying = false;
    up();
  };

  const broken = () => {
    down();
    loadAnew();
  };
  new MutationObserver(() => ended() || broken()).observe(fault, { attributeFilter: ['style'] });
  // a page that the browser kept while another was shown has let go of its other half
  addEventListener('pageshow', event => event.persisted && broken());

  return blazor.start({
    circuit: {
      reconnectionHandler: { onConnectionDown: lost, onConnectionUp: () => { } },
    },
  }).catch(lost);
}

// the circuit is gone for good when the server answers and does not know it
async function comeBack(blazor, loadAnew) {
  try {
    if (await Promise.race([blazor.reconnect(), pause(PATIENCE).then(() => false)])) {
      return true;
    }
  } catch {
    if (!await answers('/healthz')) {
      return false;
    }
  }
  await loadAnew();
  return false;
}

/** Whether the server has an answer at an address, be it no. */
export async function answers(address) {
  try {
    return (await fetch(address, { cache: 'no-store', signal: AbortSignal.timeout(PATIENCE) })).status < 500;
  } catch {
    return false;
  }
}

function pause(milliseconds) {
  return new Promise(done => setTimeout(done, milliseconds));
}
