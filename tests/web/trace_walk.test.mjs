// Faults traced from symptom to re-test as a person does it: by touch, with no signal, each check answered
// from what is really so (trace_person.mjs); with undo, a killed page, a second fault, and bad readings.
import assert from 'node:assert/strict';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test } from 'node:test';
import { workerSettled } from './deploy.mjs';
import { find, idle, offline, openProfile, press, said, sleep, tap, tree } from './support.mjs';
import {
  assertNothingCut, assertThumbSized, chainFile, doneFirst, goTo, gone, importFile, leave, openNotebook, PHONE, pressHead, says, scratch, shot,
  there, understand, WINDOWS, world,
} from './walk.mjs';
import { Person } from './trace_person.mjs';

const here = world();
const MOST_CHECKS = 30;

// Offline from here on: nothing of a trace needs a signal.
async function noSignal(phone) {
  await workerSettled(phone.page);
  await offline(phone.context, true);
  await phone.page.reload();
  await idle(phone.page);
  phone.errors.length = 0;      // the browser's own word for requests without a network
}
async function begin(window, { tools = [], symptom, outlets = [] }) {
  const phone = await here.open(window);
  await noSignal(phone);
  await complain(phone.page, tools, symptom, outlets);
  return phone;
}
async function complain(page, tools, symptom, outlets) {
  await goTo(page, 'Trace');
  for (const tool of tools) await press(page, 'checkbox', tool);
  await press(page, 'button', symptom);
  if (outlets.length === 1 && /^One /.test(symptom)) await press(page, 'button', new RegExp(`^${outlets[0]}, `));
  else if (outlets.length > 0) {
    for (const outlet of outlets) await press(page, 'checkbox', new RegExp(`Outlet ${outlet}`));
    await press(page, 'button', 'Start');
  }
}

const question = async (page) => {
  const heading = find(page, 'group', 'Check').first().getByRole('heading').first();
  return await heading.count() ? (await heading.textContent()).trim() : null;
};
const title = async (page) => {
  for (const name of ['Found', 'To try first']) {
    const heading = find(page, 'group', name).first().getByRole('heading').first();
    if (await heading.count()) return (await heading.textContent()).trim();
  }
  return null;
};
const step = async (page) => (await said(page)).match(/^Check (\d+)$/m)?.[1];

async function typeReading(page, digits) {
  await press(page, 'button', 'Type the reading');
  for (const key of [...digits].map((each) => ({ '.': 'Decimal point', '-': 'Minus' }[each] || each)).concat('OK')) {
    const box = await find(page, 'dialog').getByRole('button', { name: key, exact: true }).boundingBox();
    await tap(page, box.x + box.width / 2, box.y + box.height / 2);
  }
}
async function give(page, answer) {
  if (answer.type) await typeReading(page, answer.type);
  else await press(page, 'button', answer);
}

// Answers as the person would until a remedy is there. `each` may do something of its own before a check is
// answered. Tells what was asked.
async function answerAll(page, person, each = async () => {}) {
  const asked = [];
  for (;;) {
    await idle(page);
    if (await title(page)) return asked;
    const asks = await question(page);
    assert.ok(asks, `neither a check nor a remedy:\n${await tree(page)}`);
    assert.ok(asked.length < MOST_CHECKS, `still asking after ${MOST_CHECKS} checks:\n${asked.join('\n')}`);
    await each(asked.length, asks);
    asked.push(asks);
    await give(page, person.answer(asks, await doneFirst(page)));
  }
}

// To the re-test that is good: a remedy mends what it is for and nothing else. Tells the remedies tried.
async function mendAll(page, person, faults) {
  const left = [...faults];
  const tried = [];
  while (left.length > 0) {
    await answerAll(page, person);
    const remedy = await title(page);
    tried.push(remedy);
    assert.ok(tried.length <= 4, `too many remedies: ${tried.join(' ')}`);
    assert.ok(await find(page, 'group', 'Put it right').getByRole('checkbox').count() >= 2, 'steps to tick');
    assert.equal(await find(page, 'group', 'Re-test').count(), 1);
    const at = left.findIndex((fault) => fault.ending.test(remedy));
    if (at >= 0) {
      left[at].mend(person);
      left.splice(at, 1);
    }
    await press(page, 'button', left.length === 0 ? 'It works now' : 'Still the same');
  }
  await there(page, 'heading', 'It works again.');
  return tried;
}

async function keptRecord(page) {
  await press(page, 'button', 'Done');
  await there(page, 'heading', 'Traces of this circuit');
  await press(page, 'button', /^\d{4}-\d\d-\d\d/);
  await says(page, /Put right, and it works\./);
  const record = await said(page);
  assert.match(record, /\d{4}-\d\d-\d\d · Bench outlets/);
  return record;
}

const blown = { ending: /^The fuse is blown/, mend: (person) => { person.fuse = 'whole'; } };
const joint = (name, ending) => ({ ending, mend: (person) => { person.open = person.open.filter((each) => each !== name); } });

for (const window of [WINDOWS[0], PHONE, WINDOWS[3]]) {
  test(`a blown fuse, found by looking, put right and kept, at ${window.name}`, async () => {
    const phone = await begin(window, { tools: ['Meter', 'Spare fuse'], symptom: 'Everything on this fuse is dead' });
    const { page } = phone;
    const person = new Person({ fuse: 'blown', dead: ['A', 'B', 'C'] });
    await answerAll(page, person, async () => {
      await assertNothingCut(page);
      await assertThumbSized(page);
    });
    await assertNothingCut(page);
    assert.deepEqual(await mendAll(page, person, [blown]), ['The fuse is blown.']);
    await keptRecord(page);
    await leave(phone);
  });
}

test('the fuse in another position: nothing in hand but eyes', async () => {
  const phone = await begin(PHONE, { symptom: 'One outlet is dead', outlets: ['B'] });
  const person = new Person({ fuse: 'elsewhere', dead: ['B'] });
  await mendAll(phone.page, person, [{ ending: /^The fuse sits in another position/, mend: (p) => { p.fuse = 'whole'; } }]);
  await keptRecord(phone.page);
  await leave(phone);
});

test('another branch energised: the pair of a neighbour is connected, and the remedy labels both', async () => {
  const files = scratch();
  const phone = await here.open(PHONE);
  const { page } = phone;
  await openNotebook(page);
  const ours = JSON.parse(chainFile(3, (circuit) => {
    circuit.name = 'Bench outlets';
    circuit.place = 'Works van';
    circuit.fuse_position = 4;
  }));
  const other = JSON.parse(chainFile(2, (circuit) => {
    circuit.name = 'Awning lights';
    circuit.place = 'Works van';
  }));
  // Of one place and one battery: one vehicle, both on its block.
  await importFile(page, files.file('both.json', JSON.stringify({ ...ours, circuits: [...ours.circuits, ...other.circuits] })));
  await there(page, 'heading', 'Bench outlets');
  await noSignal(phone);
  await complain(page, ['Meter', 'Charger with a light'], 'One outlet is dead', ['C']);
  const person = new Person({ otherPair: 'C', dead: ['C'] });
  await answerAll(page, person);
  await says(page, /Awning lights/);
  await says(page, /[Ll]abel/);
  await mendAll(page, person, [{ ending: /^From C on, the pair of Awning lights/, mend: (p) => { delete p.otherPair; } }]);
  await keptRecord(page);
  files.clear();
  await leave(phone);
});

test('a loose splice, with a lamp and no meter', async () => {
  const phone = await begin(PHONE, { tools: ['Filament test lamp'], symptom: 'Several outlets are dead', outlets: ['B', 'C'] });
  const person = new Person({ open: ['red splice B'], dead: ['B', 'C'] });
  const tried = await mendAll(phone.page, person, [joint('red splice B', /^The red splice at B/)]);
  assert.equal(tried.length, 1, tried.join(' '));
  await keptRecord(phone.page);
  await leave(phone);
});

test('reversed polarity: bad readings are refused in words, the minus is taken and told', async () => {
  const phone = await begin(PHONE, { tools: ['Meter'], symptom: 'Plus and minus are changed over', outlets: ['C'] });
  const { page } = phone;
  const person = new Person({ swapped: 'C', dead: ['C'], types: true });
  let refused = false;
  let minus = 0;      // readings with a minus that were typed
  await answerAll(page, person, async (at, asks) => {
    if (refused || await find(page, 'button', 'Type the reading').count() === 0) return;
    refused = true;
    const before = await step(page);
    for (const [digits, words] of [['60', /60\.0 V is more than a 12 V circuit can have/],      // volts that can not be
      ['470', /470\.0 V is more than .* ohms/], ['-60', /-60\.0 V|−60\.0 V/]]) {                   // ohms typed as volts
      await typeReading(page, digits);
      await says(page, words);
      assert.equal(await question(page), asks, 'the same check is asked');
      assert.equal(await step(page), before, 'nothing was taken');
    }
  }).then((asked) => { minus = asked.filter((asks) => person.answer(asks).type?.startsWith('-')).length; });
  assert.ok(refused, 'no reading was ever asked for');
  if (minus > 0) assert.ok(await find(page, 'button', 'Undo last').count() > 0);
  await mendAll(page, person, [{ ending: /^Red and black are changed over at C's tabs/, mend: (p) => { delete p.swapped; } }]);
  const record = await keptRecord(page);
  if (minus > 0) assert.match(record, /[-−]12\.7 V/);
  await leave(phone);
});

test('a broken black wire: undone, killed in the middle, gone on with', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'branchlight-profile-'));
  const start = async () => {
    const context = await openProfile(folder);
    const page = await context.newPage();
    await page.goto(here.server.url);
    await idle(page);
    return { context, page };
  };
  try {
    let { context, page } = await start();
    await understand(page);
    await complain(page, ['Meter'], 'Several outlets are dead', ['B', 'C']);
    const person = new Person({ open: ['black end B'], dead: ['B', 'C'] });
    const first = await question(page);
    await give(page, person.answer(first));
    const second = await question(page);
    await press(page, 'button', 'Undo last');
    assert.equal(await question(page), first, 'undone');
    await give(page, person.answer(first));
    assert.equal(await question(page), second, 'the same answer leads to the same check');
    await give(page, person.answer(second));
    const third = await question(page) || await title(page);
    const crash = await context.newCDPSession(page);
    await Promise.race([crash.send('Page.crash').catch(() => {}), sleep(500)]);
    await context.close();
    ({ context, page } = await start());
    await goTo(page, 'Trace');
    assert.equal(await question(page) || await title(page), third, 'goes on where it was');
    const tried = await mendAll(page, person, [joint('black end B', /^The black wire from A to B is broken/)]);
    assert.ok(tried.length <= 2, tried.join(' '));      // its splice reads the same
    await keptRecord(page);
    await context.close();
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test('two faults: still the same after the fuse, and the tab behind it is found with all answers kept', async () => {
  const phone = await begin(PHONE, { tools: ['Meter', 'Spare fuse'], symptom: 'One outlet is dead', outlets: ['C'] });
  const person = new Person({ fuse: 'blown', open: ['red blade C'], dead: ['C'] });
  const tried = await mendAll(phone.page, person, [blown, joint('red blade C', /^The red tab at C is off/)]);
  assert.equal(tried[0], 'The fuse is blown.');
  const record = await keptRecord(phone.page);
  assert.match(record, /Still the same/);
  assert.match(record, /Blown/);
  await leave(phone);
});

test('nothing can be reached: it says that it can not tell, and gives an order to try', async () => {
  const phone = await begin(PHONE, { symptom: 'One outlet is dead', outlets: ['B'] });
  const { page } = phone;
  for (let i = 0; i < MOST_CHECKS && await question(page); i += 1) await press(page, 'button', "Can't reach it");
  await there(page, 'group', 'To try first');
  await says(page, /Try them in this order/);
  await press(page, 'button', "Can't do it here");
  await there(page, 'group', 'To try first');
  await leave(phone);
});

test('why this check, and an answer taken again', async () => {
  const phone = await begin(PHONE, { tools: ['Meter'], symptom: 'One outlet is dead', outlets: ['C'] });
  const { page } = phone;
  await press(page, 'button', 'Why this check');
  await there(page, 'dialog', 'Why this check');
  await says(page, /%/);
  await page.goBack();
  await gone(page, 'dialog');
  const first = await question(page);
  await press(page, 'button', 'Not sure');
  const next = await question(page);
  assert.notEqual(next, first);
  await pressHead(page, 'More');
  await press(page, 'button', 'Answers so far');
  await press(page, 'button', /^Not sure/);
  await says(page, /You said: Not sure/);
  await give(page, new Person({ fuse: 'blown', dead: ['C'] }).answer(first));
  await gone(page, 'dialog');
  assert.equal(await step(page), '2');
  await shot(page, 'trace-check-412');
  await leave(phone);
});
