// Keeps one whole version of the app for use with no signal. FILES (path -> SHA-256, base64) and
// VERSION are written in by web/pack.mjs.
//
// Whole or nothing: a version is installed only when every file arrived and has its hash; a server
// in the middle of a deployment gives a failed install, and the version before stays in use. A
// page never gets files of two versions: what is missing here is fetched only with its hash.
const VERSION = '@VERSION@';
const FILES = new Map(Object.entries(/*@FILES@*/{}));
const PREFIX = 'branchlight-';
const CACHE = PREFIX + VERSION;

const urlOf = (path) => new URL(path, registration.scope).href;

async function hasHash(response, hash) {
  const digest = await crypto.subtle.digest('SHA-256', await response.clone().arrayBuffer());
  return btoa(String.fromCharCode(...new Uint8Array(digest))) === hash;
}

// From a version already here when the file did not change, else from the server.
async function bring(path, hash) {
  const here = await caches.match(urlOf(path));
  if (here && await hasHash(here, hash)) return here;
  const response = await fetch(urlOf(path), { cache: 'no-cache', redirect: 'error' });
  if (!response.ok) throw new Error(`${path}: ${response.status}`);
  if (!await hasHash(response, hash)) throw new Error(`${path} is of another version`);
  return response;
}

async function install() {
  try {
    const files = await Promise.all([...FILES].map(async ([path, hash]) => [path, await bring(path, hash)]));
    const cache = await caches.open(CACHE);
    await Promise.all(files.map(([path, response]) => cache.put(urlOf(path), response)));
  } catch (error) {
    await caches.delete(CACHE);
    throw error;
  }
}

async function dropOtherVersions() {
  for (const name of await caches.keys()) {
    if (name.startsWith(PREFIX) && name !== CACHE) await caches.delete(name);
  }
}

async function answer(path) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(urlOf(path));
  if (kept) return kept;
  const response = await bring(path, FILES.get(path));    // the browser dropped it: same file or none
  await cache.put(urlOf(path), response.clone());
  return response;
}

addEventListener('install', (event) => event.waitUntil(install()));
addEventListener('activate', (event) => event.waitUntil(dropOtherVersions()));
addEventListener('message', (event) => { if (event.data === 'take over') skipWaiting(); });
addEventListener('fetch', (event) => {
  const { request } = event;
  const url = new URL(request.url);
  if (request.method !== 'GET' || !url.href.startsWith(registration.scope)) return;
  const path = url.href.slice(registration.scope.length).replace(/[?#].*$/, '') || 'index.html';
  if (FILES.has(path)) event.respondWith(answer(path));
});
