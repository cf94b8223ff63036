// What the user made, kept in IndexedDB: one text per key. Each change is one transaction of its
// own, begun at once and committed at once, so they land in order and survive the page being
// closed right after. A change that could not be kept is told, never swallowed.
//
// Stores: records  key -> text, as it is now.
//         copies   [key, day] -> text as it was before the first change of that day; three kept.
//         aside    time -> {key: text}, all records as set aside by the failure page.

const NAME = 'branchlight';
const COPIES_KEPT = 3;

const day = () => new Date().toISOString().slice(0, 10);

function open() {
  return new Promise((resolve, reject) => {
    if (!globalThis.indexedDB) { reject(new Error('this browser keeps nothing')); return; }
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      for (const store of ['records', 'copies', 'aside']) request.result.createObjectStore(store);
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('another page holds the data'));
  });
}

const finished = (request) => new Promise((resolve, reject) => {
  request.onsuccess = () => resolve(request.result);
  request.onerror = () => reject(request.error);
});

// Why a change was not kept, for a person: the end of "Not saved: ...".
export function storageWords(error) {
  if (error?.name === 'QuotaExceededError') return 'the phone has no room left, free some space';
  if (error?.name === 'InvalidStateError') return 'the browser closed its storage, start Branchlight again';
  return `the browser refused to keep it (${error?.name || 'no reason given'})`;
}

export class Storage {
  #db = null;
  #known = new Map();      // key -> text, as last asked for
  #copied = new Set();     // keys with a copy of today
  #waiting = 0;
  #closed = false;
  #asked = false;
  onFailure = () => {};    // (key, words)

  // Gives what is kept. Throws when the browser keeps nothing.
  async start() {
    this.#db = await open();
    this.#db.onversionchange = () => this.#db.close();
    const records = this.#db.transaction('records').objectStore('records');
    const [keys, texts] = await Promise.all([finished(records.getAllKeys()), finished(records.getAll())]);
    keys.forEach((key, i) => this.#known.set(key, texts[i]));
    const today = day();
    const copies = await finished(this.#db.transaction('copies').objectStore('copies').getAllKeys());
    for (const [key, when] of copies) if (when === today) this.#copied.add(key);
    return [...this.#known].filter(([, text]) => typeof text === 'string');
  }

  get waiting() { return this.#waiting; }

  store(key, text) {
    this.#change(key, (records) => records.put(text, key));
    this.#known.set(key, text);
    this.#askToStay();
  }

  remove(key) {
    this.#change(key, (records) => records.delete(key));
    this.#known.delete(key);
  }

  // From now on nothing is written: another tab has taken over.
  close() { this.#closed = true; }

  #change(key, work) {
    if (this.#closed) return;
    if (!this.#db) { this.onFailure(key, 'this browser keeps nothing for this page'); return; }
    this.#waiting += 1;
    let over = false;
    const done = (error) => {
      if (over) return;
      over = true;
      this.#waiting -= 1;
      if (error) this.onFailure(key, storageWords(error));
    };
    try {
      const change = this.#db.transaction(['records', 'copies'], 'readwrite', { durability: 'strict' });
      change.oncomplete = () => done(null);
      change.onabort = () => done(change.error || new Error('given up'));
      const before = this.#known.get(key);
      if (before !== undefined && !this.#copied.has(key)) {
        this.#copied.add(key);
        this.#keepCopy(change.objectStore('copies'), key, before);
      }
      work(change.objectStore('records'));
      change.commit?.();
    } catch (error) {
      done(error);
    }
  }

  // Only the names of old copies must be read to drop them; that is left to a later transaction,
  // so that this one can be committed at once.
  #keepCopy(copies, key, text) {
    copies.put(text, [key, day()]);
    queueMicrotask(() => {
      try {
        const tidy = this.#db.transaction('copies', 'readwrite').objectStore('copies');
        tidy.getAllKeys(IDBKeyRange.bound([key], [key, []])).onsuccess = (event) => {
          for (const old of event.target.result.slice(0, -COPIES_KEPT)) tidy.delete(old);
        };
      } catch { /* tidying can wait */ }
    });
  }

  // Asks the browser once not to clear the data when space is short. It may say no.
  #askToStay() {
    if (this.#asked || !navigator.storage?.persist) return;
    this.#asked = true;
    navigator.storage.persisted().then((kept) => kept || navigator.storage.persist()).catch(() => {});
  }
}

// For the failure page, which trusts nothing that ran before: everything, read afresh.
export async function everythingKept() {
  const db = await open();
  const all = {};
  for (const name of ['records', 'copies', 'aside']) {
    const store = db.transaction(name).objectStore(name);
    const [keys, values] = await Promise.all([finished(store.getAllKeys()), finished(store.getAll())]);
    all[name] = keys.map((key, i) => ({ key, value: values[i] }));
  }
  db.close();
  return all;
}

// Moves all records out of the app's way without losing one.
export async function setAside() {
  const db = await open();
  const move = db.transaction(['records', 'aside'], 'readwrite', { durability: 'strict' });
  const records = move.objectStore('records');
  const [keys, texts] = await Promise.all([finished(records.getAllKeys()), finished(records.getAll())]);
  move.objectStore('aside').put(Object.fromEntries(keys.map((key, i) => [key, texts[i]])), Date.now());
  records.clear();
  await new Promise((resolve, reject) => { move.oncomplete = resolve; move.onabort = () => reject(move.error); });
  db.close();
}
