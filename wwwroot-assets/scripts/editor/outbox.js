// Strokes that are not known to be in the store, kept in the browser under (pattern, client, sequence) until they are.
// A client is one load of the page; strokes whose client is gone are sent again under the name they had.

const PREFIX = 'patternshop:stroke';

export class Outbox {
  /** storage is localStorage or behaves like it. */
  constructor(storage, pattern, client) {
    this.storage = storage;
    this.prefix = `${PREFIX}:${pattern}:`;
    this.client = client;
    this.next = 1;
    this.memory = new Map();
  }

  /** Keeps a finished stroke and gives it its sequence. False beside it when only this page remembers it. */
  add(text, cells) {
    const entry = { client: this.client, sequence: this.next++, text, cells };
    const kept = this.write(entry);
    return { entry, kept };
  }

  /** Everything that waits to be stored, oldest first within a client. */
  waiting(client = null) {
    return this.all().filter(entry => !entry.refused && (client === null || entry.client === client));
  }

  /** Strokes that do not fit any more and that the maker has not thrown away. */
  refused() {
    return this.all().filter(entry => entry.refused);
  }

  /** Clients, other than this one, that left strokes behind. */
  others() {
    return [...new Set(this.waiting().map(entry => entry.client))].filter(client => client !== this.client);
  }

  remove({ client, sequence }) {
    const key = this.key(client, sequence);
    this.memory.delete(key);
    this.storage.removeItem(key);
  }

  refuse({ client, sequence }, words) {
    const entry = this.find(client, sequence);
    if (entry) {
      this.write({ ...entry, refused: words });
    }
  }

  /** Tries again to keep what only this page remembers; true when nothing of that is left. */
  keepAll() {
    return [...this.memory.values()].every(entry => this.write(entry));
  }

  find(client, sequence) {
    return this.all().find(entry => entry.client === client && entry.sequence === sequence) ?? null;
  }

  all() {
    const entries = new Map(this.memory);
    for (let at = 0; at < this.storage.length; at++) {
      const key = this.storage.key(at);
      if (key.startsWith(this.prefix)) {
        const entry = parse(this.storage.getItem(key));
        if (entry) {
          entries.set(key, entry);
        }
      }
    }
    return [...entries.values()].sort((a, b) => (a.client < b.client ? -1 : a.client > b.client ? 1 : a.sequence - b.sequence));
  }

  key(client, sequence) {
    return `${this.prefix}${client}:${sequence}`;
  }

  // a full or forbidden storage must not stop a person from drawing
  write(entry) {
    const key = this.key(entry.client, entry.sequence);
    try {
      this.storage.setItem(key, JSON.stringify(entry));
      this.memory.delete(key);
      return true;
    } catch {
      this.memory.set(key, entry);
      return false;
    }
  }
}

function parse(text) {
  try {
    const entry = JSON.parse(text);
    return typeof entry?.client === 'string' && Number.isInteger(entry.sequence) && typeof entry.text === 'string' ? entry : null;
  } catch {
    return null;
  }
}
