// Day or night, units, text size: at once, kept, and nothing is cut at 200 %.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { bring, find, idle, press, said, setSpin } from './support.mjs';
import {
  answer, assertNothingCut, leave, pressHead, says, shot, sketch, sketches,
  spins, there, WINDOWS, world,
} from './walk.mjs';

const here = world();

async function preferences(page) {
  await pressHead(page, 'More');
  await press(page, 'button', /^Preferences/);
  await there(page, 'heading', 'Preferences');
}

test('night by hand, and kept after a reload', async () => {
  const phone = await here.open();
  const { page } = phone;
  await preferences(page);
  await shot(page, 'preferences-412');
  await press(page, 'radio', 'Night');
  assert.equal(await page.evaluate(() => getComputedStyle(document.body).backgroundColor), 'rgb(15, 17, 19)');
  await page.goBack();
  await idle(page);
  await page.reload();
  await idle(page);
  assert.equal(await page.evaluate(() => getComputedStyle(document.body).backgroundColor), 'rgb(15, 17, 19)');
  await leave(phone);
});

test('US units: feet and inches in the sketch, the steppers and the keypad', async () => {
  const phone = await here.open();
  const { page } = phone;
  await preferences(page);
  await press(page, 'radio', 'US');
  await pressHead(page, 'Back');
  await sketches(page, /9 ft 6 in to A/);
  await setSpin(page, 'Length to A', '10 ft 6 in');
  await spins(page, 'Length to A', '10 ft 6 in');
  await press(page, 'button', 'More: Length to A');
  await spins(page, 'Length to A', '11 ft');
  await leave(phone);
});

for (const window of [WINDOWS[0], WINDOWS[1]]) {
  test(`text at 200 % at ${window.name}: everything is there, nothing is cut`, async () => {
    const phone = await here.open(window);
    const { page } = phone;
    await preferences(page);
    await setSpin(page, 'Text size', '200');
    await assertNothingCut(page);
    await shot(page, `preferences-200-${window.name}`);
    await pressHead(page, 'Back');
    await assertNothingCut(page);
    await shot(page, `size-200-${window.name}`);
    await bring(page, find(page, 'img').first());
    await shot(page, `sketch-200-${window.name}`);
    await press(page, 'button', /^Outlet A/);
    await assertNothingCut(page);
    await shot(page, `outlet-200-${window.name}`);
    await press(page, 'spinbutton', 'Load');
    await shot(page, `keypad-200-${window.name}`);
    await press(page, 'button', '4');
    await press(page, 'button', 'OK');
    await leave(phone);
  });
}

test('the sources of every figure can be read', async () => {
  const phone = await here.open();
  const { page } = phone;
  await preferences(page);
  await press(page, 'button', /^Sources/);
  await there(page, 'dialog', 'Sources');
  const words = await said(page);
  for (const source of [/33 CFR 183/, /IEC 60228/, /ASTM B258/, /ISO 8820/]) assert.match(words, source);
  await shot(page, 'sources-412');
  await leave(phone);
});

for (const [row, dialog, name] of [[/^Where the wire lies/, 'Where the wire lies', 'place'], [/^Supply/, 'Supply', 'feeder'],
  [/^Wire, fuse and parts/, 'Wire, fuse and parts', 'parts']]) {
  test(`the settings sheet '${dialog}' opens, changes the answer's ground and closes`, async () => {
    const phone = await here.open();
    const { page } = phone;
    await press(page, 'button', row);
    await there(page, 'dialog', dialog);
    await assertNothingCut(page);
    await shot(page, `${name}-412`);
    if (name === 'place') {
      await press(page, 'button', 'More: Circuits tied together');
      await spins(page, 'Circuits tied together', '2');
    }
    if (name === 'parts') await press(page, 'radio', 'mm²');
    await page.goBack();
    await idle(page);
    if (name === 'place') await says(page, /2 bundled/);
    if (name === 'parts') await says(page, /Wire, \w+ and \w+: [\d.]+ mm²/);
    await leave(phone);
  });
}
