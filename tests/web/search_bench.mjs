// node tests/web/search_bench.mjs : from a key of the search to its results painted, with the CPU
// slowed 4 times. Printed, not judged: a laptop's figures are no phone's.
import { idle, openBrowser, openPhone, press, startServer } from './support.mjs';

const SLOW = 4;
const QUERIES = ['10awg', '2.5mm', 'red crimp', 'lighter socket', 'voltage drop', 'how long does the battery last'];

const server = await startServer();
const browser = await openBrowser();
try {
  const { page, cdp } = await openPhone(browser, server.url, { route: 'tables' });
  await press(page, 'textbox', 'Search');
  await page.waitForFunction(() => document.activeElement?.tagName === 'INPUT');
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: SLOW });
  const script = [];
  await page.exposeFunction('tell', (took) => script.push(took));
  const keys = [];
  await page.exposeFunction('painted', (took) => keys.push(took));
  await page.evaluate(() => {
    let typedAt = 0;
    document.addEventListener('input', (event) => { typedAt = event.timeStamp; }, true);
    const real = globalThis.requestAnimationFrame.bind(globalThis);
    globalThis.requestAnimationFrame = (call) => real((time) => {
      const start = performance.now();
      call(time);
      globalThis.tell(performance.now() - start);
      if (typedAt) globalThis.painted(performance.now() - typedAt);
      typedAt = 0;
    });
  });
  for (const query of QUERIES) {
    for (const letter of query) {
      await page.keyboard.type(letter);
      await idle(page);
    }
    for (let i = 0; i < query.length; i += 1) {
      await page.keyboard.press('Backspace');
      await idle(page);
    }
  }
  const latencies = keys.sort((a, b) => a - b);
  const frames = script.sort((a, b) => a - b);
  const at = (values, q) => (values[Math.min(values.length - 1, Math.floor(q * values.length))] ?? NaN).toFixed(0);
  console.log(`A key of the search, CPU slowed ${SLOW} times, pixel ratio 1, software GL`);
  console.log(`  to results drawn (${latencies.length} keys): p50 ${at(latencies, 0.5)} ms, p95 ${at(latencies, 0.95)} ms`);
  console.log(`  frame's own script (${frames.length} frames): p50 ${at(frames, 0.5)} ms, p95 ${at(frames, 0.95)} ms`);
} finally {
  await browser.close();
  await server.stop();
}
