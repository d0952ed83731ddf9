// Loads the page anew when its other half on the server is gone for good. At once, the first time; a page that breaks again
// before anything was saved on it, and soon, is loaded later and later, and says meanwhile what is going on.

const PAUSES = [0, 3000, 10000, 30000, 60000];
const SOON = 60000;
const BREAKS = 'patternshop:breaks';

export const LATER = 'The workbench stopped. What was saved is safe; what was not yet is kept in this browser. It opens again by itself in a moment.';
export const AWAY = 'The workbench stopped, and the server does not give it out just now. What was saved is safe; what was not yet is kept in this browser. It opens again by itself as soon as it can.';
export const UNKEPT = 'The workbench stopped, and this browser has no room to keep what you drew last. Opening it again loses those strokes.';

export class Reloading {
  /**
   * page: { age() in milliseconds, worked(): whether anything was saved on it, keeps(): whether the browser keeps all that is
   * not saved, answers(): whether the server gives the page out, reload() }; storage outlives the page, as sessionStorage does;
   * say(words) shows them beside a way to hurry.
   */
  constructor(page, storage, say, wait = pause => new Promise(done => setTimeout(done, pause))) {
    this.page = page;
    this.storage = storage;
    this.say = say;
    this.wait = wait;
    this.hurried = new Promise(done => { this.hurry = done; });
    this.loading = null;
  }

  /** Loads the page anew, once however often it is asked; never comes back. */
  loadAnew() {
    this.loading ??= this.load();
    return this.loading;
  }

  async load() {
    const { page } = this;
    const before = page.worked() || page.age() > SOON ? 0 : Number(this.storage.getItem(BREAKS)) || 0;
    this.storage.setItem(BREAKS, String(before + 1));
    if (!page.keeps()) {
      this.say(UNKEPT);
      await this.hurried;
    } else if (before > 0) {
      this.say(LATER);
      await this.pause(PAUSES[Math.min(before, PAUSES.length - 1)]);
    }
    while (!await page.answers()) {
      this.say(AWAY);
      await this.pause(PAUSES[1]);
    }
    page.reload();
    await new Promise(() => { });
  }

  pause(length) {
    return Promise.race([this.wait(length), this.hurried]);
  }
}
