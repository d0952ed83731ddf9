// Starts the editor page: the connection to the server, and what happens when it goes.

import { connect } from './connection.js';
import { connectionChanged } from './editor.js';

connect(window.Blazor, {
  down: () => connectionChanged(false),
  up: () => connectionChanged(true),
});
