// What the next check of a trace costs in the browser: from the tap on an answer to the frame that shows
// the next one, with the CPU slowed. Printed, not judged. Part of bench.mjs.
import { quantile, timeFrames } from './frame_times.mjs';
import { bring, find, idle, openPhone, press, tap } from './support.mjs';
import { chainFile, goTo, importFile, openNotebook, scratch, understand } from './walk.mjs';

const ANSWERS = 10;

export async function nextCheck(browser, server, outlets, slow) {
  const files = scratch();
  const context = await browser.newContext({ viewport: { width: 412, height: 915 }, isMobile: true, hasTouch: true, locale: 'en-GB' });
  await context.addInitScript(timeFrames);
  const { page, cdp } = await openPhone(browser, server.url, { context });
  await understand(page);
  await openNotebook(page);
  await importFile(page, files.file('chain.json', chainFile(outlets)));
  files.clear();
  await goTo(page, 'Trace');
  await press(page, 'checkbox', 'Meter');
  await press(page, 'button', 'One outlet is dead');
  const last = find(page, 'button', new RegExp(`Lamp ${outlets}\\b`)).first();
  await bring(page, last);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: slow });
  const dearest = async (target) => {      // the dearest frame of one tap, and of a frame that changes nothing
    const box = await target.boundingBox();
    await page.evaluate(() => { frameTimes.length = 0; });
    await tap(page, box.x + box.width / 2, box.y + box.height / 2);
    return Math.max(...await page.evaluate(() => frameTimes));
  };
  const still = async () => {
    await page.evaluate(() => { frameTimes.length = 0; branchlight.wake(); });
    await idle(page);
    return quantile(await page.evaluate(() => frameTimes), 0.5);
  };
  const first = await dearest(last);
  const plain = [];
  const later = [];
  for (let i = 0; i < ANSWERS && await find(page, 'button', 'Not sure').count(); i += 1) {
    plain.push(await still());
    later.push(await dearest(find(page, 'button', 'Not sure').first()));
  }
  await context.close();
  const frame = quantile(plain, 0.5);
  return { frame, first: first - frame, later: quantile(later, 0.5) - frame, worst: Math.max(...later) - frame, timed: later.length };
}
