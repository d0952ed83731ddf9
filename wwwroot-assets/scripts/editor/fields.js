// Watches the fields beside the chart, which the server keeps: so that the state of saving is true for them too, and
// what was typed is not lost with a connection. A call that is sent after a change, and answered when the change is in
// the store, says when it is done.

const PAUSE = 3000;

export class Fields {
  /** settle() asks the server what came of everything asked of it before: settled, unsaved or signedOut; drafts keep the words of fields with a name (data-field). */
  constructor(panels, drafts, settle, changed, wait = then => setTimeout(then, PAUSE)) {
    this.panels = [...panels];
    this.drafts = drafts;
    this.settle = settle;
    this.changed = changed;
    this.wait = wait;
    this.failing = false;
    this.signedOut = false;
    this.asked = 0;
    this.typing = false;
    this.unsent = new Map();
    this.isOpen = false;
    this.giveUp = () => { };
    for (const panel of this.panels) {
      panel.addEventListener('input', event => this.typed(event.target));
      panel.addEventListener('change', event => this.send(event.target));
      panel.addEventListener('click', event => event.target.closest('button') && this.ask());
    }
    window.addEventListener('change', event => this.holdBack(event), true);
  }

  get busy() {
    return this.asked > 0;
  }

  /** Whether the browser keeps everything that is not sent. */
  get kept() {
    return [...this.unsent.values()].every(kept => kept);
  }

  /** While there is no connection a change of a field would be lost, so they wait; what was typed last is sent when it is back. */
  open(isOpen) {
    this.isOpen = isOpen;
    this.panels.forEach(panel => { panel.inert = !isOpen; });
    this.giveUp();
    if (isOpen) {
      this.lost = new Promise(done => { this.giveUp = () => done(false); });
      this.sendAgain();
    }
  }

  sendAgain() {
    [...this.unsent.keys()].forEach(sayChanged);
  }

  /** Takes up what was typed on a page that is gone. */
  restore() {
    for (const field of this.panels.flatMap(panel => [...panel.querySelectorAll('[data-field]')])) {
      const text = this.drafts.find(field.dataset.field);
      if (text !== null && text !== field.value) {
        field.value = text;
        sayChanged(field);
      } else {
        this.drafts.remove(field.dataset.field);
      }
    }
  }

  typed(field) {
    this.typing = true;
    this.keep(field);
    this.changed();
  }

  // the framework would stumble over what it cannot send
  holdBack(event) {
    if (!this.isOpen && this.panels.some(panel => panel.contains(event.target))) {
      event.stopPropagation();
      this.send(event.target);
    }
  }

  async send(field) {
    this.unsent.set(field, this.keep(field));
    if (await this.ask()) {
      this.unsent.delete(field);
      this.drafts.remove(field.dataset.field);
    }
    this.changed();
  }

  keep(field) {
    return field.dataset.field !== undefined && this.drafts.keep(field.dataset.field, field.value);
  }

  /** Says that something was asked of the server, which does it when act is called or did so already. True when it is settled. */
  async ask(act = async () => { }) {
    this.typing = false;
    this.asked++;
    this.changed();
    // what was asked over a connection that goes is never answered
    const settled = this.isOpen && await Promise.race([this.answer(act), this.lost]);
    this.asked--;
    this.changed();
    return settled;
  }

  async answer(act) {
    try {
      await act();
      const outcome = await this.settle();
      this.signedOut = outcome === 'signedOut';
      this.failing = outcome === 'unsaved';
    } catch {
      this.failing = true;
    }
    if (this.failing) {
      this.wait(() => this.sendAgain());
    }
    return !this.failing && !this.signedOut;
  }
}

function sayChanged(field) {
  field.dispatchEvent(new Event('change', { bubbles: true }));
}
