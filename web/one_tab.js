// Only one tab has the circuits open at a time; two that write would undo each other. The tab
// that comes second says so and offers to take over; the first one then stops and says so too.
// Nothing is lost: every change was already on its way to the storage when it was made.

const LOCK = 'branchlight';
const PATIENCE_MS = 1500;      // a tab that is just being closed or loaded again still holds it

// Resolves to 'ours' or 'taken'. onLost is called when another tab takes over later.
export function claimTab({ take = false, onLost }) {
  if (!navigator.locks) return Promise.resolve('ours');   // very old browsers: no second tab check
  return new Promise((resolve) => {
    const giveUp = new AbortController();
    const patience = take ? 0 : setTimeout(() => giveUp.abort(), PATIENCE_MS);
    let had = false;
    navigator.locks.request(LOCK, take ? { steal: true } : { signal: giveUp.signal }, () => {
      had = true;
      clearTimeout(patience);
      resolve('ours');
      return new Promise(() => {});    // held until the page goes away
    }).catch(() => {
      if (had) onLost();
      else resolve(giveUp.signal.aborted ? 'taken' : 'ours');
    });
  });
}
