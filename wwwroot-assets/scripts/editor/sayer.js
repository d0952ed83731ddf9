// Tells a screen reader what happened, never more often than it can be heard: what comes too soon waits, and only the newest is said.

const PAUSE = 100;

export class Sayer {
  /** write(text) says it; wait(milliseconds, then) is setTimeout. */
  constructor(write, wait = (pause, then) => setTimeout(then, pause)) {
    this.write = write;
    this.wait = wait;
    this.isBusy = false;
    this.next = null;
  }

  say(text) {
    if (this.isBusy) {
      this.next = text;
      return;
    }
    this.isBusy = true;
    this.write(text);
    this.wait(PAUSE, () => {
      const { next } = this;
      this.isBusy = false;
      this.next = null;
      if (next !== null) {
        this.say(next);
      }
    });
  }
}
