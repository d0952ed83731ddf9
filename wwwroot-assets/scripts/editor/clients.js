// A client is one load of the page. While it lives it holds a lock in the browser, so that others can tell whether the
// strokes that it left behind are still its own business.

const NAME = 'patternshop:client:';

export function newClient() {
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), byte => byte.toString(36).padStart(2, '0')).join('');
}

/** Holds the client's lock until the page is gone. Without locks (pages that are not secure) there is nothing to hold. */
export function holdClient(client, locks = navigator.locks) {
  locks?.request(NAME + client, () => new Promise(() => { })).catch(() => { });
}

/** Those of the clients whose page is gone. Strokes sent twice do no harm, so in doubt a client counts as gone. */
export async function goneClients(clients, locks = navigator.locks) {
  if (!locks || clients.length === 0) {
    return clients;
  }
  const held = new Set((await locks.query()).held.map(lock => lock.name));
  return clients.filter(client => !held.has(NAME + client));
}
