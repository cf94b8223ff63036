// What the device is like and prefers: size, pixel ratio, safe areas, night, motion, units; and
// the few things the app may ask of it.

const media = {
  dark: matchMedia('(prefers-color-scheme: dark)'),
  still: matchMedia('(prefers-reduced-motion: reduce)'),
};
// Regions where a shop sells wire by AWG and lengths are in feet.
const US_REGIONS = new Set(['US', 'LR', 'MM']);

function usUnits() {
  try { return US_REGIONS.has(new Intl.Locale(navigator.language).region); } catch { return false; }
}

// In the order of app_start and app_surroundings.
export function around(stage) {
  // env() turns into px only on a used property: the paddings of #safe carry it.
  const used = getComputedStyle(document.getElementById('safe'));
  const insets = ['paddingTop', 'paddingRight', 'paddingBottom', 'paddingLeft'].map((side) => Number.parseFloat(used[side]) || 0);
  return [stage.clientWidth, stage.clientHeight, devicePixelRatio || 1, ...insets,
    media.dark.matches ? 1 : 0, media.still.matches ? 1 : 0, usUnits() ? 1 : 0];
}

export function onSurroundings(stage, changed) {
  new ResizeObserver(changed).observe(stage);
  addEventListener('resize', changed);              // a new pixel ratio alone
  for (const query of Object.values(media)) query.addEventListener('change', changed);
}

export function setDark(dark) {
  const { classList } = document.documentElement;
  classList.toggle('night', dark);
  classList.toggle('day', !dark);
  const ground = dark ? '#0F1113' : '#F3F0E8';
  for (const meta of document.querySelectorAll('meta[name=theme-color]')) meta.content = ground;
}

// The screen stays on while the app asks for it; the browser drops the wish when hidden.
let awake = false;
let lock = null;
async function holdScreen() {
  if (!awake || lock || document.hidden || !navigator.wakeLock) return;
  try {
    lock = await navigator.wakeLock.request('screen');
    lock.addEventListener('release', () => { lock = null; });
  } catch { lock = null; }                          // low battery: the phone may say no
}
document.addEventListener('visibilitychange', holdScreen);
export function keepAwake(wanted) {
  awake = wanted;
  if (wanted) holdScreen();
  else lock?.release();
}

// The real text fields of the page use the type that is already in the wasm.
export function useAppType(app) {
  try {
    const bytes = app.bytes(app.call('app_font'), app.call('app_font_size'));
    document.fonts.add(new FontFace('Branchlight Text', bytes));
  } catch { /* the system's own type will do */ }
}
