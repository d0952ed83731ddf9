// Strokes that do not fit any more: shown, with the reason, until the maker throws them away.

export class RefusedList {
  constructor(section, outbox) {
    this.section = section;
    this.list = section.querySelector('ul');
    this.outbox = outbox;
    this.show();
  }

  show() {
    const refused = this.outbox.refused();
    this.section.hidden = refused.length === 0;
    this.list.replaceChildren(...refused.map(entry => this.line(entry)));
  }

  line(entry) {
    const line = document.createElement('li');
    const words = line.appendChild(document.createElement('p'));
    words.textContent = `${entry.cells === 1 ? 'A stroke of 1 cell' : `A stroke of ${entry.cells} cells`} was not taken. ${entry.refused}`;
    const button = line.appendChild(document.createElement('button'));
    button.type = 'button';
    button.textContent = 'Throw away';
    button.addEventListener('click', () => {
      this.outbox.remove(entry);
      this.show();
    });
    return line;
  }
}
