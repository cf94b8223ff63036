// Does a test notice when a rule is broken? Breaks one thing at a time, in a copy of its file under build/mutation,
// compiles what holds it, links the one test program that must notice, and runs that. The sources stay as they are.
//   node tests/mutation/run.mjs [--only WORD]... [--sample N] [--check] [--jobs N] [--build build/native]
//     --only    rows whose file, test or sentence holds the word
//     --sample  N rows, spread evenly over the list
//     --check   only that every row still matches its file
// Exit 1 when a broken rule goes unnoticed, or when a row is stale: its text is not in its file once, or what it
// is replaced with does not compile, but where it is the compiler that must notice. The list is mutations.mjs.
import { execFileSync, spawn } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { basename, dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { mutations } from './mutations.mjs';

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), '..', '..');
const WORK = join(ROOT, 'build', 'mutation');
const QUICK_S = 120;        // a test that takes longer hangs: noticed
const FULL_S = 900;

function options(words) {
  const told = { only: [], sample: 0, check: false, jobs: availableParallelism(), build: join(ROOT, 'build', 'native') };
  for (let i = 0; i < words.length; i += 1) {
    const value = () => {
      i += 1;
      if (words[i] === undefined) stop(`${words[i - 1]} needs a value`);
      return words[i];
    };
    const count = () => {
      const number = Number(value());
      if (!Number.isInteger(number) || number < 1) stop(`${words[i - 1]} needs a whole number from 1`);
      return number;
    };
    if (words[i] === '--only') told.only.push(value());
    else if (words[i] === '--sample') told.sample = count();
    else if (words[i] === '--jobs') told.jobs = count();
    else if (words[i] === '--build') told.build = resolve(value());
    else if (words[i] === '--check') told.check = true;
    else stop(`unknown option ${words[i]} (the head of tests/mutation/run.mjs tells)`);
  }
  return told;
}
function stop(why) {
  console.error(`mutation: ${why}`);
  process.exit(2);
}

// ---- the list

const where = (row) => `${row.file}: ${row.breaks}`;

function staleness(row) {
  for (const field of ['file', 'old', 'broken', 'breaks', 'test']) {
    if (typeof row[field] !== 'string' || (field !== 'broken' && row[field] === '')) return `has no '${field}'`;
  }
  if (row.old === row.broken) return 'changes nothing';
  const path = join(ROOT, row.file);
  if (!existsSync(path)) return 'its file is gone';
  const times = readFileSync(path, 'utf8').split(row.old).length - 1;
  return times === 1 ? '' : `its text stands ${times} times in the file, not once: ${row.old}`;
}

// ---- the build as ninja knows it

class Build {
  constructor(folder) {
    this.folder = folder;
    this.known = new Map();
    if (!existsSync(join(folder, 'build.ninja'))) stop(`no build in ${folder}: cmake --preset native`);
  }
  ninja(...words) {
    return execFileSync('ninja', ['-C', this.folder, ...words], { encoding: 'utf8', maxBuffer: 1 << 28, stdio: ['ignore', 'pipe', 'inherit'] });
  }
  make(targets) {
    try { this.ninja(...targets); } catch { stop('the tests themselves do not build'); }
  }
  // How a test program comes about: its link line, and each compile line with its object and source.
  recipe(test) {
    if (this.known.has(test)) return this.known.get(test);
    const lines = this.ninja('-t', 'commands', test).trim().split('\n').filter((line) => !line.startsWith('ninja:'));
    const link = lines.at(-1);
    const program = /(?:^| )-o (\S+)/.exec(link)?.[1];
    const compiles = lines.map((line) => ({ line, object: / -o (\S+) -c /.exec(line)?.[1], source: / -c (\S+)/.exec(line)?.[1] }))
      .filter((step) => step.object && step.source);
    const recipe = { link, program, compiles };
    this.known.set(test, recipe);
    return recipe;
  }
  // The steps of a program that read the file: one for a .cpp, each that includes it for a header.
  holders(test, path) {
    const { compiles } = this.recipe(test);
    const own = compiles.filter((step) => resolve(this.folder, step.source) === path);
    if (own.length > 0) return own;
    const deps = this.ninja('-t', 'deps', ...compiles.map((step) => step.object));
    const holding = new Set();
    let object = '';
    for (const line of deps.split('\n')) {
      if (line !== '' && !line.startsWith(' ')) object = line.slice(0, line.indexOf(':'));
      else if (line.trim() !== '' && resolve(this.folder, line.trim()) === path) holding.add(object);
    }
    return compiles.filter((step) => holding.has(step.object));
  }
}

// ---- running things

function run(command, { cwd, env = {}, seconds }) {
  return new Promise((done) => {
    const child = spawn(command[0], command.slice(1), { cwd, env: { ...process.env, ...env }, stdio: ['ignore', 'pipe', 'pipe'], detached: true });
    let output = '';
    const keep = (data) => { if (output.length < 4e6) output += data; };
    child.stdout.on('data', keep);
    child.stderr.on('data', keep);
    let hung = false;
    const timer = setTimeout(() => {
      hung = true;
      process.kill(-child.pid, 'SIGKILL');
    }, seconds * 1000);
    child.on('error', (error) => { output += error.message; });
    child.on('close', (code, signal) => {
      clearTimeout(timer);
      done({ good: code === 0, hung, signal, output });
    });
  });
}
const shell = (line, cwd) => run(['sh', '-c', line], { cwd, seconds: FULL_S });

async function runTest(program, cwd) {
  const quick = await run([program], { cwd, env: { BRANCHLIGHT_QUICK: '1' }, seconds: QUICK_S });
  if (!quick.good) return quick;
  return { ...await run([program], { cwd, seconds: FULL_S }), full: true };
}

function noticedBy(ran) {
  if (ran.refused) return 'the compiler refuses it';
  if (ran.hung) return 'it never ended';
  // A part of doctest's output names its test case first; one with an error is one that noticed.
  const part = ran.output.split(/^={20,}$/m).find((text) => /ERROR:/.test(text));
  const name = /TEST CASE: +(.*)/.exec(part ?? '')?.[1];
  if (name) return `"${name.trim()}"`;
  return ran.signal ? `it crashed (${ran.signal})` : 'it failed';
}

// What to compile in place of `source`: the copy itself, or the same files taken as one with the copy among them.
function withCopy(source, path, copy, folder) {
  if (source === path) return copy;
  const text = readFileSync(source, 'utf8');
  if (!text.includes(`"${path}"`)) return source;
  const together = join(folder, basename(source));
  writeFileSync(together, text.replace(`"${path}"`, () => `"${copy}"`));
  return together;
}

// Compiles what holds the broken file, links the test program with that in place of the sound objects, runs it.
async function attempt(build, row, folder) {
  const path = join(ROOT, row.file);
  const copy = join(folder, row.file);
  mkdirSync(dirname(copy), { recursive: true });
  writeFileSync(copy, readFileSync(path, 'utf8').replace(row.old, () => row.broken));
  const { link, program } = build.recipe(row.test);
  const holders = build.holders(row.test, path);
  if (holders.length === 0) return { stale: `${row.test} does not hold this file` };

  const quoted = ['core', 'wasm', 'tests'].map((room) => `-iquote ${join(folder, room)}`).join(' ');
  let linked = link;
  const ahead = [];           // of the rooms' archives: the linker then never asks the archive
  for (const [i, step] of holders.entries()) {
    const object = join(folder, `${i}-${basename(step.object)}`);
    const source = resolve(build.folder, step.source);
    const lenient = row.refused ? '' : '-Wno-error';
    const line = step.line.replace(/ -MD -MT \S+ -MF \S+/, '').replace(` -o ${step.object}`, ` -o ${object}`)
      .replace(` -c ${step.source}`, ` ${quoted} -iquote ${dirname(source)} ${lenient} -c ${withCopy(source, path, copy, folder)}`);
    const made = await shell(line, build.folder);
    if (!made.good && row.refused && made.output.includes('error:')) return { ran: { good: false, refused: true } };
    if (!made.good) return { stale: `what it is replaced with does not compile:\n${made.output.slice(0, 2000)}` };
    if (linked.includes(` ${step.object} `)) linked = linked.replace(` ${step.object} `, ` ${object} `);
    else ahead.push(object);
  }
  if (row.refused) return { ran: { good: true } };
  const broken = join(folder, basename(program));
  linked = linked.replace(` -o ${program}`, ` ${ahead.join(' ')} -o ${broken}`);
  const done = await shell(linked, build.folder);
  if (!done.good) return { stale: `does not link:\n${done.output.slice(0, 2000)}` };
  return { ran: await runTest(broken, folder) };
}

// ---- all of it

const told = options(process.argv.slice(2));
const stale = mutations.map((row) => [row, staleness(row)]).filter(([, why]) => why);
for (const [row, why] of stale) console.log(`STALE       ${where(row)}\n            ${why}`);
console.log(`${mutations.length} rules, rows and bindings in the list, ${mutations.length - stale.length} match their files`);
if (told.check || stale.length > 0) process.exit(stale.length > 0 ? 1 : 0);

let chosen = mutations.filter((row) => told.only.every((word) => `${row.file} ${row.test} ${row.breaks}`.includes(word)));
if (told.sample > 0 && told.sample < chosen.length) {
  const all = chosen;
  chosen = Array.from({ length: told.sample }, (_, i) => all[Math.floor((i + 0.5) * all.length / told.sample)]);
}
if (chosen.length === 0) stop('no row holds that word');

const build = new Build(told.build);
const tests = [...new Set(chosen.map((row) => row.test))];
build.make(tests);
rmSync(WORK, { recursive: true, force: true });
mkdirSync(WORK, { recursive: true });
for (const test of tests) {      // a test that fails anyway notices nothing
  const sound = await run([resolve(build.folder, build.recipe(test).program)], { cwd: WORK, env: { BRANCHLIGHT_QUICK: '1' }, seconds: QUICK_S });
  if (!sound.good) stop(`${test} fails with nothing broken: ${noticedBy(sound)}`);
}

const tally = { caught: 0, missed: 0, stale: 0 };
let next = 0;
async function worker() {
  while (next < chosen.length) {
    const index = next;
    next += 1;
    const row = chosen[index];
    const folder = join(WORK, String(index + 1));
    const { ran, stale: why } = await attempt(build, row, folder);
    if (why) {
      tally.stale += 1;
      console.log(`STALE       ${where(row)}\n            ${why}`);
    } else if (ran.good) {
      tally.missed += 1;
      console.log(`NOT CAUGHT  ${where(row)}  (${row.refused ? 'it compiles' : `${row.test} passes`})`);
    } else {
      tally.caught += 1;
      console.log(`caught      ${where(row)}  (${row.test}: ${noticedBy(ran)}${ran.full ? ', in its full length' : ''})`);
    }
    rmSync(folder, { recursive: true, force: true });
  }
}
await Promise.all(Array.from({ length: told.jobs }, worker));
console.log(`${tally.caught} caught, ${tally.missed} not caught, ${tally.stale} stale, of ${chosen.length}`);
process.exit(tally.missed + tally.stale > 0 ? 1 : 0);
