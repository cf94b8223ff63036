// Quick: a calculator found, asked, answered wrongly and rightly, used in the circuit; kept, and with no signal.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { workerSettled } from './deploy.mjs';
import { find, idle, offline, press, said, setSpin, type } from './support.mjs';
import { assertNothingCut, assertThumbSized, goTo, leave, PHONE, pressHead, says, shot, sketch, spins, there, WINDOWS, world } from './walk.mjs';

const here = world();
const hash = (page) => page.evaluate(() => location.hash);
const KEYS = ['drop-of-a-run', 'wire-for-a-run', 'longest-run', 'wire-sizes', 'most-current', 'fuse-for-a-wire', 'fuse-at-n-times',
  'short-at-the-far-end', 'watts-amps-volts', 'loads-together', 'battery-run-time', 'joint', 'path'];

for (const window of [WINDOWS[0], PHONE, WINDOWS[3]]) {
  test(`from the bar to a calculator and its sources, and back, at ${window.name}`, async () => {
    const phone = await here.open(window);
    const { page } = phone;
    await goTo(page, 'Quick');
    await there(page, 'heading', 'Quick');
    await assertNothingCut(page);
    await press(page, 'button', /^Voltage drop of a run/);
    await there(page, 'heading', 'Voltage drop of a run');
    await says(page, /10 AWG loses/);
    await press(page, 'button', 'More: Length, one way');
    await spins(page, 'Length, one way', '5.1 m');
    await assertNothingCut(page);
    await assertThumbSized(page);
    await shot(page, `quick-drop-${window.name}`);
    await press(page, 'button', /^How it is worked out/);
    await there(page, 'dialog', 'How it is worked out');
    await says(page, /How sure: /);
    await page.goBack();
    await there(page, 'dialog', 'How it is worked out', 0);
    await page.goBack();
    await there(page, 'heading', 'Quick');
    await leave(phone);
  });
}

test('bad input keeps the last good value; a good one goes to the outlet picked, and undo takes it back', async () => {
  const phone = await here.open(PHONE, { route: 'quick/drop-of-a-run' });
  const { page } = phone;
  await setSpin(page, 'Length, one way', '900');
  await says(page, /0\.05 m to 100 m/);
  await pressHead(page, 'Close');
  await spins(page, 'Length, one way', '5 m');
  await setSpin(page, 'Length, one way', '2,5');
  await spins(page, 'Length, one way', '2.5 m');
  await press(page, 'checkbox', 'At outlet B');
  await press(page, 'button', 'Use 2.5 m, 10 A at outlet B');
  await there(page, 'dialog', 'x', 0);
  assert.equal(await hash(page), '#size');
  await says(page, /Done: use 2\.5 m, 10 A at outlet B/);
  const after = await sketch(page);
  await press(page, 'button', 'Undo');
  await idle(page);
  assert.notEqual(await sketch(page), after);
  await leave(phone);
});

test('two readings of a joint, typed', async () => {
  const phone = await here.open(PHONE, { route: 'quick/joint' });
  const { page } = phone;
  await setSpin(page, 'Reading before it', '12.6');
  await setSpin(page, 'Reading after it', '11.9');
  await setSpin(page, 'Current', '10');
  await says(page, /70 mΩ/);             // 0.7 V / 10 A
  await says(page, /Bad/);
  await leave(phone);
});

test('each calculator has an address, and answers there', async () => {
  const phone = await here.open(PHONE, { route: 'quick' });
  const { page } = phone;
  for (const key of KEYS) {
    await page.evaluate((to) => { location.hash = to; }, '#quick/' + key);
    await there(page, 'group', 'Answer');
    assert.equal(await hash(page), '#quick/' + key);
    await assertNothingCut(page);
  }
  await leave(phone);
});

test('found by typing, from Quick', async () => {
  const phone = await here.open(PHONE, { route: 'quick' });
  const { page } = phone;
  await type(page, 'Search', 'battery last');
  await press(page, 'button', /^Battery run time/);
  await there(page, 'heading', 'Battery run time');
  await leave(phone);
});

test('without a signal, after a restart, with what was asked last', async () => {
  const phone = await here.open(PHONE, { route: 'quick/drop-of-a-run' });
  const { page, context } = phone;
  await workerSettled(page);
  await setSpin(page, 'Length, one way', '8');
  await spins(page, 'Length, one way', '8 m');
  await offline(context, true);
  await page.reload();
  await idle(page);
  await there(page, 'heading', 'Voltage drop of a run');
  await spins(page, 'Length, one way', '8 m');
  assert.match(await said(page), /over 8 m/);
  await leave(phone);
});

test('by night, at 200 %', async () => {
  const phone = await here.open({ ...WINDOWS[0], dark: true }, { route: 'preferences' });
  const { page } = phone;
  await setSpin(page, 'Text size', '200');
  await page.evaluate(() => { location.hash = '#quick/wire-for-a-run'; });
  await there(page, 'group', 'Answer');
  await assertNothingCut(page);
  await shot(page, 'quick-320-night-200');
  assert.ok(await find(page, 'spinbutton', 'Current').count());
  await leave(phone);
});
