// Copies of the built app as a server would have them over time: a newer version, and one that
// is only half there. Used by the update tests.
import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DIST } from './support.mjs';

const sha = (bytes) => createHash('sha256').update(bytes).digest('base64');

export function copyOfDist() {
  const folder = mkdtempSync(join(tmpdir(), 'branchlight-dist-'));
  cpSync(DIST, folder, { recursive: true });
  return folder;
}

// The next version: another index.html (marked) and another licences.txt, told by a sw.js of its
// own. `only` names the files that have reached the server so far.
export function deploy(folder, mark, only = ['index.html', 'licences.txt', 'sw.js']) {
  const files = new Map();
  const page = readFileSync(join(folder, 'index.html'), 'utf8');
  files.set('index.html', page.replace(/<meta name="build"[^>]*>\n?/, '').replace('<title>', `<meta name="build" content="${mark}">\n<title>`));
  files.set('licences.txt', `${mark}\n` + readFileSync(join(DIST, 'licences.txt'), 'utf8'));
  let worker = readFileSync(join(DIST, 'sw.js'), 'utf8');
  for (const [name, text] of files) worker = worker.replace(sha(readFileSync(join(DIST, name))), sha(text));
  const version = createHash('sha256').update(mark).digest('hex').slice(0, 16);
  worker = worker.replace(/(["'])[0-9a-f]{16}\1/, `"${version}"`);
  files.set('sw.js', worker);
  for (const name of only) writeFileSync(join(folder, name), files.get(name));
  return version;
}

export const buildOf = (page) => page.evaluate(() => document.querySelector('meta[name=build]')?.content ?? 'first');

// What the service worker keeps: cache name -> {path: text or size}.
export const kept = (page) => page.evaluate(async () => {
  const all = {};
  for (const name of await caches.keys()) {
    const cache = await caches.open(name);
    all[name] = {};
    for (const request of await cache.keys()) {
      const body = await (await cache.match(request)).text();
      all[name][new URL(request.url).pathname] = body.slice(0, 300);
    }
  }
  return all;
});

// Until the worker of this page has finished what it does: installed one, or given up.
export async function workerSettled(page, state = 'active') {
  for (const end = Date.now() + 20000; Date.now() < end;) {
    const there = await page.evaluate(async (wanted) => {
      const registration = await navigator.serviceWorker.getRegistration();
      if (!registration || registration.installing) return false;
      return wanted === 'active' ? registration.active?.state === 'activated' : Boolean(registration[wanted]);
    }, state);
    if (there) return;
    await new Promise((done) => setTimeout(done, 50));
  }
  throw new Error(`the service worker did not come to be ${state}`);
}
