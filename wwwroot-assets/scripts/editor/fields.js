// Watches the fields beside the chart, which the server keeps: so that the state of saving is true for them too.
// A call that is sent after a change and answered when the change is in the store says when it is done.

export class Fields {
  /** settle() asks the server whether everything asked of it before is done. */
  constructor(panels, settle, changed) {
    this.panels = [...panels];
    this.settle = settle;
    this.changed = changed;
    this.asked = 0;
    this.typing = false;
    for (const panel of this.panels) {
      panel.addEventListener('input', () => this.typed());
      panel.addEventListener('change', () => this.ask());
      panel.addEventListener('click', event => event.target.closest('button') && this.ask());
    }
    addEventListener('beforeunload', event => this.typing && event.preventDefault());
  }

  get busy() {
    return this.asked > 0;
  }

  /** While there is no connection a change of a field would be lost, so they wait. */
  open(isOpen) {
    this.panels.forEach(panel => { panel.inert = !isOpen; });
  }

  typed() {
    this.typing = true;
    this.changed();
  }

  /** Says that something was asked of the server, which does it when act is called or did so already. */
  async ask(act = async () => { }) {
    this.typing = false;
    this.asked++;
    this.changed();
    try {
      await act();
      await this.settle();
    } catch {
      // the connection went; what the field holds is shown as the server knows it when it is back
    }
    this.asked--;
    this.changed();
  }
}
