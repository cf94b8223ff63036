// In the shop: the size is not there. Mark it, read what would do, take one of the fixes.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { find, heard, press, said } from './support.mjs';
import { answer, gone, leave, PHONE, says, shot, there, WINDOWS, world } from './walk.mjs';

const here = world();

for (const window of [WINDOWS[0], PHONE, WINDOWS[3]]) {
  test(`the shop has no 10 AWG, at ${window.name}`, async () => {
    const phone = await here.open(window);
    const { page } = phone;
    await press(page, 'button', /^What the shop has/);
    await there(page, 'dialog', 'What the shop has');
    await press(page, 'checkbox', '10 AWG, in the shop');
    await there(page, 'checkbox', '10 AWG, not in the shop');
    assert.doesNotMatch((await answer(page)).lines.join(' '), /Take 10 AWG/);
    await shot(page, `shelf-${window.name}`);
    const words = await said(page);
    assert.match(words, /in your hand/);
    assert.match(words, /Carry less: [\d.]+ A/i);
    await press(page, 'button', 'Use this: Carry less');
    await gone(page, 'dialog', 'What the shop has');
    const { wire, fuse } = await answer(page);
    assert.match(wire, /^12 AWG/);
    assert.match(fuse, /^[\d.]+ A$/);
    await says(page, /What the shop has, no 10 AWG/);
    await press(page, 'button', /^Undo: /);
    assert.doesNotMatch((await answer(page)).wire, /^12 AWG/);
    await leave(phone);
  });
}

test('a fuse that is not there: another is found, or none protects the wire', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'button', /^What the shop has/);
  await press(page, 'checkbox', '15 A fuse, in the shop');
  await page.goBack();
  const { fuse, lines } = await answer(page);
  assert.ok(fuse !== '15 A', `15 A in ${lines}`);
  await leave(phone);
});

test('the question turned round: this wire and this fuse, how far and how much', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'button', /^Wire already in hand/);
  await there(page, 'dialog', 'Wire already in hand');
  await press(page, 'checkbox', 'Wire 14 AWG');
  const before = await said(page);
  assert.match(before, /Largest fuse.*: [\d.]+ A/);
  assert.match(before, /Most at once.*: [\d.]+ A/);
  assert.match(before, /Longest run.*: [\d.]+ m/);
  await shot(page, 'reach-412');
  await press(page, 'checkbox', 'Fuse 30 A');
  await says(page, /The fuse does not protect the wire/);
  await leave(phone);
});

test('the card says it aloud when nothing on the shelf fits', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'button', /^What the shop has/);
  await press(page, 'checkbox', '10 AWG, in the shop');
  await page.goBack();
  await gone(page, 'dialog', 'What the shop has');
  assert.match(await heard(page), /shop|fits/i);
  await find(page, 'button', 'See what would fit').or(find(page, 'button', 'See what would make it fit')).first().waitFor();
  await shot(page, 'shelf-none-412');
  await leave(phone);
});
