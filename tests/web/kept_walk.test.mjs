// Nothing is lost: no network, a killed page, a killed browser; and the back gesture closes the
// sheet, then the screen.
import assert from 'node:assert/strict';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { find, idle, offline, openProfile, press, setSpin, sleep } from './support.mjs';
import { close, gone, leave, pressHead, shot, sketches, spins, there, understand, world } from './walk.mjs';

const here = world();

const controlled = (page) => page.waitForFunction(async () => {
  const registration = await navigator.serviceWorker.getRegistration();
  return Boolean(registration?.active) && registration.active.state === 'activated';
}, null, { timeout: 20000 });

test('offline: reloads, works and keeps what was changed', async () => {
  const phone = await here.open();
  const { page, context } = phone;
  await controlled(page);
  await setSpin(page, 'Load of A', '3 A');
  await offline(context, true);
  await page.reload();
  await idle(page);
  await spins(page, 'Load of A', '3 A');
  await setSpin(page, 'Load of A', '4 A');
  await page.reload();
  await idle(page);
  await spins(page, 'Load of A', '4 A');
  await shot(page, 'offline-412', 2);
  phone.errors.length = 0;      // the browser itself notes each request that found no network
  await leave(phone);
});

test('killed right after a change: the change is there at the next start', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'branchlight-profile-'));
  try {
    let context = await openProfile(folder);
    let page = await context.newPage();
    await page.goto(here.server.url);
    await idle(page);
    await press(page, 'button', 'I understand');
    await setSpin(page, 'Length to B', '2.2 m');
    const cdp = await context.newCDPSession(page);
    await Promise.race([cdp.send('Page.crash').catch(() => {}), sleep(500)]);
    await context.close();
    context = await openProfile(folder);
    page = await context.newPage();
    await page.goto(here.server.url);
    await idle(page);
    await spins(page, 'Length to B', '2.2 m');
    await gone(page, 'button', 'I understand');
    await context.close();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test('back closes the keypad\'s sheet, the outlet\'s sheet, then the screen', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'button', /^Outlet B/);
  await there(page, 'dialog', 'Outlet B');
  assert.match(page.url(), /#size\/outlet\/2$/);
  await page.goBack();
  await gone(page, 'dialog');
  await pressHead(page, /^Opens? the circuits/i);
  await press(page, 'button', /^Bench outlets/);
  await there(page, 'dialog', 'Bench outlets');
  await page.goBack();
  await gone(page, 'dialog');
  await there(page, 'heading', 'Circuits');
  await page.goBack();
  await there(page, 'heading', 'Bench outlets');
  await page.goForward();
  await there(page, 'heading', 'Circuits');
  await leave(phone);
});

test('an address opens its sheet; a foolish one opens Size', async () => {
  const phone = await here.open({ width: 412, height: 915 }, { route: 'size/outlet/2' });
  await there(phone.page, 'dialog', 'Outlet B');
  await leave(phone);
  const lost = await here.open({ width: 412, height: 915 }, { route: '../../%00<script>' });
  await there(lost.page, 'heading', 'Bench outlets');
  await sketches(lost.page, /^Battery 12\.8 V/);
  await leave(lost);
});

test('undo and redo go through several edits in order', async () => {
  const phone = await here.open();
  const { page } = phone;
  await setSpin(page, 'Load of A', '3 A');
  await setSpin(page, 'Length to C', '2 m');
  await press(page, 'switch', 'Everything at once');
  await press(page, 'button', /^Undo: /);
  await press(page, 'button', /^Undo: /);
  await spins(page, 'Length to C', '1 m');
  await spins(page, 'Load of A', '3 A');
  await press(page, 'button', /^Undo: /);
  await spins(page, 'Load of A', '2 A');
  await press(page, 'button', /^Redo: /);
  await spins(page, 'Load of A', '3 A');
  assert.equal(await find(page, 'button', /^Redo: /).count(), 1);
  await leave(phone);
});
