// The page for when the app can not run: what happened in words, what to do, and a way to take
// the saved circuits out. It needs nothing of the app.

const byId = (id) => document.getElementById(id);
let failed = false;

export const hasFailed = () => failed;

// buttons: [{words, press}], the first one is the main one. The first failure stays.
export function showFailure({ title, text, detail = '', buttons = [] }) {
  if (failed) return;
  failed = true;
  byId('failure-title').textContent = title;
  byId('failure-text').textContent = text;
  byId('failure-detail').textContent = detail;
  const row = byId('failure-buttons');
  row.replaceChildren(...buttons.map(({ words, press }) => {
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = words;
    button.addEventListener('click', () => press(button));
    return button;
  }));
  byId('start').hidden = true;
  byId('stage').hidden = true;
  byId('failure').hidden = false;
  row.firstChild?.focus();
}

export const reloadButton = { words: 'Start again', press: () => location.reload() };
