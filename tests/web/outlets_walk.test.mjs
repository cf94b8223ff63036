// Outlets added, inserted, branched, moved, renamed and removed; and thirty of them.
import assert from 'node:assert/strict';
import { after, test } from 'node:test';
import { bring, find, heard, press, said, tap, type } from './support.mjs';
import {
  assertNothingCut, chainFile, close, gone, importFile, leave, openNotebook, pressHead, PHONE, says, scratch,
  shot, sketch, sketches, there, WINDOWS, world,
} from './walk.mjs';

const here = world();
const files = scratch();
after(files.clear);

test('add an outlet, give it a name with the phone\'s own keyboard and a load', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'button', 'Add an outlet');
  await there(page, 'dialog', 'Outlet D');
  await type(page, 'Name', 'Übung <b>&"lamp"');
  await press(page, 'button', 'More: Load');
  await shot(page, 'outlet-412');
  await page.goBack();
  await gone(page, 'dialog', 'Outlet D');
  await sketches(page, /to D Übung <b>&"lamp"/);
  assert.equal(await page.evaluate(() => document.querySelector('#mirror b')), null, 'a name became markup');
  await leave(phone);
});

test('a name that is blank or too long is refused in words', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'button', /^Outlet A/);
  await type(page, 'Name', '   ');
  assert.match(await heard(page) + await said(page), /name/i);
  await type(page, 'Name', 'x'.repeat(60));
  await says(page, /40/);
  await page.goBack();
  await sketches(page, /to A Truing-stand light/);
  await leave(phone);
});

test('a branch from A hangs below it and is said so', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'button', /^Outlet A/);
  await press(page, 'button', 'Branch from outlet A');
  await there(page, 'dialog', 'Outlet D');
  await close(page);
  await sketches(page, /Branch from A, then .* to D/);
  await bring(page, find(page, 'img').first());
  await shot(page, 'tree-412');
  await leave(phone);
});

test('insert before, move down, remove, and back again', async () => {
  const phone = await here.open();
  const { page } = phone;
  await press(page, 'button', /^Outlet C/);
  await press(page, 'button', 'Insert an outlet before C');
  await close(page);
  await sketches(page, /to D Tyre inflator/);
  await press(page, 'button', /^Outlet A/);
  await press(page, 'button', 'Move outlet A down');
  await page.goBack();
  await sketches(page, /to A Tablet charger.*to B Truing-stand light/);
  await press(page, 'button', /^Outlet D/);
  await press(page, 'button', 'Remove outlet D');
  await gone(page, 'button', /^Outlet D/);
  assert.doesNotMatch(await sketch(page), /Tyre inflator/);
  await press(page, 'button', 'Undo');
  await sketches(page, /to D Tyre inflator/);
  await leave(phone);
});

for (const window of [WINDOWS[0], PHONE, WINDOWS[2]]) {
  test(`thirty outlets stay readable and tappable at ${window.name}`, async () => {
    const phone = await here.open(window);
    const { page } = phone;
    await openNotebook(page);
    await importFile(page, files.file('thirty.json', chainFile(30)));
    await there(page, 'heading', 'Long line');
    await sketches(page, /to AD Lamp 30/);
    await assertNothingCut(page);
    const box = await bring(page, find(page, 'img').first());
    await shot(page, `thirty-${window.name}`);
    const outlets = await find(page, 'button', /^Outlet /).count();
    assert.equal(outlets, 30);
    await pressHead(page, 'More');        // the word that the file came in lies over the last rows
    await there(page, 'dialog', 'More');
    await page.goBack();
    await gone(page, 'dialog', 'More');
    await press(page, 'button', /^Outlet AD/);
    await there(page, 'dialog', 'Outlet AD');
    await page.goBack();
    assert.ok(box.width <= window.width);
    await leave(phone);
  });
}

test('a finger on the sketch of thirty finds the outlet it points at', async () => {
  const phone = await here.open();
  const { page } = phone;
  await openNotebook(page);
  await importFile(page, files.file('thirty.json', chainFile(30)));
  await there(page, 'heading', 'Long line');
  const box = await bring(page, find(page, 'img').first());
  await tap(page, box.x + box.width / 2, Math.min(box.y + box.height - 60, 700));
  assert.match(page.url(), /#size\/outlet\/\d+/);
  await leave(phone);
});
