// Offline and updates. sw.js keeps one whole version. A newer one that has arrived waits; it takes
// over at the next start, before the app is started, and the page is then loaded again from it.

const PATIENCE_MS = 3000;
const CHECK_EVERY_MS = 3600e3;

export const canKeepOffline = () => 'serviceWorker' in navigator && location.protocol.startsWith('http');

// Chromium forgets that a version may take over when a request wakes the old one at that very moment: it is
// asked when nothing of this page is still to come.
const wholePage = () => new Promise((resolve) => {
  if (document.readyState === 'complete') resolve(); else addEventListener('load', resolve, { once: true });
});

// True when a newer version took over: the page is being loaded again, start nothing.
export async function takeWaitingUpdate() {
  if (!canKeepOffline()) return false;
  let waiting = null;
  try { waiting = (await navigator.serviceWorker.getRegistration())?.waiting; } catch { return false; }
  if (!waiting) return false;
  await wholePage();
  const active = await new Promise((resolve) => {
    setTimeout(() => resolve(false), PATIENCE_MS);
    waiting.addEventListener('statechange', () => { if (waiting.state === 'activated') resolve(true); });
    waiting.postMessage('take over');
  });
  if (active) location.reload();
  return active;
}

// After the start. onWaiting is called when a newer version is ready for the next start.
export async function keepOffline(onWaiting) {
  if (!canKeepOffline()) return;
  try {
    const registration = await navigator.serviceWorker.register('sw.js', { updateViaCache: 'none' });
    const watch = (worker) => worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && registration.active) onWaiting();
    });
    watch(registration.installing);
    registration.addEventListener('updatefound', () => watch(registration.installing));
    let checked = Date.now();
    document.addEventListener('visibilitychange', () => {
      if (document.hidden || Date.now() - checked < CHECK_EVERY_MS) return;
      checked = Date.now();
      registration.update().catch(() => {});       // no signal: nothing to tell
    });
  } catch {
    // Private windows of some browsers refuse; the app runs all the same while there is a signal.
  }
}
