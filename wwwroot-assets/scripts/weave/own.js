// The maker's own words and videos for a row, marked as theirs. A video is only ever a link.

function line(...parts) {
  const made = document.createElement('p');
  made.append(...parts);
  return made;
}

function link({ caption, host, address }, language) {
  const made = document.createElement('a');
  made.href = address;
  made.rel = 'noopener noreferrer nofollow';
  made.target = '_blank';
  made.lang = language;
  made.textContent = caption;
  return line(made, ` (${host})`);
}

export function showOwn(place, own, mark) {
  if (place.shown === own) { return; }
  place.shown = own;
  place.hidden = !own;
  const { language } = place.dataset;
  const text = document.createElement('span');
  text.lang = language;
  text.textContent = own?.text ?? '';
  const name = document.createElement('b');
  name.textContent = `${mark}: `;
  place.replaceChildren(...(own?.text ? [line(name, text)] : []), ...(own?.videos ?? []).map(video => link(video, language)));
  place.scrollTop = 0;
}
