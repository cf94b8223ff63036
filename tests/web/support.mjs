// Drives the built app as a person would: by touch, by role and name. Used by every browser test.
//
//   const server = await startServer();              // serves dist/ on a free port; server.url
//   const browser = await openBrowser();              // headless Chromium; await browser.close()
//   const phone = await openPhone(browser, server.url, { width: 412, height: 915 });
//     phone.page, phone.context, phone.cdp, phone.errors (page errors and console errors so far)
//     options: width, height, ratio (1), touch (true), dark, lessMotion, locale ('en-GB'), slow (CPU factor),
//              route ('size'), context (an existing one: second tab, reload after offline), wait (true)
//   await idle(page)                                  // until the app draws nothing and has written everything
//   await press(page, 'button', 'Add outlet')         // finger tap; swipes there first when it is out of sight
//   find(page, 'spinbutton', 'Load')                  // Playwright locator; name exact, or a RegExp
//   await type(page, 'Name', 'Bench')                 // real text field: tap, replace, Enter
//   await setSpin(page, 'Load of outlet A', '8 A')    // through the accessibility tree, as dictation does
//   await swipe(page, { from: [200, 700], to: [200, 300], ms: 150 })
//   await tap(page, x, y, { hold: 40 })
//   await heard(page)                                 // text of the live regions
//   await said(page)                                  // every name and value on the page, in reading order, as lines
//   await offline(phone.context, true)                // Chromium's own switch; server.stop() is the other half
//   await resize(page, { width: 915, height: 412 })   // turned, or another window
//   await tree(page)                                  // accessibility tree as text, for a failing test's message
//   await openDesktop(browser, url, { width: 1280, height: 800 })   // mouse and keyboard instead of a finger
//
// Interact at pixel ratio 1: software GL draws 7 frames a second at 2.6.
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from 'playwright-core';
import { serve } from '../../web/serve.mjs';

const here = dirname(fileURLToPath(import.meta.url));
export const DIST = process.env.BRANCHLIGHT_DIST || join(here, '..', '..', 'dist');
// Without a GPU the page itself is put together by the processor anyway: only the canvas needs GL.
export const CHROMIUM_ARGS = ['--no-sandbox', '--use-angle=swiftshader', '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist', '--disable-gpu-compositing', '--disable-background-networking', '--disable-component-update',
  '--no-first-run'];
const CHROMIUM = process.env.BRANCHLIGHT_CHROMIUM || '/usr/bin/chromium';

export const sleep = (ms) => new Promise((done) => setTimeout(done, ms));

export async function startServer(folder = DIST, answer) {
  const requests = [];
  const server = await serve(folder, 0, (request, response) => {
    requests.push(request.url);
    return answer ? answer(request, response) : false;
  });
  return { url: server.url, requests, stop: server.close };
}

export const openBrowser = (more = {}) => chromium.launch({ executablePath: CHROMIUM, args: CHROMIUM_ARGS, ...more });
export const openProfile = (folder, more = {}) => chromium.launchPersistentContext(folder, {
  executablePath: CHROMIUM, args: CHROMIUM_ARGS, ...contextOptions({}), ...more,
});

function contextOptions({ width = 412, height = 915, ratio = 1, touch = true, dark = false, lessMotion = false, locale = 'en-GB' }) {
  return {
    viewport: { width, height }, deviceScaleFactor: ratio, isMobile: touch, hasTouch: touch, locale,
    colorScheme: dark ? 'dark' : 'light', reducedMotion: lessMotion ? 'reduce' : 'no-preference', acceptDownloads: true,
  };
}

export async function openPhone(browser, url, options = {}) {
  const context = options.context || await browser.newContext(contextOptions(options));
  const page = await context.newPage();
  const errors = [];
  page.on('pageerror', (error) => errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(message.text());
  });
  const cdp = await context.newCDPSession(page);
  if (options.slow) await cdp.send('Emulation.setCPUThrottlingRate', { rate: options.slow });
  await page.goto(url + (options.route ? '#' + options.route : ''));
  if (options.wait !== false) await idle(page);
  return { page, context, cdp, errors };
}
export const openDesktop = (browser, url, options = {}) =>
  openPhone(browser, url, { width: 1280, height: 800, ...options, touch: false });

// The app has started, draws nothing, and everything is written.
export async function idle(page, timeout = 30000) {
  const end = Date.now() + timeout;
  let still = 0;
  while (still < 3) {                        // an event on its way, a word being announced
    if (Date.now() > end) throw new Error('the app never came to rest');
    const resting = await page.evaluate(() => {
      const app = globalThis.branchlight;
      return Boolean(app && app.frames > 1 && !app.busy);
    }).catch((error) => {
      if (/context was destroyed|navigat/i.test(error.message)) return false;      // the page is being loaded again
      throw error;
    });
    still = resting ? still + 1 : 0;
    await sleep(25);
  }
}

// A new window size or pixel ratio has reached the canvas.
async function fitted(page, ratio) {
  await page.waitForFunction((wanted) => {
    const canvas = document.getElementById('canvas');
    return devicePixelRatio === wanted && canvas.width === Math.round(innerWidth * wanted)
      && canvas.height === Math.round(innerHeight * wanted);
  }, ratio, { polling: 30, timeout: 15000 });
  await idle(page);
}
export async function resize(page, size) {
  await page.setViewportSize(size);
  await page.waitForFunction(({ width, height }) => innerWidth === width && innerHeight === height, size, { polling: 30 });
  await fitted(page, await page.evaluate(() => devicePixelRatio));
}

export function find(page, role, name) {
  return page.getByRole(role, name === undefined ? {} : { name, exact: typeof name === 'string' });
}

// ---- finger and mouse

const cdpOf = new WeakMap();
function cdp(page) {              // one session for each page, or touches overtake each other
  if (!cdpOf.has(page)) cdpOf.set(page, page.context().newCDPSession(page));
  return cdpOf.get(page);
}
async function touch(page, type, x, y) {
  const session = await cdp(page);
  const points = type === 'touchEnd' || type === 'touchCancel' ? [] : [{ x, y, id: 1 }];
  return session.send('Input.dispatchTouchEvent', { type, touchPoints: points });
}

export async function tap(page, x, y, { hold = 40 } = {}) {
  if (!await hasTouch(page)) {
    await page.mouse.click(x, y, { delay: hold });
  } else {
    // The end is sent without waiting for the answer to the start: a slow frame must not turn a tap into a hold.
    const started = touch(page, 'touchStart', x, y);
    await sleep(hold);
    await Promise.all([started, touch(page, 'touchEnd')]);
  }
  await idle(page);
}
const hasTouch = (page) => page.evaluate(() => navigator.maxTouchPoints > 0);

// Moves are sent without waiting for each answer: a slow frame must not turn a flick into a crawl.
export async function swipe(page, { from, to, ms = 200, steps = 10, rest = 0, settle = true }) {
  const sent = [touch(page, 'touchStart', ...from)];
  for (let i = 1; i <= steps; i += 1) {
    await sleep(ms / steps);
    sent.push(touch(page, 'touchMove', from[0] + (to[0] - from[0]) * i / steps, from[1] + (to[1] - from[1]) * i / steps));
  }
  await sleep(rest);      // a finger that rests before it lifts does not fling
  sent.push(touch(page, 'touchEnd'));
  await Promise.all(sent);
  if (settle) await idle(page);
}

const boxNow = async (locator) => await locator.count() ? locator.last().boundingBox() : null;   // does not wait

// Where the foot of the page begins, for what scrolls behind it: buttons that stand in no scrolling part.
function footTop(element) {
  const mirror = document.getElementById('mirror');
  if (element.parentElement === mirror) return null;
  const tops = [...mirror.children].filter((child) => child.tagName === 'BUTTON')
    .map((child) => child.getBoundingClientRect().top).filter((top) => top > innerHeight / 3);
  return tops.length ? Math.min(...tops) - 8 : null;
}

// Swipes (or wheels) until the thing lies clear of the header, the foot and the bar of places.
export async function bring(page, locator) {
  await locator.waitFor({ state: 'attached', timeout: 10000 });
  for (let i = 0; i < 60; i += 1) {
    const box = await locator.boundingBox();
    if (!box) throw new Error(`${locator} is not on the page`);
    const { width, height } = await page.evaluate(() => ({ width: innerWidth, height: innerHeight }));
    const sheet = await boxNow(page.getByRole('dialog'));
    const bar = sheet ? null : await boxNow(page.getByRole('navigation'));
    const foot = sheet ? null : await locator.evaluate(footTop);
    const low = (foot ?? (bar && bar.width > bar.height ? bar.y : height)) - 4;
    const high = Math.max(72, sheet ? sheet.y + 56 : 0);
    const middle = box.y + box.height / 2;
    if (middle >= high && middle <= low) return box;
    const far = Math.max(-0.4, Math.min(0.4, ((high + low) / 2 - middle) / height)) * height;
    const x = Math.min(Math.max(box.x + box.width / 2, 12), width - 12);
    const start = (high + low) / 2 - far / 2;
    if (await hasTouch(page)) {
      await swipe(page, { from: [x, start], to: [x, start + far + Math.sign(far) * 12], ms: 160, rest: 90 });
    } else {
      await page.mouse.move(x, (high + low) / 2);
      await page.mouse.wheel(0, -far);
      await idle(page);
    }
  }
  throw new Error(`could not scroll to ${locator}:\n${await tree(page)}`);
}

export async function press(page, role, name, options = {}) {
  const locator = find(page, role, name);
  const box = await bring(page, options.nth === undefined ? locator.first() : locator.nth(options.nth));
  await tap(page, box.x + box.width / 2, box.y + box.height / 2, options);
}

export async function type(page, name, text) {
  await press(page, 'textbox', name);
  await page.waitForFunction(() => document.activeElement?.tagName === 'INPUT', null, { timeout: 5000 });
  await page.keyboard.press('ControlOrMeta+A');
  if (text === '') await page.keyboard.press('Delete');
  else await page.keyboard.insertText(text);
  await page.keyboard.press('Enter');
  await idle(page);
}

export async function setSpin(page, name, text) {
  const spin = find(page, 'spinbutton', name).first();
  await spin.focus();
  await idle(page);
  await spin.fill(text);
  await spin.press('Enter');
  await idle(page);
}

// ---- what a screen reader has

export const tree = (page) => page.locator('main').ariaSnapshot().catch(() => '(no tree)');
export const heard = (page) => page.evaluate(() =>
  [...document.querySelectorAll('[role=status],[role=alert]')].map((element) => element.textContent).filter(Boolean).join('\n'));
export const said = (page) => page.evaluate(() => [...document.querySelectorAll('#mirror *')].map((element) => {
  const own = element.getAttribute('aria-label') || (element.children.length ? '' : element.textContent);
  return [own, element.value].filter(Boolean).join(': ');
}).filter(Boolean).join('\n'));

export const offline = (context, off) => context.setOffline(off);
