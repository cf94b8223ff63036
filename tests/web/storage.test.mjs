// What the user made is kept: when the page goes away, when the browser is killed, when the
// storage fails, when a second tab opens, when the app itself stops.
import assert from 'node:assert/strict';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { bring, find, heard, idle, openBrowser, openPhone, openProfile, press, said, sleep, startServer } from './support.mjs';

let browser;
let server;
before(async () => { browser = await openBrowser(); server = await startServer(); });
after(async () => { await browser.close(); await server.stop(); });

const SAMPLE = JSON.parse(readFileSync(new URL('../documents/version-1/bench.json', import.meta.url), 'utf8'));
const LOAD = 'Load of A';
const load = (page) => find(page, 'spinbutton', LOAD).first().inputValue();
const understand = (page) => press(page, 'button', 'I understand');

// A tap whose effect is waited for, but not that it is written.
async function moreLoad(page, context) {
  const box = await bring(page, find(page, 'button', 'More: ' + LOAD));
  const before_ = await load(page);
  const cdp = await context.newCDPSession(page);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
  await sleep(30);
  await cdp.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  await page.waitForFunction(([name, old]) => document.querySelector(`[aria-label="${name}"]`)?.value !== old, [LOAD, before_], { polling: 5 });
  return load(page);
}

test('a change outlives the page being closed right after it', async () => {
  const { page, context } = await openPhone(browser, server.url);
  await understand(page);
  const changed = await moreLoad(page, context);
  await page.close();
  const again = await context.newPage();
  await again.goto(server.url);
  await idle(again);
  assert.equal(await load(again), changed);
  await context.close();
});

test('a change outlives the browser being killed right after it was written', async () => {
  const profile = mkdtempSync(join(tmpdir(), 'branchlight-profile-'));
  const start = async () => {
    const context = await openProfile(profile);
    const page = await context.newPage();
    await page.goto(server.url);
    await idle(page);
    return { context, page };
  };
  try {
    const first = await start();
    await understand(first.page);
    const changed = await moreLoad(first.page, first.context);
    await first.page.waitForFunction(() => branchlight.writesWaiting === 0);
    const gone = new Promise((done) => { first.context.once('close', done); });
    for (const pid of ownProcesses(profile)) { try { process.kill(pid, 'SIGKILL'); } catch { /* went with its parent */ } }
    await gone;
    const second = await start();
    assert.equal(await load(second.page), changed);
    await second.context.close();
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
});

// The processes of the one browser that runs on this profile, which this test has started.
function ownProcesses(profile) {
  return readdirSync('/proc').filter((name) => /^\d+$/.test(name)).filter((pid) => {
    try { return readFileSync(`/proc/${pid}/cmdline`, 'utf8').includes('--user-data-dir=' + profile); } catch { return false; }
  }).map(Number);
}

test('a full storage is said, and saved again when there is room', async () => {
  const { page, context } = await openPhone(browser, server.url);
  await understand(page);
  await page.evaluate(() => {
    globalThis.realPut = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); };
  });
  await moreLoad(page, context);
  await idle(page);
  assert.match(await said(page) + await heard(page), /Not saved: the phone has no room left/);
  await page.evaluate(() => { IDBObjectStore.prototype.put = globalThis.realPut; });
  const changed = await moreLoad(page, context);
  await idle(page);
  assert.doesNotMatch(await said(page), /Not saved/);
  await page.reload();
  await idle(page);
  assert.equal(await load(page), changed);
  await context.close();
});

test('a browser that keeps nothing is said at the start', async () => {
  const context = await browser.newContext({ hasTouch: true, isMobile: true });
  await context.addInitScript(() => { IDBFactory.prototype.open = () => { throw new Error('refused'); }; });
  const { page } = await openPhone(browser, server.url, { context });
  assert.match(await said(page) + await heard(page), /Not saved/);
  assert.notEqual(await find(page, 'heading').count(), 0, 'and works all the same');
  await context.close();
});

// The records as they lie in the browser's store; `given` replaces them all first.
const stored = (page, given = null) => page.evaluate((records) => new Promise((done) => {
  indexedDB.open('branchlight').onsuccess = (event) => {
    const db = event.target.result;
    const change = db.transaction('records', 'readwrite');
    const store = change.objectStore('records');
    if (records) {
      store.clear();
      for (const [key, text] of Object.entries(records)) store.put(text, key);
    }
    const keys = store.getAllKeys();
    change.oncomplete = () => { db.close(); done(keys.result); };
  };
}), given);

test('circuits that an app of version 1 left are vehicles now, and its records go once the new ones are there', async () => {
  const { page, context } = await openPhone(browser, server.url);
  await understand(page);
  await idle(page);
  const one = (name, position) => JSON.stringify({ format: 'branchlight-circuits', version: 1,
    circuits: [{ ...SAMPLE.circuits[0], name, place: 'Works van', fuse_position: position }] });
  const old = { 'circuit/1': one('Left bench', 1), 'circuit/4': one('Right bench', 2), 'circuit/6': '{"damaged',
    'fitted/1': 'size 10awg\nfuse 15\n', notebook: 'order 4 1 6\nopen 1\nnext 7\n', preferences: 'caution-seen yes\n' };
  await stored(page, old);
  await page.reload();
  await idle(page);
  assert.equal(await find(page, 'heading', 'Left bench').count(), 1, 'the open one is open');
  const after_ = await stored(page);
  for (const key of Object.keys(old)) assert.ok(after_.includes(key), `${key} stays until the next start`);
  assert.ok(after_.includes('vehicle/1') && after_.includes('vehicles'));
  await page.reload();
  await idle(page);
  const left = await stored(page);
  assert.deepEqual(left.filter((key) => /^(circuit|fitted|notebook|trace)/.test(key)), ['circuit/6'], 'only what can not be read');
  await page.goto(server.url + '#circuits');
  await idle(page);
  const text = await said(page);
  assert.match(text, /Works van/);
  assert.match(text, /Left bench/);
  assert.match(text, /Right bench/);
  assert.match(text, /built: 10 AWG, 15 A/);
  assert.match(text, /can't be read/);
  await context.close();
});

test('each day of work leaves a copy of what was before it', async () => {
  const { page, context } = await openPhone(browser, server.url);
  await understand(page);
  await moreLoad(page, context);
  await idle(page);
  const copies = () => page.evaluate(() => new Promise((done) => {
    indexedDB.open('branchlight').onsuccess = (event) => {
      const all = event.target.result.transaction('copies').objectStore('copies').getAllKeys();
      all.onsuccess = () => { event.target.result.close(); done(all.result.map(([key]) => key)); };
    };
  }));
  await page.reload();           // what is there now is what the next day starts from
  await idle(page);
  await moreLoad(page, context);
  await idle(page);
  const keys = await copies();
  assert.ok(keys.length > 0);
  await moreLoad(page, context);
  await idle(page);
  assert.deepEqual(await copies(), keys, 'one a day, not one a change');
  await context.close();
});

test('a second tab says so and can take over; the first one then stops', async () => {
  const first = await openPhone(browser, server.url);
  await understand(first.page);
  const changed = await moreLoad(first.page, first.context);
  const second = await openPhone(browser, server.url, { context: first.context, wait: false });
  await second.page.getByRole('alertdialog').waitFor();
  assert.match(await second.page.getByRole('alertdialog').innerText(), /already open in another tab/);
  await second.page.getByRole('button', { name: 'Use it here' }).tap();
  await idle(second.page);
  assert.equal(await load(second.page), changed);
  await first.page.getByRole('alertdialog').waitFor();
  assert.match(await first.page.getByRole('alertdialog').innerText(), /Everything you changed here is saved/);
  await first.context.close();
});

// A trap in the wasm, as a program error would give: every exported function throws once told to.
const trapWhenTold = () => {
  const real = WebAssembly.instantiate;
  WebAssembly.instantiate = async (module, imports) => {
    const instance = await real(module, imports);
    const wrapped = {};
    for (const [name, value] of Object.entries(instance.exports)) {
      wrapped[name] = typeof value !== 'function' ? value : (...args) => {
        if (globalThis.trapNow) throw new WebAssembly.RuntimeError('unreachable');
        return value(...args);
      };
    }
    return { exports: wrapped };
  };
};

test('when the app itself stops, the page says so and the circuits can be taken out', async () => {
  const context = await browser.newContext({ hasTouch: true, isMobile: true, viewport: { width: 412, height: 915 }, acceptDownloads: true });
  await context.addInitScript(trapWhenTold);
  const { page } = await openPhone(browser, server.url, { context });
  await understand(page);
  await moreLoad(page, context);
  await idle(page);
  await page.evaluate(() => { globalThis.trapNow = true; branchlight.wake(); });
  const failure = page.getByRole('alertdialog');
  await failure.waitFor();
  assert.match(await failure.innerText(), /Branchlight stopped/);
  const coming = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save your circuits to a file' }).tap();
  const file = await coming;
  const all = JSON.parse(readFileSync(await file.path(), 'utf8'));
  assert.ok(all.records.length > 0 && all.records.every(({ key, value }) => key && typeof value === 'string'));
  await page.getByRole('button', { name: /aside/ }).tap();
  await idle(page);
  assert.equal(await find(page, 'button', 'I understand').count(), 1, 'a fresh start');
  const aside = await page.evaluate(() => new Promise((done) => {
    indexedDB.open('branchlight').onsuccess = (event) => {
      event.target.result.transaction('aside').objectStore('aside').getAll().onsuccess = (e) => { event.target.result.close(); done(e.target.result); };
    };
  }));
  assert.deepEqual(aside, [Object.fromEntries(all.records.map(({ key, value }) => [key, value]))], 'and nothing lost');
  await context.close();
});
