// Numbers by stepper, keypad and dictation; the answer follows; bad values say what is allowed
// and change nothing; undo takes it back.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { bring, find, heard, idle, press, said, setSpin, sleep, swipe, tap } from './support.mjs';
import {
  answer, close, gone, hears, leave, PHONE, says, shot, sketch,
  sketches, spin, spins, there, world,
} from './walk.mjs';

const here = world();
const gauge = async (page) => Number((await answer(page)).wire.match(/^\d+/)?.[0]);

async function keys(page, text) {
  for (const key of text) await press(page, 'button', key === '.' ? 'Decimal point' : key);
}

test('a step more load, a step less: the number and the answer follow', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'button', 'More: Load of A');
  await spins(page, 'Load of A', '2.5 A');
  await press(page, 'button', 'Less: Load of A');
  await press(page, 'button', 'Less: Load of A');
  await spins(page, 'Load of A', '1.5 A');
  await press(page, 'button', 'More: Length to C');
  await spins(page, 'Length to C', '1.1 m');
  await sketches(page, /1\.1 m to C/);
  await leave(phone);
});

test('shorter runs let a thinner wire do, and the change is announced', async () => {
  const phone = await here.open();
  const { page } = phone;
  assert.equal(await gauge(page), 10);
  await setSpin(page, 'Length to A', '0.5 m');
  await setSpin(page, 'Length to B', '0.4');
  await setSpin(page, 'Length to C', '40 cm');
  assert.ok(await gauge(page) > 10, 'thinner than 10 AWG');
  await hears(page, /1[24] AWG/);
  await spins(page, 'Length to C', '0.4 m');
  await leave(phone);
});

test('the keypad: large keys, units, and OK', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'spinbutton', 'Load of A');
  await there(page, 'dialog', 'Load of A');
  await shot(page, 'keypad-412');
  await keys(page, '7.5');
  await press(page, 'button', 'OK');
  await gone(page, 'dialog', 'Load of A');
  await spins(page, 'Load of A', '7.5 A');
  await press(page, 'spinbutton', 'Load of A');
  await keys(page, '24');
  await press(page, 'button', 'W');
  await press(page, 'button', 'OK');
  await spins(page, 'Load of A', '24 W');
  await leave(phone);
});

test('a bad number says what is allowed, and the last good one stays', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'spinbutton', 'Length to A');
  await keys(page, '999');
  await press(page, 'button', 'OK');
  await there(page, 'dialog', 'Length to A');
  await hears(page, /999 m.*0\.05 m to 100 m/s);
  await shot(page, 'keypad-bad-412');
  await close(page);
  await spins(page, 'Length to A', '2.9 m');
  await setSpin(page, 'Length to A', 'far');
  await hears(page, /Not a length/);
  await close(page);
  await spins(page, 'Length to A', '2.9 m');
  assert.equal(await gauge(page), 10);
  await leave(phone);
});

test('held, a step repeats; let go, it stops; undo takes the whole hold back', async () => {
  const phone = await here.open();
  const { page } = phone;
  // Shorter: the answer stays what it is, and the button under the finger.
  const box = await bring(page, find(page, 'button', 'Less: Length to A'));
  await tap(page, box.x + box.width / 2, box.y + box.height / 2, { hold: 1500 });
  const held = Number.parseFloat(await spin(page, 'Length to A'));
  assert.ok(held <= 2.6, `held to ${held} m`);
  await sleep(400);
  assert.equal(Number.parseFloat(await spin(page, 'Length to A')), held, 'goes on by itself');
  await press(page, 'button', /^Undo: /);
  await spins(page, 'Length to A', '2.9 m');
  await press(page, 'button', /^Redo: /);
  assert.equal(Number.parseFloat(await spin(page, 'Length to A')), held);
  await leave(phone);
});

test('a drag that starts on a button scrolls and presses nothing', async () => {
  const phone = await here.open();
  const { page } = phone;
  const box = await bring(page, find(page, 'button', 'More: Load of A'));
  const x = box.x + box.width / 2;
  const y = box.y + box.height / 2;
  await swipe(page, { from: [x, y], to: [x, y - 180], ms: 200 });
  await spins(page, 'Load of A', '2 A');
  const after = await find(page, 'button', 'More: Load of A').boundingBox();
  assert.ok(after.y < box.y - 100, 'scrolled');
  await leave(phone);
});

test('too much for any wire: said at once, in words, with what would help', async () => {
  const phone = await here.open();
  const { page } = phone;
  await setSpin(page, 'Load of C', '100 A');
  await press(page, 'switch', 'Everything at once');
  assert.match(await heard(page), /Nothing fits|no /i);
  await shot(page, 'nothing-fits-412');
  await leave(phone);
});

test('why a size fails: every check with its figure and source', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'button', /^12 AWG/);
  await there(page, 'dialog', 'Why 12 AWG');
  const words = await said(page);
  assert.match(words, /Voltage drop/);
  assert.match(words, /5 %/);
  assert.match(words, /33 CFR 183/);
  await shot(page, 'why-412');
  await page.goBack();
  await gone(page, 'dialog', 'Why 12 AWG');
  await leave(phone);
});

test('a tap on the sketch opens what lies under the finger', async () => {
  const phone = await here.open();
  const { page } = phone;
  const box = await bring(page, find(page, 'img').first());
  await tap(page, box.x + 20, box.y + box.height / 2);
  await there(page, 'dialog', 'Supply');
  await shot(page, 'supply-412');
  await page.goBack();
  await idle(page);
  await tap(page, box.x + box.width - 22, box.y + box.height / 2);
  await there(page, 'dialog', 'Outlet C');
  await leave(phone);
});

test('the desktop: mouse, wheel and keyboard do the same', async () => {
  const desk = await here.open({ ...PHONE, width: 1280, height: 800, desktop: true });
  const { page } = desk;
  await press(page, 'button', 'More: Load of A');
  await spins(page, 'Load of A', '2.5 A');
  await find(page, 'button', 'More: Load of A').focus();
  await page.keyboard.press('Enter');
  await idle(page);
  await spins(page, 'Load of A', '3 A');
  await find(page, 'spinbutton', 'Length to A').focus();
  await page.keyboard.press('ArrowUp');
  await idle(page);
  await spins(page, 'Length to A', '3 m');
  await press(page, 'button', /^Outlet A/);
  await there(page, 'dialog', 'Outlet A');
  await shot(page, 'outlet-desktop', 2);
  await page.keyboard.press('Escape');
  await gone(page, 'dialog', 'Outlet A');
  await leave(desk);
});
