// The first start: one caution, then the demo's answer; at every width, by day and by night.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { find, idle, said } from './support.mjs';
import {
  answer, assertNothingCut, assertThumbSized, gone, leave, says, shot, sketches,
  there, understand, WINDOWS, wires, world,
} from './walk.mjs';

const here = world();

for (const window of WINDOWS) {
  test(`first start at ${window.name}: the caution, then the demo's answer`, async () => {
    const phone = await here.open(window, { caution: true });
    const { page } = phone;
    await there(page, 'heading', 'Bench outlets');
    await there(page, 'button', 'I understand');
    await says(page, /up to 60 V/);
    await says(page, /licensed practice come first/);
    await shot(page, `first-${window.name}`);
    await understand(page);
    await gone(page, 'button', 'I understand');

    const { wire, fuse, lines } = await answer(page);
    assert.match(wire, /^10 AWG/);
    assert.equal(fuse, '15 A');
    assert.ok(lines.some((line) => /voltage drop/.test(line)), 'says what set it');
    await sketches(page, /15 A fuse, then 2\.9 m to A Truing-stand light/);
    await assertNothingCut(page);
    await assertThumbSized(page);
    await shot(page, `size-${window.name}`);

    await page.reload();
    await idle(page);
    await there(page, 'heading', 'Bench outlets');
    await gone(page, 'button', 'I understand');
    await leave(phone);
  });
}

test('by night the page is dark, and says the same', async () => {
  const day = await here.open();
  const words = await said(day.page);
  await leave(day);
  const night = await here.open(WINDOWS[1], { dark: true });
  assert.equal(await said(night.page), words);
  await shot(night.page, 'size-412-night');
  await leave(night);
});

test('a short window on its side still shows the answer and scrolls', async () => {
  const phone = await here.open({ width: 740, height: 360 });
  await wires(phone.page, /^10 AWG/);
  await assertNothingCut(phone.page);
  await shot(phone.page, 'size-landscape');
  await leave(phone);
});

test('feet and Fahrenheit where the phone is set so', async () => {
  const phone = await here.open(WINDOWS[1], { locale: 'en-US' });
  await sketches(phone.page, /9 ft 6 in to A/);
  assert.equal(await find(phone.page, 'spinbutton', 'Length to A').inputValue(), '9 ft 6 in');
  await shot(phone.page, 'size-412-us');
  await leave(phone);
});
