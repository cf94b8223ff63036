// Calls into the wasm: text as UTF-8 bytes, and one place where a trap of the app is caught.

const encoder = new TextEncoder();

export class AppDoor {
  #module;
  #onTrap;
  #broken = false;
  #inside = false;

  constructor(module, onTrap) { this.#module = module; this.#onTrap = onTrap; }

  get broken() { return this.#broken; }
  get heapBytes() { return this.#module.heapBytes(); }

  // Arguments: numbers as they are, strings and byte arrays as pointer and length. A call made
  // while the app is at work (it asked the host, the host answered at once) waits until it is done.
  call(name, ...values) {
    if (this.#broken) return 0;
    if (this.#inside) {
      queueMicrotask(() => this.call(name, ...values));
      return 0;
    }
    const given = [];
    this.#inside = true;
    try {
      const numbers = values.flatMap((value) => {
        if (typeof value === 'number') return value;
        const bytes = typeof value === 'string' ? encoder.encode(value) : value;
        const at = this.#module.put(bytes);
        given.push(at);
        return [at, bytes.length];
      });
      return this.#module['_' + name](...numbers);
    } catch (error) {
      this.#broken = true;
      this.#onTrap(error);
      return 0;
    } finally {
      this.#inside = false;
      if (!this.#broken) given.forEach((at) => this.#module._free(at));
    }
  }

  bytes(at, size) { return this.#module.look(at, size); }
}
