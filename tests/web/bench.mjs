// node tests/web/bench.mjs : what the app costs in a browser. Printed, not judged: a laptop's
// figures are no phone's. Where it can be, a figure is a ratio to something measured in the same
// run: the start to a blank Dear ImGui page's, a sizing to a frame that changes nothing.
//   BRANCHLIGHT_DIST   folder to measure (dist/)
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants, gzipSync } from 'node:zlib';
import { buildBlank } from './blank/build.mjs';
import { quantile, timeFrames } from './frame_times.mjs';
import { bring, DIST, find, idle, openBrowser, openPhone, sleep, startServer, tap } from './support.mjs';
import { nextCheck } from './trace_bench.mjs';
import { chainFile, importFile, openNotebook, scratch, understand } from './walk.mjs';

const SLOW = 4;            // the CPU slowed so many times, as a cheap phone's
const STARTS = 5;
const INPUTS = 24;
const STEPS = 8;
const IDLE_MS = 3000;

const median = (values) => quantile(values, 0.5);
const ms = (value) => (value < 10 ? value.toFixed(1) : value.toFixed(0)) + ' ms';
const kB = (bytes) => (bytes / 1000).toFixed(0) + ' kB';
const line = (what, ...figures) => console.log(what.padEnd(46), figures.join('  '));

// ---- download

function sizes() {
  const files = (folder, prefix = '') => readdirSync(folder).flatMap((name) =>
    statSync(join(folder, name)).isDirectory() ? files(join(folder, name), prefix + name + '/') : [prefix + name]);
  const sum = { raw: 0, gzip: 0, brotli: 0 };
  for (const name of files(DIST)) {
    const bytes = readFileSync(join(DIST, name));
    const gzip = gzipSync(bytes, { level: 9 }).length;
    const brotli = brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 11 } }).length;
    if (['app.wasm', 'app.js', 'branchlight.html'].includes(name)) {
      line('  ' + name, kB(bytes.length), `gzip ${kB(gzip)}`, `brotli ${kB(brotli)}`);
    }
    if (name === 'branchlight.html') continue;      // not part of a visit
    sum.raw += bytes.length;
    sum.gzip += gzip;
    sum.brotli += brotli;
  }
  line('  a whole first visit', kB(sum.raw), `gzip ${kB(sum.gzip)}`, `brotli ${kB(sum.brotli)}`);
}

// ---- start

// From the navigation until what marks the page as usable is there.
async function startTimes(browser, url, mark, prepare) {
  const opened = await openPhone(browser, url, { wait: false });
  const { page, cdp } = opened;
  await prepare(page);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: SLOW });
  const times = [];
  for (let i = 0; i < STARTS; i += 1) {
    await page.reload({ waitUntil: 'commit' });
    const at = await page.waitForFunction(mark, null, { timeout: 60000, polling: 'raf' });
    times.push(await at.jsonValue());
    await sleep(200);
  }
  await opened.context.close();
  return times;
}

// The first frame is drawn and the answer can be read: noted by the page itself, so that the
// asking costs nothing.
async function appStart(browser, server) {
  const noteFirstAnswer = () => {
    const watch = () => {
      const box = document.getElementById('mirror');
      if (!box) { requestAnimationFrame(watch); return; }
      new MutationObserver((_, observer) => {
        if (!box.querySelector('[role=group]')) return;
        globalThis.usableAt = performance.now();
        observer.disconnect();
      }).observe(box, { childList: true, subtree: true });
    };
    watch();
  };
  return startTimes(browser, server.url, () => globalThis.usableAt, async (page) => {
    await idle(page);
    await page.waitForFunction(() => navigator.serviceWorker.ready.then(() => true));
    await page.addInitScript(noteFirstAnswer);
  });
}

async function starts(browser, app, blank) {
  const blankTimes = await startTimes(browser, blank.url, () => globalThis.blankAt,
    (page) => page.waitForFunction(() => globalThis.blankAt));
  const appTimes = await appStart(browser, app);
  line('  app, from its own cache, no network', `median ${ms(median(appTimes))}`, `worst ${ms(Math.max(...appTimes))}`);
  line('  blank Dear ImGui page, from the HTTP cache', `median ${ms(median(blankTimes))}`, `worst ${ms(Math.max(...blankTimes))}`);
  line('  app to blank', (median(appTimes) / median(blankTimes)).toFixed(2));
}

// ---- input, idle, memory

async function openTimed(browser, server, slow) {
  const context = await browser.newContext({ viewport: { width: 412, height: 915 }, isMobile: true, hasTouch: true, locale: 'en-GB' });
  await context.addInitScript(timeFrames);
  const phone = await openPhone(browser, server.url, { context });
  await understand(phone.page);
  if (slow) await phone.cdp.send('Emulation.setCPUThrottlingRate', { rate: SLOW });
  return phone;
}

async function inputs(browser, server) {
  const { page, context } = await openTimed(browser, server, true);
  const names = ['More: Load of A', 'Less: Load of A'];
  const boxes = [];
  for (const name of names) boxes.push(await bring(page, find(page, 'button', name)));
  await page.evaluate(() => { branchlight.latencies.length = 0; });
  for (let i = 0; i < INPUTS; i += 1) {
    const box = await find(page, 'button', names[i % 2]).boundingBox();
    await tap(page, box.x + box.width / 2, box.y + box.height / 2);
  }
  const latencies = await page.evaluate(() => [...branchlight.latencies]);
  line(`  a tap that changes the answer (${latencies.length} events)`, `p50 ${ms(quantile(latencies, 0.5))}`, `p95 ${ms(quantile(latencies, 0.95))}`);
  await context.close();
}

async function rest(browser, server) {
  const phone = await openPhone(browser, server.url);
  const { page } = phone;
  await understand(page);
  await sleep(1000);
  const before = await page.evaluate(() => branchlight.frames);
  await sleep(IDLE_MS);
  const drawn = await page.evaluate(() => branchlight.frames) - before;
  line(`  frames in ${IDLE_MS / 1000} idle seconds`, drawn);
  line('  wasm memory', kB(await page.evaluate(() => branchlight.heapBytes)));
  await phone.context.close();
}

// ---- sizing

// The dearest frame of a press that changes the circuit, against frames that change nothing.
async function sizing(browser, server, outlets) {
  const files = scratch();
  const { page, context } = await openTimed(browser, server, false);
  await openNotebook(page);
  await importFile(page, files.file('chain.json', chainFile(outlets)));
  await bring(page, find(page, 'button', 'More: Drop limit'));
  const still = [];
  for (let i = 0; i < STEPS; i += 1) {
    await page.evaluate(() => { frameTimes.length = 0; branchlight.wake(); });
    await idle(page);
    still.push(median(await page.evaluate(() => frameTimes)));
  }
  const changing = [];
  for (let i = 0; i < STEPS; i += 1) {
    const box = await find(page, 'button', i % 2 ? 'Less: Drop limit' : 'More: Drop limit').boundingBox();
    await page.evaluate(() => { frameTimes.length = 0; });
    await tap(page, box.x + box.width / 2, box.y + box.height / 2);
    changing.push(Math.max(...await page.evaluate(() => frameTimes)));
  }
  const more = median(changing) - median(still);
  line(`  ${outlets} outlets`, `frame ${ms(median(still))}`, `frame that sizes ${ms(median(changing))}`,
    `sizing and what follows ${ms(more)}`);
  await context.close();
  files.clear();
}

// ---- tracing

async function tracing(browser, server, outlets) {
  const took = await nextCheck(browser, server, outlets, SLOW);
  line(`  ${outlets} outlets, ${took.timed} answers`, `a frame ${ms(took.frame)}`, `beyond it: first check ${ms(took.first)}`,
    `later p50 ${ms(took.later)}`, `worst ${ms(took.worst)}`);
}

const blank = await startServer(buildBlank());
const app = await startServer();
const browser = await openBrowser();
try {
  console.log('Download');
  sizes();
  console.log(`Start to the first usable frame, CPU slowed ${SLOW} times, ${STARTS} starts`);
  await starts(browser, app, blank);
  console.log(`From input to painted frame, CPU slowed ${SLOW} times, pixel ratio 1, software GL`);
  await inputs(browser, app);
  console.log('At rest');
  await rest(browser, app);
  console.log('Sizing in the browser, full speed');
  await sizing(browser, app, 6);
  await sizing(browser, app, 30);
  console.log(`The next check of a trace, CPU slowed ${SLOW} times (aim: 100 ms)`);
  await tracing(browser, app, 6);
  await tracing(browser, app, 30);
} finally {
  await browser.close();
  await app.stop();
  await blank.stop();
}
