// The other engine, as a smoke test: it starts, reads out the answer by role, takes a press, and
// keeps the change. Firefox ESR through WebDriver BiDi, on a screen of its own (Xvfb).
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { after, before, test } from 'node:test';
import puppeteer from 'puppeteer-core';
import { startServer } from './support.mjs';

let server;
let screen;
let browser;

before(async () => {
  server = await startServer();
  screen = spawn('Xvfb', ['-displayfd', '3', '-screen', '0', '1000x1100x24', '-nolisten', 'tcp'], { stdio: ['ignore', 'ignore', 'ignore', 'pipe'] });
  const number = await new Promise((done, failed) => {
    screen.once('error', failed);
    screen.stdio[3].once('data', (data) => done(String(data).trim()));
  });
  browser = await puppeteer.launch({
    browser: 'firefox', executablePath: process.env.BRANCHLIGHT_FIREFOX || '/usr/bin/firefox-esr', headless: false,
    env: { ...process.env, DISPLAY: ':' + number, LIBGL_ALWAYS_SOFTWARE: '1', MOZ_DISABLE_CONTENT_SANDBOX: '1' },
    args: ['--width=500', '--height=1000'],
    extraPrefsFirefox: { 'webgl.force-enabled': true, 'webgl.disabled': false, 'gfx.webrender.software': true },
  });
});
after(async () => {
  await browser?.close();
  screen?.kill();
  await server?.stop();
});

test('Firefox starts it, reads the answer by role, takes a press and keeps it', { timeout: 120000 }, async () => {
  const page = await browser.newPage();
  const errors = [];
  page.on('pageerror', (error) => errors.push(error.message));
  await page.setViewport({ width: 412, height: 915 });
  await page.goto(server.url);
  const ready = () => page.waitForFunction(() => globalThis.branchlight?.frames > 1 && !branchlight.busy, { timeout: 60000 });
  await ready();
  const inside = (selector) => page.$eval(selector, (element) => element.textContent || element.getAttribute('aria-label'));
  assert.ok((await inside('#mirror h1')).length > 0);
  const answer = await page.$$eval('#mirror [role=group][aria-label=Answer] [role=status]', (all) => all.map((element) => element.textContent).join('\n'));
  assert.match(answer, /AWG|mm²/);
  assert.match(answer, /\d+ A/);
  const caution = () => page.$$eval('#mirror button', (all) => all.filter((element) => element.textContent === 'I understand').length);
  assert.equal(await caution(), 1);
  const box = await page.$$eval('#mirror button', (all) => {
    const { x, y, width, height } = all.find((element) => element.textContent === 'I understand').getBoundingClientRect();
    return [x + width / 2, y + height / 2];
  });
  await page.mouse.click(...box, { delay: 60 });
  await page.waitForFunction(() => ![...document.querySelectorAll('#mirror button')].some((element) => element.textContent === 'I understand'), { timeout: 20000 });
  await page.waitForFunction(() => !branchlight.busy);
  await page.reload();
  await ready();
  assert.equal(await caution(), 0);
  assert.deepEqual(errors, []);
});
