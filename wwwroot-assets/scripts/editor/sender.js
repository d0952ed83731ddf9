// Brings strokes from the outbox to the server, in the order in which they were drawn, until each is settled. A message
// names the stroke that must be settled before it, so that a message lost on the way cannot let a later one overtake.

const PAUSES = [1000, 2000, 5000, 10000];

export class Sender {
  /** post(entry, after) sends one message and may throw or reject; wait(milliseconds, then) is setTimeout. */
  constructor(outbox, post, changed, wait = (pause, then) => setTimeout(then, pause)) {
    this.outbox = outbox;
    this.post = post;
    this.changed = changed;
    this.wait = wait;
    this.entries = [];
    this.connected = false;
    this.failures = 0;
    this.retrying = false;
    this.kept = true;
    this.signedOut = false;
    this.leftBehind = outbox.others().reduce((count, other) => count + outbox.waiting(other).length, 0);
  }

  /** Strokes that are not known to be in the store; those that others have left behind count until they are looked through. */
  get waiting() {
    return this.entries.length + this.leftBehind;
  }

  get failing() {
    return this.failures > 0;
  }

  add(text, cells) {
    const { entry, kept } = this.outbox.add(text, cells);
    this.kept &&= kept;
    this.entries.push(entry);
    if (this.connected && !this.retrying) {
      this.send(entry);
    }
    this.changed();
    return entry;
  }

  /** Takes over what pages that are gone have left behind. */
  adopt(clients) {
    this.leftBehind = 0;
    const left = clients.flatMap(client => this.outbox.waiting(client)).filter(entry => !this.find(entry));
    this.entries.unshift(...left);
    if (left.length > 0) {
      this.sendAll();
    }
    this.changed();
  }

  connect() {
    this.connected = true;
    this.failures = 0;
    this.retrying = false;
    this.sendAll();
    this.changed();
  }

  disconnect() {
    this.connected = false;
    this.changed();
  }

  /** What became of a stroke: saved, had, refused, early, unsaved or signedOut. */
  settle({ client, sequence, outcome, words }) {
    const entry = this.find({ client, sequence });
    if (!entry) {
      return;
    }
    if (outcome === 'signedOut') {
      this.signedOut = true;
    } else if (outcome === 'early' || outcome === 'unsaved') {
      this.failures += outcome === 'unsaved' ? 1 : 0;
      this.sendAllLater();
    } else {
      this.failures = 0;
      this.entries.splice(this.entries.indexOf(entry), 1);
      if (outcome === 'refused') {
        this.outbox.refuse(entry, words);
      } else {
        this.outbox.remove(entry);
      }
      this.kept ||= this.entries.length === 0;
    }
    this.changed();
  }

  find({ client, sequence }) {
    return this.entries.find(entry => entry.client === client && entry.sequence === sequence);
  }

  sendAll() {
    if (this.connected) {
      this.entries.forEach(entry => this.send(entry));
    }
  }

  sendAllLater() {
    if (this.retrying) {
      return;
    }
    this.retrying = true;
    this.wait(PAUSES[Math.min(this.failures, PAUSES.length) - 1] ?? 100, () => {
      this.retrying = false;
      this.sendAll();
    });
  }

  send(entry) {
    const before = this.entries.slice(0, this.entries.indexOf(entry)).findLast(other => other.client === entry.client);
    Promise.resolve()
      .then(() => this.post(entry, before?.sequence ?? 0))
      .catch(() => this.lost());
  }

  // no answer will come: the connection is going, or the server stumbled over the message
  lost() {
    if (this.connected) {
      this.failures++;
      this.sendAllLater();
      this.changed();
    }
  }
}
