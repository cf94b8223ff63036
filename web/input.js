// Fingers, mouse, wheel and keys, as they come, with the time of the event itself: a busy phone
// delivers late, and the speed of a flick must not depend on that.

const PHASE = { touchstart: 0, touchmove: 1, touchend: 2, touchcancel: 3 };
const WHEEL_PIXELS_PER_LINE = 100 / 3;    // browsers send 100 px for the three lines of a notch
const LINES_PER_PAGE = 20;
const BUTTON = [0, 2, 1];                 // DOM's left, middle, right to the app's

export function listen({ stage, app, frames, mirror, onInput }) {
  let lastPointer = -Infinity;            // when a real pointer last went down

  const after = (event) => {
    onInput(event.timeStamp);
    mirror.focusIfWanted();               // still within the gesture, or the phone shows no keyboard
    frames.wake();
  };

  for (const [type, phase] of Object.entries(PHASE)) {
    stage.addEventListener(type, (event) => {
      const typing = mirror.isTypedIn(event.target);
      const field = mirror.fieldInUse();
      for (const touch of event.changedTouches) {
        app.call('app_touch', phase, touch.identifier, touch.clientX, touch.clientY, event.timeStamp);
      }
      // No emulated mouse, no page pan; but a finger may place the text cursor in a field.
      if (!typing && event.cancelable) event.preventDefault();
      after(event);
      // On the lift only: the keyboard leaving earlier would move things away under the finger.
      if (phase === 2 && field && !typing && document.activeElement === field) field.blur();
    }, { passive: false });
  }

  stage.addEventListener('pointerdown', (event) => { lastPointer = event.timeStamp; }, true);

  // A screen reader's click may come with made-up mouse events; the click itself is what counts.
  const madeUp = (event) => event.timeStamp - lastPointer > 1500 && event.clientX === 0 && event.clientY === 0;
  let held = false;
  stage.addEventListener('mousedown', (event) => {
    if (madeUp(event) || event.button > 2) return;
    held = true;
    app.call('app_mouse_move', event.clientX, event.clientY);
    app.call('app_mouse_button', BUTTON[event.button], 1);
    if (!mirror.isTextbox(event.target)) {
      event.preventDefault();             // the focus stays where it is
      mirror.fieldInUse()?.blur();
    }
    after(event);
  });
  addEventListener('mouseup', (event) => {
    if (!held || event.button > 2) return;
    held = false;
    app.call('app_mouse_move', event.clientX, event.clientY);
    app.call('app_mouse_button', BUTTON[event.button], 0);
    after(event);
  });
  addEventListener('mousemove', (event) => {
    app.call('app_mouse_move', event.clientX, event.clientY);
    after(event);
  });
  document.documentElement.addEventListener('mouseleave', (event) => {
    app.call('app_mouse_move', -1e6, -1e6);
    after(event);
  });
  stage.addEventListener('contextmenu', (event) => {
    if (!mirror.isTypedIn(event.target)) event.preventDefault();
  });
  stage.addEventListener('wheel', (event) => {
    if (event.ctrlKey) return;            // the browser's own zoom
    const lines = [1 / WHEEL_PIXELS_PER_LINE, 1, LINES_PER_PAGE][event.deltaMode];
    app.call('app_mouse_move', event.clientX, event.clientY);
    app.call('app_wheel', event.deltaX * lines, event.deltaY * lines);
    event.preventDefault();
    after(event);
  }, { passive: false });

  // Tab moves through the mirror; Enter and Space press its elements. Keys typed in a field are
  // the field's. The rest goes to the app: Escape, arrows, digits for the open keypad.
  const takenByPage = (event) => {
    if (event.defaultPrevented || event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.code === 'Tab') return true;
    return mirror.takesKey(event);
  };
  const key = (event, down) => {
    if (takenByPage(event)) { frames.wake(); return; }
    app.call('app_key', event.code, down);
    after(event);
  };
  addEventListener('keydown', (event) => key(event, 1));
  addEventListener('keyup', (event) => key(event, 0));
  addEventListener('focus', () => frames.wake());
  addEventListener('blur', () => frames.wake());

  // True when a click repeats what a real pointer has already told the app.
  return { recentPointer: (event) => event.detail > 0 && event.timeStamp - lastPointer < 1500 };
}
