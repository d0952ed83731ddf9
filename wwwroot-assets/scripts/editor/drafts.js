// Words that were typed and that the store does not have yet, kept in the browser under (pattern, field) until it does.

const PREFIX = 'patternshop:words';

export class Drafts {
  /** storage is localStorage or behaves like it. */
  constructor(storage, pattern) {
    this.storage = storage;
    this.prefix = `${PREFIX}:${pattern}:`;
  }

  /** False when the browser cannot keep it. */
  keep(field, text) {
    try {
      this.storage.setItem(this.prefix + field, text);
      return true;
    } catch {
      return false;
    }
  }

  find(field) {
    return this.storage.getItem(this.prefix + field);
  }

  remove(field) {
    this.storage.removeItem(this.prefix + field);
  }
}
