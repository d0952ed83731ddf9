// Starts the editor page: the connection to the server, and what happens when it goes.

import { answers, connect } from './connection.js';
import { connectionChanged, hasEnded, hasSaved, isKept } from './editor.js';
import { Reloading } from './reloading.js';

const notice = document.querySelector('[data-stopped]');
const page = {
  age: () => performance.now(),
  worked: hasSaved,
  keeps: isKept,
  answers: () => answers(location.href),
  reload: () => location.reload(),
};
const reloading = new Reloading(page, sessionStorage, words => {
  notice.hidden = false;
  notice.querySelector('p').textContent = words;
});
notice.querySelector('button').addEventListener('click', () => reloading.hurry());

connect(window.Blazor, document.getElementById('blazor-error-ui'), () => reloading.loadAnew(), {
  down: () => connectionChanged(false),
  up: () => connectionChanged(true),
  ended: hasEnded,
});
