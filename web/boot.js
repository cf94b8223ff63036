// The start, in order: this tab alone, the newest whole version, what is kept, the wasm, the
// first frame. Whatever goes wrong on the way is said in words, with the data still to be had.
import { AppDoor } from './app_door.js';
import { everythingKept, setAside, Storage } from './storage.js';
import { showFailure, hasFailed, reloadButton } from './failure.js';
import { claimTab } from './one_tab.js';
import { Frames } from './frames.js';
import { Mirror } from './mirror.js';
import { listen } from './input.js';
import { saveFile, askForFile } from './share.js';
import { followRoutes, currentRoute } from './routes.js';
import { keepOffline, takeWaitingUpdate } from './updates.js';
import { around, onSurroundings, setDark, keepAwake, useAppType } from './device.js';

const CANVAS_PATIENCE_MS = 5000;     // a lost GPU comes back sooner, or not at all

const stage = document.getElementById('stage');
const canvas = document.getElementById('canvas');
const said = document.getElementById('said');

// ---- failures in words

const saveAllButton = {
  words: 'Save your circuits to a file',
  press: async (button) => {
    try {
      const text = JSON.stringify(await everythingKept(), null, 1);
      await saveFile('branchlight-saved-data.json', 'application/json', text);
    } catch {
      button.textContent = 'The saved data could not be read';
    }
  },
};
const setAsideButton = {
  words: 'Put the saved circuits aside and start fresh',
  press: async (button) => {
    try {
      await setAside();
      location.reload();
    } catch {
      button.textContent = 'The saved data could not be moved';
    }
  },
};

function failTrap(error) {
  showFailure({
    title: 'Branchlight stopped',
    text: 'A fault in Branchlight itself stopped it. Your circuits are saved up to the last change. Start again; if it stops each time, save them to a file first, then put them aside.',
    detail: String(error?.message || error),
    buttons: [reloadButton, saveAllButton, setAsideButton],
  });
}
function failNoCanvas() {
  showFailure({
    title: 'This browser can not draw Branchlight',
    text: 'It needs WebGL 2, which this browser does not have or has switched off. Update the browser or try another one; on an old phone, also look whether hardware acceleration is switched off in its settings.',
    buttons: [reloadButton, saveAllButton],
  });
}
function failNoWasm(error) {
  showFailure({
    title: 'Branchlight could not start',
    text: 'A part of it did not arrive, or this browser can not run it (it needs WebAssembly). Check the connection and start again; if the server is in the middle of an update, try again in a minute.',
    detail: String(error?.message || error),
    buttons: [reloadButton, saveAllButton],
  });
}
function failTaken(lost) {
  showFailure({
    title: 'Open in another tab',
    text: lost ? 'Branchlight was opened in another tab, and goes on there. Everything you changed here is saved.'
      : 'Branchlight is already open in another tab or window. Only one can change the circuits at a time.',
    buttons: [{
      words: 'Use it here',
      press: () => { sessionStorage.setItem('branchlight-take', '1'); location.reload(); },
    }],
  });
}

// ---- start

// Compiled while it arrives, where the server names its type; only this build's own wasm will do.
async function compileWasm() {
  if (globalThis.branchlightWasm) return WebAssembly.compile(await branchlightWasm());   // the single file
  const response = await fetch('app.wasm', { integrity: '@WASM_INTEGRITY@', credentials: 'same-origin' });
  if (!response.ok) throw new Error('app.wasm: ' + response.status);
  if (/^application\/wasm/.test(response.headers.get('content-type') || '')) return WebAssembly.compileStreaming(response);
  return WebAssembly.compile(await response.arrayBuffer());
}

async function claim(storage) {
  let take = false;
  try {
    take = sessionStorage.getItem('branchlight-take') === '1';
    sessionStorage.removeItem('branchlight-take');
  } catch { /* no session storage: ask as any tab does */ }
  const claimed = await claimTab({ take, onLost: () => { storage.close(); frames?.stop(); failTaken(true); } });
  if (claimed === 'taken') failTaken(false);
  return claimed === 'ours';
}

let frames = null;

function say(text) {
  said.textContent = '';
  setTimeout(() => { said.textContent = text; }, 80);      // heard when it changes, also when the same
}

async function start() {
  if (typeof WebAssembly !== 'object') { failNoWasm('WebAssembly is missing'); return; }
  const storage = new Storage();
  if (!await claim(storage)) return;
  if (await takeWaitingUpdate()) return;

  const wasm = compileWasm();
  wasm.catch(() => {});                                     // told below
  let stored = [];
  let storageTrouble = '';
  try { stored = await storage.start(); } catch (error) {
    storageTrouble = `${error?.message || error}; save your circuits to a file before you leave`;
  }

  let module;
  try { module = await wasm; } catch (error) { failNoWasm(error); return; }
  await run({ storage, stored, storageTrouble, module });
}

async function run({ storage, stored, storageTrouble, module }) {
  const trap = (error) => { frames.stop(); storage.close(); failTrap(error); };
  let app = null;
  let mirror = null;
  const input = { at: 0, latencies: [] };          // from the event to the frame that shows it
  frames = new Frames((time) => {
    fitCanvas();
    const more = app.call('app_frame', time);
    mirror.focusIfWanted();
    if (input.at) {
      input.latencies.push(performance.now() - input.at);
      if (input.latencies.length > 500) input.latencies.shift();
      input.at = 0;
    }
    return more;
  });
  const routes = followRoutes((route) => { app.call('app_route', route); frames.wake(); });
  const host = {
    store: (key, text) => storage.store(key, text),
    remove: (key) => storage.remove(key),
    saveFile,
    askForFile: () => askForFile(
      (name, bytes) => { app.call('app_file', name, bytes); frames.wake(); },
      (why) => say(why)),
    pushRoute: (route) => routes.push(route),
    replaceRoute: (route) => routes.replace(route),
    goBack: () => routes.back(),
    setTitle: (title) => { document.title = title; },
    setDark,
    announce: say,
    keepAwake,
    wake: () => frames.wake(1),
    wakeAfter: (ms) => frames.wakeAfter(ms),
    mirrorAll: (text, moves) => mirror.all(text, moves),
    mirrorMoves: (moves) => mirror.moves(moves),
  };

  let instance;
  try {
    instance = await createApp({
      host, canvas,
      instantiateWasm(imports, done) { WebAssembly.instantiate(module, imports).then(done, trap); return {}; },
      onAbort: trap,
      print: () => {},
    });
  } catch (error) { failNoWasm(error); return; }
  if (hasFailed()) return;

  app = new AppDoor(instance, trap);
  mirror = new Mirror(document.getElementById('mirror'), app, frames);
  storage.onFailure = (key, why) => { app.call('app_store_failed', key, why); frames.wake(); };
  for (const [key, text] of stored) app.call('app_stored', key, text);
  let surroundings = around(stage);
  if (app.call('app_start', currentRoute(), ...surroundings) !== 0) { failNoCanvas(); return; }
  if (app.broken) return;
  if (storageTrouble) app.call('app_store_failed', '', storageTrouble);

  const input_ = listen({ stage, app, frames, mirror, onInput: (time) => { input.at ||= time; } });
  mirror.isRecentPointer = input_.recentPointer;

  let moved = true;
  function fitCanvas() {
    if (!moved) return;
    moved = false;
    surroundings = around(stage);
    const [width, height, ratio] = surroundings;
    canvas.width = Math.max(1, Math.round(width * ratio));
    canvas.height = Math.max(1, Math.round(height * ratio));
    app.call('app_surroundings', ...surroundings);
  }
  onSurroundings(stage, () => { moved = true; frames.wake(); });
  guardCanvas(app, () => { moved = true; });

  useAppType(app);
  globalThis.branchlight = {      // for tests and measurements
    get busy() { return frames.busy || storage.waiting > 0; },
    get frames() { return frames.drawn; },
    get heapBytes() { return app.heapBytes; },
    get latencies() { return input.latencies; },
    get writesWaiting() { return storage.waiting; },
    wake: () => frames.wake(1),
  };
  frames.wake();
  requestAnimationFrame(() => { if (!hasFailed()) document.getElementById('start').hidden = true; });
  keepOffline(() => { app.call('app_update_waiting'); frames.wake(); });
}

function guardCanvas(app, onBack) {
  let patience = 0;
  canvas.addEventListener('webglcontextlost', (event) => {
    event.preventDefault();                     // or it never comes back
    frames.stop();
    patience = setTimeout(() => showFailure({
      title: 'The phone took the screen away',
      text: 'It needed its graphics memory for something else. Everything is saved; start again.',
      buttons: [reloadButton],
    }), CANVAS_PATIENCE_MS);
  });
  canvas.addEventListener('webglcontextrestored', () => {
    clearTimeout(patience);
    app.call('app_canvas_restored');
    onBack();
    frames.go();
  });
}

start().catch(failTrap);
