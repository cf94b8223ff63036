// With no signal, and across updates: always one whole version, or the one before.
import assert from 'node:assert/strict';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { buildOf, copyOfDist, deploy, kept, workerSettled } from './deploy.mjs';
import { find, idle, offline, openBrowser, openPhone, sleep, startServer } from './support.mjs';

let browser;
before(async () => { browser = await openBrowser(); });
after(async () => { await browser.close(); });

async function firstVisit(run, controlled = true) {
  const folder = copyOfDist();
  const server = await startServer(folder);
  const phone = await openPhone(browser, server.url);
  await workerSettled(phone.page);
  if (controlled) {                                // from the second start on, the worker answers
    await phone.page.reload();
    await idle(phone.page);
  }
  try { await run({ folder, server, phone, page: phone.page }); } finally {
    await phone.context.close();
    await server.stop();
    rmSync(folder, { recursive: true });
  }
}
const opened = async (page) => { await idle(page); assert.equal(await find(page, 'heading').first().isVisible(), true); };
// A person takes longer than that from one start to the next; within milliseconds Chromium can lose the request
// for the page between two versions.
const BETWEEN_STARTS_MS = 500;
const nextStart = async (phone, server) => {
  const page = await phone.context.newPage();
  await phone.page.close();
  await sleep(BETWEEN_STARTS_MS);
  await page.goto(server.url);
  await idle(page);
  phone.page = page;
  return page;
};
// The new version takes over at the start itself, with one reload. The app waits three seconds for that; on
// a busy machine the browser may take longer, and then it is the start after.
const isBuild = (page, mark, timeout) => page.waitForFunction((wanted) =>
  document.querySelector('meta[name=build]')?.content === wanted, mark, { timeout });
async function becomes(page, mark) {
  try { await isBuild(page, mark, 8000); } catch {
    await page.reload();
    await isBuild(page, mark, 15000);
  }
}
const checkForUpdate = (page) => page.evaluate(async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  await registration.update().catch(() => {});
});

test('after one visit it starts with the network off and the server gone', () => firstVisit(async ({ server, phone, page }) => {
  await server.stop();
  await offline(phone.context, true);
  await page.reload();
  await opened(page);
  await page.goto(server.url + '#circuits');
  await page.reload();
  await opened(page);
  assert.deepEqual(phone.errors, []);
}));

test('a first visit asks for each file of the list, and the single-file page is not among them', () => firstVisit(async ({ server, page }) => {
  const caches_ = Object.values(await kept(page));
  assert.equal(caches_.length, 1);
  const paths = Object.keys(caches_[0]);
  for (const path of ['/index.html', '/app.js', '/app.wasm', '/style.css', '/manifest.webmanifest']) assert.ok(paths.includes(path), path);
  assert.ok(!server.requests.includes('/branchlight.html'));
}, false));

test('a newer version takes over as a whole at the next start, and the old one is dropped', () => firstVisit(async ({ folder, server, phone }) => {
  const version = deploy(folder, 'second');
  await checkForUpdate(phone.page);
  await workerSettled(phone.page, 'waiting');
  assert.equal(await buildOf(phone.page), 'first', 'the running page stays what it is');
  assert.equal(Object.keys(await kept(phone.page)).length, 2);
  const page = await nextStart(phone, server);
  await becomes(page, 'second');
  await workerSettled(page);
  const now = await kept(page);
  assert.deepEqual(Object.keys(now), ['branchlight-' + version]);
  assert.match(now['branchlight-' + version]['/licences.txt'], /^second/);
  await server.stop();
  await offline(phone.context, true);
  await page.reload();
  await opened(page);
  await becomes(page, 'second');
}));

test('a newer version during the very first visit: the page stays, the next start is the new one', () => firstVisit(async ({ folder, server, phone }) => {
  const version = deploy(folder, 'second');
  await checkForUpdate(phone.page);
  await workerSettled(phone.page);
  assert.equal(await buildOf(phone.page), 'first');
  const page = await nextStart(phone, server);
  await becomes(page, 'second');
  assert.deepEqual(Object.keys(await kept(page)), ['branchlight-' + version]);
}, false));

test('a reload is a start too', () => firstVisit(async ({ folder, phone, page }) => {
  deploy(folder, 'second');
  await checkForUpdate(page);
  await workerSettled(page, 'waiting');
  await page.reload();
  await becomes(page, 'second');
  await opened(page);
  assert.deepEqual(phone.errors, []);
}));

for (const [words, only] of [
  ['the new list has arrived, the new page not yet', ['sw.js']],
  ['the new page has arrived, another file not yet', ['sw.js', 'index.html']],
]) {
  test(`half a deployment changes nothing: ${words}`, () => firstVisit(async ({ folder, server, phone }) => {
    deploy(folder, 'second', only);
    await checkForUpdate(phone.page);
    await workerSettled(phone.page);
    await sleep(300);
    assert.equal(Object.keys(await kept(phone.page)).length, 1, 'nothing of the half is kept');
    let page = await nextStart(phone, server);
    assert.equal(await buildOf(page), 'first');
    assert.ok(!Object.values(Object.values(await kept(page))[0]).some((text) => /second/.test(text)), 'no mix');
    deploy(folder, 'second');                      // the rest arrives
    await checkForUpdate(page);
    await workerSettled(page, 'waiting');
    page = await nextStart(phone, server);
    await becomes(page, 'second');
  }));
}

test('a file missing on the server gives no new version', () => firstVisit(async ({ folder, server, phone }) => {
  deploy(folder, 'second');
  rmSync(join(folder, 'licences.txt'));
  await checkForUpdate(phone.page);
  await workerSettled(phone.page);
  await sleep(300);
  assert.equal(Object.keys(await kept(phone.page)).length, 1);
  const page = await nextStart(phone, server);
  assert.equal(await buildOf(page), 'first');
}));

test('a file the browser dropped is fetched again only when it is the same one', () => firstVisit(async ({ folder, page, phone }) => {
  const drop = () => page.evaluate(async () => {
    for (const name of await caches.keys()) await (await caches.open(name)).delete(new URL('app.wasm', location.href).href);
  });
  await drop();
  await page.reload();
  await opened(page);
  assert.ok(Object.keys(Object.values(await kept(page))[0]).includes('/app.wasm'), 'kept again');
  await drop();
  writeFileSync(join(folder, 'app.wasm'), 'of another version');
  await page.reload();
  await page.getByRole('alertdialog').waitFor({ timeout: 15000 });
  assert.match(await page.getByRole('alertdialog').innerText(), /did not arrive/);
  assert.ok(phone.errors.length > 0);
}));

test('a first visit in the middle of a deployment says so, and runs nothing', async () => {
  const folder = copyOfDist();
  writeFileSync(join(folder, 'app.wasm'), 'of another version');
  const server = await startServer(folder);
  const { page, context } = await openPhone(browser, server.url, { wait: false });
  await page.getByRole('alertdialog').waitFor({ timeout: 15000 });
  assert.match(await page.getByRole('alertdialog').innerText(), /in the middle of an update, try again in a minute/);
  await context.close();
  await server.stop();
  rmSync(folder, { recursive: true });
});
