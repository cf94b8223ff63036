// What the walks share: windows to walk in, the answer as it is read, and circuits made for the
// walk. Everything goes through the accessibility tree and a finger, as a person would.
import assert from 'node:assert/strict';
import { after, before } from 'node:test';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  find, heard, idle, openBrowser, openDesktop, openPhone, press, said, startServer, tap, tree,
} from './support.mjs';

export const WINDOWS = [
  { name: '320', width: 320, height: 640 },
  { name: '412', width: 412, height: 915 },
  { name: '820', width: 820, height: 1180 },
  { name: 'desktop', width: 1280, height: 800, desktop: true },
];
export const PHONE = WINDOWS[1];

// One server and one browser for a file of tests; each test opens its own page and so its own storage.
export function world() {
  const here = { server: null, browser: null, pages: [] };
  before(async () => {
    here.server = await startServer();
    here.browser = await openBrowser();
  });
  after(async () => {
    await here.browser?.close();
    await here.server?.stop();
  });
  // A fresh start past the caution, unless { caution: true }.
  here.open = async (window = PHONE, options = {}) => {
    const opened = await (window.desktop ? openDesktop : openPhone)(here.browser, here.server.url, { ...window, ...options });
    if (!options.caution && await find(opened.page, 'button', 'I understand').count()) await understand(opened.page);
    return opened;
  };
  return here;
}

export const understand = (page) => press(page, 'button', 'I understand');

// Closes the page; a complaint in the console fails the walk.
export async function leave({ page, context, errors }) {
  await context.close();
  assert.deepEqual(errors, [], 'the console complained');
}

// What stands in the head of a page or sheet, and so above what press() scrolls to.
export async function pressHead(page, name) {
  await idle(page);   // a picture just taken lays the page out anew: where the button stood is not where it stands
  const box = await find(page, 'button', name).last().boundingBox();
  await tap(page, box.x + box.width / 2, box.y + box.height / 2);
}
export const close = (page) => pressHead(page, 'Close');

// A place of the bar at the foot, which never scrolls.
export async function goTo(page, place) {
  const box = await find(page, 'link', place).boundingBox();
  await tap(page, box.x + box.width / 2, box.y + box.height / 2);
}

// ---- the answer

export async function answer(page) {
  const card = find(page, 'group', 'Answer').first();
  const lines = await card.locator('[role=status], p').allTextContents();
  const line = (start) => lines.find((text) => text.startsWith(start)) || '';
  return { wire: line('Wire, ').replace(/^Wire, \w+ and \w+: /, ''), fuse: (line('Fuse').match(/: (.*)/) || ['', ''])[1], lines };
}

export const spin = (page, name) => find(page, 'spinbutton', name).first().inputValue();
export const sketch = async (page) => (await find(page, 'img').first().getAttribute('aria-label')) || '';

// A busy machine shows things late: what is claimed must come true within a few seconds, and stay.
export async function soon(page, claim) {
  const until = Date.now() + 6000;
  for (;;) {
    await idle(page);
    try { return await claim(); } catch (error) { if (Date.now() > until) throw error; }
  }
}
export const spins = (page, name, value) => soon(page, async () => assert.equal(await spin(page, name), value, name));
export const sketches = (page, pattern) => soon(page, async () => assert.match(await sketch(page), pattern));
export const says = (page, pattern) => soon(page, async () => assert.match(await said(page), pattern));
export const hears = (page, pattern) => soon(page, async () => assert.match(await heard(page), pattern));
export const wires = (page, pattern) => soon(page, async () => assert.match((await answer(page)).wire, pattern));

export const there = (page, role, name, count = 1) => soon(page, async () => {
  const found = await find(page, role, name).count();
  assert.equal(found, count, `${found} times ${role} ${name}, wanted ${count}:\n${await tree(page)}`);
});
export const gone = (page, role, name) => there(page, role, name, 0);

// Everything lies within the window from left to right, and nothing is a pixel high.
export async function assertNothingCut(page) {
  const cut = await page.evaluate(() => [...document.querySelectorAll('#mirror *')].filter((element) => {
    if (element.children.length || element.closest('.row') === element) return false;
    const box = element.getBoundingClientRect();
    return box.width > 1 && (box.left < -0.5 || box.right > innerWidth + 0.5);
  }).map((element) => element.getAttribute('aria-label') || element.textContent));
  assert.deepEqual(cut, [], 'cut off at the side');
}

// Targets a thumb can hit: 44 px at least each way, and 48 where they are buttons of their own.
export async function assertThumbSized(page) {
  const small = await page.evaluate(() => [...document.querySelectorAll('#mirror button, #mirror input')].filter((element) => {
    const box = element.getBoundingClientRect();
    return box.width > 0 && (box.width < 44 || box.height < 44);
  }).map((element) => {
    const box = element.getBoundingClientRect();
    return `${element.getAttribute('aria-label') || element.textContent}: ${box.width.toFixed(0)} x ${box.height.toFixed(0)}`;
  }));
  assert.deepEqual(small, [], 'too small for a thumb');
}

// ---- pictures

// PNG at pixel ratio 2 in the folder BRANCHLIGHT_SHOTS, to be looked at; without it none is taken, for they
// check nothing and take their time. The window grows by a pixel and back, because a new pixel ratio alone
// tells the page nothing in this browser.
const SHOTS = process.env.BRANCHLIGHT_SHOTS;
export async function shot(page, name, ratio = 2) {
  if (!SHOTS) return;
  mkdirSync(SHOTS, { recursive: true });
  const { width, height } = page.viewportSize();
  const [before, mobile] = await page.evaluate(() => [devicePixelRatio, navigator.maxTouchPoints > 0]);
  const session = await page.context().newCDPSession(page);
  const become = async (tall, deviceScaleFactor) => {
    await session.send('Emulation.setDeviceMetricsOverride', { width, height: tall, deviceScaleFactor, mobile });
    await page.waitForFunction((want) => {
      branchlight.wake();
      return document.getElementById('canvas').height === Math.round(want);
    }, tall * deviceScaleFactor, { polling: 50, timeout: 15000 });
    await idle(page);
  };
  await become(height + 1, ratio);
  await become(height, ratio);
  const picture = await session.send('Page.captureScreenshot', { format: 'png' });
  writeFileSync(join(SHOTS, name + '.png'), Buffer.from(picture.data, 'base64'));
  await become(height + 1, before);
  await become(height, before);
  await session.detach();
}

// ---- files

export function scratch() {
  const folder = mkdtempSync(join(tmpdir(), 'branchlight-walk-'));
  return { file: (name, text) => { const path = join(folder, name); writeFileSync(path, text); return path; },
    clear: () => rmSync(folder, { recursive: true, force: true }) };
}

export async function saved(page, doIt) {
  const waiting = page.waitForEvent('download');
  await doIt();
  const download = await waiting;
  const text = readFileSync(await download.path(), 'utf8');
  await idle(page);
  return { name: download.suggestedFilename(), text };
}

export async function openNotebook(page) {
  await pressHead(page, /^Opens? the circuits/i);
  await there(page, 'heading', 'Circuits');
}

// From the notebook. A good file opens at once on the Size screen, a bad one stays with its reasons.
export async function importFile(page, path) {
  const waiting = page.waitForEvent('filechooser');
  await press(page, 'button', 'Import a file');
  await (await waiting).setFiles(path);
  await page.waitForTimeout(300);
  await idle(page);
}

// A circuit file of `count` outlets in a chain; `change` edits the circuit before it is written.
export function chainFile(count, change = () => {}) {
  const outlets = [];
  for (let id = 1; id <= count; id += 1) {
    outlets.push({
      id, name: `Lamp ${id}`, fed_from: id - 1, run_m: 0.5 + (id % 5) * 0.1,
      load: { kind: 'constant-current', rated_a: 0.1 }, outlet_part: 'socket-lighter', terminal_part: 'tab-6.3',
    });
  }
  const circuit = {
    name: 'Long line', place: 'Repair trailer', fuse_position: 2, setting: 'trailer',
    supply: { nominal_v: 12, battery: 'lead-agm', feeder_run_m: 1, feeder_size: '6awg', main_fuse_a: 60 },
    wiring: {
      gauge: 'awg', ampacity_table: 'marine-us', ambient_c: 30, hot_space: false, insulation_c: 105, circuits_bundled: 1,
      wire_temperature_c: 50, fuse_family: 'blade', clamp_part: 'clamp-6', ferrule: false, splice_part: 'splice-lever-6',
      tail_m: 0.075,
    },
    drop_limit_fraction: 0.05, outlets, shelf: { missing_sizes: [], missing_fuses_a: [] }, next_outlet_id: count + 1,
  };
  change(circuit);
  return JSON.stringify({ format: 'branchlight-circuits', version: 1, circuits: [circuit] });
}

// What has to be done before the question, a sentence each.
export const doneFirst = async (page) => {
  const first = find(page, 'group', 'First').first();
  if (!await first.count()) return [];
  const words = (await first.innerText()).replace(/^First\s*/, '').replace(/\s+/g, ' ').replace(/(^| )\d\. /g, '$1');
  return words.split(/(?<=\.) /).map((each) => each.replace(/\.$/, '')).filter(Boolean);
};
