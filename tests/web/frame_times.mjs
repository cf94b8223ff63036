// Shared by the benchmarks: a quantile, and how long each animation frame's script takes.
export const quantile = (values, q) => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))] ?? NaN;
};

// Run in the page before its own scripts: timed from outside the app.
export function timeFrames() {
  const real = globalThis.requestAnimationFrame.bind(globalThis);
  globalThis.frameTimes = [];
  globalThis.requestAnimationFrame = (call) => real((time) => {
    const start = performance.now();
    call(time);
    globalThis.frameTimes.push(performance.now() - start);
  });
}
