// Tables: searched as typed, a page, a row with its source, a how-to card; addresses, back, no signal.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { workerSettled } from './deploy.mjs';
import { find, idle, offline, press, said, setSpin, type } from './support.mjs';
import { assertNothingCut, close, goTo, leave, PHONE, says, shot, spins, there, WINDOWS, world } from './walk.mjs';

const here = world();
const hash = (page) => page.evaluate(() => location.hash);
const go = async (page, to) => { await page.evaluate((where) => { location.hash = where; }, to); await idle(page); };
const PAGES = ['wire', 'ampacity-boat', 'ampacity-conduit', 'ampacity-clipped', 'ampacity-factors', 'drop-limits', 'colours', 'fuses',
  'fuse-times', 'fuse-kinds', 'thin-wire-fuses', 'fuse-places', 'splices', 'crimps', 'tabs', 'rings', 'ferrules', 'strip', 'pull',
  'clamps', 'joints', 'batteries', 'battery-kinds', 'outlets', 'meter', 'cautions'];
const CARDS = ['strip', 'crimp', 'splice', 'tug', 'drop-under-load', 'prove-dead', 'label'];

test('searched key by key on the phone\'s own keyboard', async () => {
  const phone = await here.open(PHONE, { route: 'tables' });
  const { page } = phone;
  await press(page, 'textbox', 'Search');
  await page.waitForFunction(() => document.activeElement?.tagName === 'INPUT', null, { timeout: 5000 });
  for (const letter of '10awg') await page.keyboard.type(letter);
  await there(page, 'button', /^10 AWG, row, Wire:/);
  await shot(page, 'tables-search-412');
  await press(page, 'button', /^10 AWG, row, Wire:/);
  await there(page, 'dialog', '10 AWG');
  assert.equal(await hash(page), '#tables/wire/10awg');
  await page.goBack();
  await there(page, 'dialog', '10 AWG', 0);
  assert.equal(await hash(page), '#tables');
  await leave(phone);
});

for (const window of [WINDOWS[0], PHONE, WINDOWS[2], WINDOWS[3]]) {
  test(`a page, a row, its source, and on to a calculator, at ${window.name}`, async () => {
    const phone = await here.open(window);
    const { page } = phone;
    await goTo(page, 'Tables');
    await press(page, 'button', /^Wire, Copper, diameter/);
    await there(page, 'heading', 'Wire');
    await assertNothingCut(page);
    await shot(page, `tables-wire-${window.name}`);
    await press(page, 'button', /^12 AWG, /);
    await there(page, 'dialog', '12 AWG');
    await says(page, /Source: ASTM B258/);
    await says(page, /How sure: /);
    await press(page, 'button', 'Drop of a run with 12 AWG');
    await there(page, 'heading', 'Voltage drop of a run');
    await spins(page, 'Wire', '12 AWG');
    await leave(phone);
  });
}

test('every page and card at its address, nothing cut at 320 px and 200 %', async () => {
  const phone = await here.open(WINDOWS[0], { route: 'preferences' });
  const { page } = phone;
  await setSpin(page, 'Text size', '200');
  for (const key of PAGES) {
    await go(page, '#tables/' + key);
    assert.equal(await hash(page), '#tables/' + key);
    await says(page, /Sources: /);
    await assertNothingCut(page);
  }
  for (const key of CARDS) {
    await go(page, '#cards/' + key);
    assert.equal(await hash(page), '#cards/' + key);
    await there(page, 'group', 'Steps');
    await assertNothingCut(page);
  }
  await leave(phone);
});

test('a row from memory says so, and a row can set the circuit', async () => {
  const phone = await here.open(PHONE, { route: 'tables/crimps/red', dark: true });
  const { page } = phone;
  await says(page, /From memory/);
  await shot(page, 'tables-row-night');
  await close(page);
  await go(page, '#tables/drop-limits/three');
  await press(page, 'button', 'Set 3 % in my circuit');
  assert.equal(await hash(page), '#size');
  await spins(page, 'Drop limit', '3 %');
  await press(page, 'button', 'Undo');
  await spins(page, 'Drop limit', '5 %');
  await leave(phone);
});

test('without a signal, started at a card', async () => {
  const phone = await here.open(PHONE, { route: 'tables' });
  const { page, context } = phone;
  await workerSettled(page);
  await page.reload();                   // from the second start on the worker answers for the icon too
  await idle(page);
  await offline(context, true);
  await go(page, '#cards/crimp');
  await page.reload();
  await idle(page);
  await there(page, 'heading', 'Crimp a terminal');
  await go(page, '#tables');
  await type(page, 'Search', 'red crimp');
  assert.ok(await find(page, 'button', /crimp/i).count() > 0);
  assert.match(await said(page), /found|nearest/i);
  await leave(phone);
});
