// Only one tab has the circuits open at a time; two that write would undo each other. The tab
// that comes second says so and offers to take over; the first one then stops and says so too.
// Nothing is lost: every change was already on its way to the storage when it was made.

const LOCK = 'branchlight';

// Resolves to 'ours' or 'taken'. onLost is called when another tab takes over later.
export function claimTab({ take = false, onLost }) {
  if (!navigator.locks) return Promise.resolve('ours');   // very old browsers: no second tab check
  return new Promise((resolve) => {
    let had = false;
    const options = take ? { steal: true } : { ifAvailable: true };
    navigator.locks.request(LOCK, options, (lock) => {
      if (!lock) { resolve('taken'); return undefined; }
      had = true;
      resolve('ours');
      return new Promise(() => {});    // held until the page goes away
    }).catch(() => { if (had) onLost(); else resolve('ours'); });
  });
}
