// Frames on demand: while nothing changes, no animation frame is asked for at all.
// wake() after anything that may change the picture; a few frames follow, because a press and its
// release reach the app in two frames and a layout settles in the next.

const SETTLE = 3;

export class Frames {
  #draw;                 // (time) -> whether another frame is wanted
  #left = 0;
  #asked = 0;            // handle of the animation frame under way
  #timer = 0;
  #timerAt = Infinity;
  #stopped = false;      // no canvas to draw on
  drawn = 0;

  constructor(draw) {
    this.#draw = draw;
    document.addEventListener('visibilitychange', () => { if (!document.hidden) this.wake(); });
  }

  wake(count = SETTLE) {
    this.#left = Math.max(this.#left, count);
    this.#ask();
  }

  // The earliest of all wishes holds; the frame it brings may wish again.
  wakeAfter(ms) {
    const at = performance.now() + ms;
    if (at >= this.#timerAt) return;
    clearTimeout(this.#timer);
    this.#timerAt = at;
    this.#timer = setTimeout(() => { this.#timerAt = Infinity; this.wake(1); }, ms);
  }

  stop() { this.#stopped = true; cancelAnimationFrame(this.#asked); this.#asked = 0; }
  go() { this.#stopped = false; this.wake(); }

  get busy() { return this.#asked !== 0; }

  #ask() {
    if (this.#asked || this.#stopped || document.hidden) return;
    this.#asked = requestAnimationFrame((time) => this.#tick(time));
  }

  #tick(time) {
    this.#asked = 0;
    this.#left = Math.max(0, this.#left - 1);
    this.drawn += 1;
    const more = this.#draw(time);
    if (more || this.#left > 0) this.#ask();
  }
}
