// The notebook: new, duplicate, rename, delete and put back; files out and in, broken ones refused.
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { find, heard, idle, press, said, type } from './support.mjs';
import {
  answer, chainFile, gone, importFile, leave, openNotebook, pressHead, says,
  scratch, shot, sketch, there, world,
} from './walk.mjs';

const here = world();
const files = scratch();
after(files.clear);
const MALFORMED = join(dirname(fileURLToPath(import.meta.url)), '..', 'documents', 'malformed');

test('the first own circuit takes the demo\'s place and asks for a load', async () => {
  const phone = await here.open();
  const { page } = phone;
  await openNotebook(page);
  await says(page, /demo data/);
  await shot(page, 'notebook-412');
  await press(page, 'button', 'New circuit');
  await there(page, 'heading', 'What will run on this circuit?');
  await shot(page, 'no-load-412');
  await openNotebook(page);
  assert.doesNotMatch(await said(page), /Bench outlets/);
  await leave(phone);
});

test('duplicate, rename, delete after asking, put back', async () => {
  const phone = await here.open();
  const { page } = phone;
  await openNotebook(page);
  await press(page, 'button', /^Bench outlets/);
  await press(page, 'button', 'Duplicate Bench outlets');
  await there(page, 'heading', 'Bench outlets (copy)');
  await openNotebook(page);
  await press(page, 'button', /^Bench outlets \(copy\)/);
  await shot(page, 'stored-412');
  await type(page, 'Name', 'Roof lights');
  await press(page, 'button', 'Delete Roof lights');
  await there(page, 'dialog', /^Delete 'Roof lights'/);
  await shot(page, 'delete-412');
  await press(page, 'button', 'Keep it');
  await press(page, 'button', 'Delete Roof lights');
  await press(page, 'button', 'Delete');
  await gone(page, 'button', /^Roof lights, fuse/);
  await press(page, 'button', /Put back$/);
  await there(page, 'button', /^Roof lights, fuse/);
  await leave(phone);
});

test('export, delete all, import: the same circuit again', async () => {
  const phone = await here.open();
  const { page } = phone;
  const before = { ...(await answer(page)), sketch: await sketch(page) };
  await pressHead(page, 'More');
  const waiting = page.waitForEvent('download');
  await press(page, 'button', /^Export this circuit/);
  const download = await waiting;
  assert.equal(download.suggestedFilename(), 'bench-outlets.branchlight.json');
  const text = readFileSync(await download.path(), 'utf8');
  assert.equal(JSON.parse(text).vehicles[0].circuits[0].plan.name, 'Bench outlets');
  await page.goto(here.server.url + '#circuits');
  await idle(page);
  await press(page, 'button', /^Vehicle Repair trailer/);
  await shot(page, 'vehicle-412');
  await press(page, 'button', 'Delete Repair trailer');
  await press(page, 'button', 'Delete');
  await there(page, 'heading', 'No circuits yet');
  await shot(page, 'notebook-empty-412');
  await importFile(page, files.file('bench.json', text));
  await there(page, 'heading', 'Bench outlets');
  assert.deepEqual({ ...(await answer(page)), sketch: await sketch(page) }, before);
  await leave(phone);
});

test('broken files are refused in words, and nothing is lost', async () => {
  const phone = await here.open();
  const { page } = phone;
  await openNotebook(page);
  const broken = readdirSync(MALFORMED).filter((name) => !name.endsWith('.md')).slice(0, 6)
    .map((name) => join(MALFORMED, name));
  broken.push(files.file('empty.json', ''), files.file('picture.json', '\x89PNG\r\n\x00\x01'),
    files.file('nan.json', chainFile(2, (circuit) => { circuit.outlets[0].run_m = -2; })));
  for (const path of broken) {
    await importFile(page, path);
    assert.match(await heard(page), /The file was not taken in/, path);
    await says(page, /Your circuits are as they were/);
    await press(page, 'button', 'OK');
    await there(page, 'button', /^Bench outlets/);
  }
  await importFile(page, broken.at(-1));
  await says(page, /-2 m/);
  await shot(page, 'import-refused-412');
  await leave(phone);
});

test('several at once: export all, import all', async () => {
  const phone = await here.open();
  const { page } = phone;
  await openNotebook(page);
  const line = files.file('one.json', chainFile(2));
  await importFile(page, line);       // takes the demo's place
  await openNotebook(page);
  await importFile(page, line);
  await openNotebook(page);
  const waiting = page.waitForEvent('download');
  await press(page, 'button', 'Export all');
  const text = readFileSync(await (await waiting).path(), 'utf8');
  assert.equal(JSON.parse(text).vehicles.length, 2);
  await importFile(page, files.file('all.json', text));
  await openNotebook(page);
  await there(page, 'button', /^Long line/, 4);
  await leave(phone);
});
