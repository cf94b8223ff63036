// Everything drawn on the canvas, once more as real elements: role, name, value and state for
// screen readers, keyboards and switches, lying where it is drawn. wasm/mirror/feed tells what
// changed; focus, presses and typed text go back as actions.
//
// Rules learnt by doing: stale elements go before new ones are placed, or a moved element loses
// the focus; an element is moved only when its place in the order changed; a scroll moves one
// transform per region; live text keeps its element and changes its words.

const ROLES = ['heading', 'text', 'button', 'link', 'checkbox', 'switch', 'radio', 'spin', 'textbox',
  'image', 'dialog', 'list', 'group', 'navigation', 'status', 'alert', 'end'];
const HOLDS = new Set(['dialog', 'list', 'group', 'navigation']);
const PRESSED = new Set(['button', 'link', 'checkbox', 'switch', 'radio']);
const WORDS = new Set(['heading', 'text', 'button', 'link', 'status', 'alert']);   // name is the content
const FOCUSED = new Set([...PRESSED, 'spin', 'textbox']);
const STATE = { checked: 1, disabled: 2, current: 4, expanded: 8, collapsed: 16, invalid: 32 };
const ACTION = { press: 0, setText: 1, stepUp: 2, stepDown: 3, focus: 4, blur: 5 };
const STATUS_DELAY_MS = 80;   // a live region is heard when its words change, not when it appears

function makeElement(role, level) {
  const make = (tag, attributes = {}) => {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    return element;
  };
  switch (role) {
    case 'heading': return make('h' + Math.min(3, Math.max(1, level)));
    case 'text': return make('p');
    case 'button': return make('button', { type: 'button' });
    case 'link': return make('button', { type: 'button', role: 'link' });
    case 'checkbox': return make('input', { type: 'checkbox' });
    case 'switch': return make('input', { type: 'checkbox', role: 'switch' });
    case 'radio': return make('input', { type: 'radio' });
    case 'spin': return make('input', { type: 'text', role: 'spinbutton', inputmode: 'decimal', autocomplete: 'off',
      enterkeyhint: 'done', class: 'field' });
    case 'textbox': return make('input', { type: 'text', autocomplete: 'off', enterkeyhint: 'done', spellcheck: 'false',
      class: 'field' });
    case 'image': return make('div', { role: 'img' });
    case 'dialog': return make('div', { role: 'dialog', 'aria-modal': 'true', tabindex: '-1' });
    case 'list': return make('div', { role: 'list' });
    case 'group': return make('div', { role: 'group' });
    case 'navigation': return make('nav');
    case 'status': return make('div', { role: 'status' });
    default: return make('div', { role: 'alert' });
  }
}

const number = (text) => Number.parseFloat(text.replace('−', '-').replace(',', '.'));

export class Mirror {
  #box;
  #app;
  #frames;
  #nodes = new Map();       // key -> node
  #moved = new Map();       // region -> [x, y]
  #wrappers = new Map();    // key -> {element, region, under}
  #wanted = 0;              // textbox the app last asked to be typed in
  #quiet = false;           // focus moves of our own are not told
  #dialogs = [];            // open dialogs, outermost first: {node, opener}
  #started = false;
  isRecentPointer = () => false;

  constructor(box, app, frames) {
    this.#box = { element: box, key: '', region: 0, x: 0, y: 0, role: 'root' };
    this.#app = app;
    this.#frames = frames;
    box.addEventListener('click', (event) => this.#clicked(event));
    box.addEventListener('focusin', (event) => this.#focused(event, ACTION.focus));
    box.addEventListener('focusout', (event) => this.#focused(event, ACTION.blur));
    box.addEventListener('input', (event) => this.#typed(event));
    box.addEventListener('change', (event) => this.#committed(event));
    box.addEventListener('keydown', (event) => this.#keyed(event));
  }

  // ---- from the app

  all(text, moves) {
    this.#readMoves(moves);
    const records = this.#parse(text);
    const focused = this.#nodeOf(document.activeElement);
    this.#quiet = true;
    this.#dropStale(records);
    this.#place(records);
    this.#dropWrappers();
    if (focused && this.#nodes.get(focused.key) === focused && document.activeElement !== focused.element) {
      focused.element.focus({ preventScroll: true });
    }
    this.#quiet = false;
    this.#followDialogs(focused);
    this.#started = true;
  }

  moves(text) {
    this.#readMoves(text);
    for (const wrapper of this.#wrappers.values()) this.#moveWrapper(wrapper);
  }

  // ---- text fields

  // Puts the text cursor where the app asks for it; call within the user's gesture.
  focusIfWanted() {
    const wanted = this.#app.call('app_focus_wanted') >>> 0;
    if (wanted === this.#wanted) return;
    this.#wanted = wanted;
    const node = this.#nodes.get(String(wanted));
    if (!wanted || !node) return;
    node.element.focus({ preventScroll: true });
    node.element.select?.();
  }
  isTextbox(element) { return this.#nodeOf(element)?.role === 'textbox'; }
  isTypedIn(element) { return Boolean(this.#nodeOf(element)?.typing); }
  fieldInUse() { return this.#nodeOf(document.activeElement)?.typing ? document.activeElement : null; }

  // Keys that the focused element uses itself.
  takesKey(event) {
    const node = this.#nodeOf(event.target);
    if (!node) return false;
    if (node.role === 'textbox' || node.typing) return true;
    if (node.role === 'spin') return event.key.length === 1 || ['ArrowUp', 'ArrowDown', 'Backspace', 'Delete', 'Enter'].includes(event.key);
    if (node.role === 'radio' && event.key.startsWith('Arrow')) return true;
    return PRESSED.has(node.role) && (event.key === 'Enter' || event.key === ' ');
  }

  // ---- reading the feed

  #parse(text) {
    const seen = new Map();
    return text.split('\x1E').slice(0, -1).map((line) => {
      const [id, role, level, state, region, x, y, width, height, low, high, name, value, description] = line.split('\x1F');
      const count = (seen.get(id) || 0) + 1;
      seen.set(id, count);
      return {
        key: count === 1 ? id : id + '.' + count, id: +id, role: ROLES[+role], level: +level, state: +state, region: +region,
        x: +x, y: +y, width: +width, height: +height, low: +low, high: +high, name, value, description,
      };
    });
  }

  #readMoves(text) {
    this.#moved.clear();
    for (const line of text.split('\x1E').slice(0, -1)) {
      const [region, x, y] = line.split('\x1F');
      this.#moved.set(+region, [+x, +y]);
    }
  }

  // ---- elements

  #dropStale(records) {
    const kinds = new Map(records.filter((r) => r.role !== 'end').map((r) => [r.key, r.role + r.level]));
    for (const [key, node] of this.#nodes) {
      if (kinds.get(key) === node.role + node.level) continue;
      (node.row || node.element).remove();
      this.#nodes.delete(key);
    }
  }

  #place(records) {
    const stack = [{ node: this.#box, after: null, wrapper: null, wrappers: 0 }];
    this.#usedWrappers = new Set();
    for (const record of records) {
      const top = stack[stack.length - 1];
      if (record.role === 'end') {
        if (stack.length > 1) stack.pop();
        continue;
      }
      const node = this.#node(record);
      this.#put(node, record, top);
      this.#dress(node, record, top.node);
      if (HOLDS.has(record.role)) stack.push({ node, after: null, wrapper: null, wrappers: 0 });
    }
  }
  #usedWrappers = new Set();

  #node(record) {
    let node = this.#nodes.get(record.key);
    if (!node) {
      const element = makeElement(record.role, record.level);
      node = { element, key: record.key, id: record.id, role: record.role, level: record.level, shown: {}, typing: false };
      element.branchlight = node;
      this.#nodes.set(record.key, node);
    }
    return node;
  }

  // Into its holder, behind the one before; within a wrapper where it scrolls and its holder not.
  #put(node, record, top) {
    const element = this.#outer(node, top.node);
    let home = top;
    if (record.region === top.node.region) {
      top.wrapper = null;
    } else {
      if (!top.wrapper || top.wrapper.wrapper.region !== record.region) this.#openWrapper(record.region, top);
      home = top.wrapper;
    }
    const parent = home.node.element;
    const next = home.after ? home.after.nextSibling : parent.firstChild;
    if (next !== element) parent.insertBefore(element, next);
    home.after = element;
  }

  // Children of a list stand in rows of their own, as the role asks for.
  #outer(node, holder) {
    if (holder.role !== 'list') {
      if (node.row) { node.row.remove(); node.row = null; }
      return node.element;
    }
    if (!node.row) {
      node.row = document.createElement('div');
      node.row.className = 'row';
      node.row.setAttribute('role', 'listitem');
      node.row.append(node.element);
    }
    return node.row;
  }

  #openWrapper(region, top) {
    top.wrappers += 1;
    const key = [top.node.key, region, top.wrappers].join('/');
    let wrapper = this.#wrappers.get(key);
    if (!wrapper) {
      const element = document.createElement('div');
      element.setAttribute('role', 'presentation');
      wrapper = { element, region, under: top.node.region };
      this.#wrappers.set(key, wrapper);
    }
    wrapper.under = top.node.region;
    this.#usedWrappers.add(key);
    const parent = top.node.element;
    const next = top.after ? top.after.nextSibling : parent.firstChild;
    if (next !== wrapper.element) parent.insertBefore(wrapper.element, next);
    top.after = wrapper.element;
    top.wrapper = { node: { ...top.node, element: wrapper.element }, after: null, wrapper };
    this.#moveWrapper(wrapper);
  }

  #moveWrapper(wrapper) {
    const [x, y] = this.#moved.get(wrapper.region) || [0, 0];
    const [baseX, baseY] = this.#moved.get(wrapper.under) || [0, 0];
    const transform = `translate(${x - baseX}px,${y - baseY}px)`;
    if (wrapper.transform !== transform) wrapper.element.style.transform = wrapper.transform = transform;
  }

  #dropWrappers() {
    for (const [key, wrapper] of this.#wrappers) {
      if (this.#usedWrappers.has(key)) continue;
      wrapper.element.remove();
      this.#wrappers.delete(key);
    }
  }

  // ---- what an element says

  #dress(node, record, holder) {
    node.region = record.region;
    node.x = record.x;
    node.y = record.y;
    const { element } = node;
    this.#show(node, 'transform', `translate(${record.x - holder.x}px,${record.y - holder.y}px)`, (v) => { element.style.transform = v; });
    this.#show(node, 'width', record.width, (v) => { element.style.width = v + 'px'; });
    this.#show(node, 'height', record.height, (v) => { element.style.height = v + 'px'; });
    this.#words(node, record);
    this.#attribute(node, 'aria-description', record.description || null);
    this.#attribute(node, 'aria-disabled', record.state & STATE.disabled ? 'true' : null);
    this.#attribute(node, 'aria-invalid', record.state & STATE.invalid ? 'true' : null);
    this.#attribute(node, 'aria-current', record.state & STATE.current ? (record.role === 'link' ? 'page' : 'true') : null);
    this.#attribute(node, 'aria-expanded', record.state & STATE.expanded ? 'true' : record.state & STATE.collapsed ? 'false' : null);
    if (element.type === 'checkbox' || element.type === 'radio') {
      const checked = Boolean(record.state & STATE.checked);
      if (element.checked !== checked) element.checked = checked;
      if (record.role === 'radio') this.#attribute(node, 'name', 'group-' + holder.key);
    }
    if (record.role === 'spin' || record.role === 'textbox') this.#value(node, record);
  }

  #words(node, record) {
    const said = record.value && WORDS.has(record.role) ? `${record.name} ${record.value}` : record.name;
    if (!WORDS.has(record.role)) {
      this.#attribute(node, 'aria-label', said || null);
      return;
    }
    this.#show(node, 'words', said, (words) => {
      const late = record.role === 'status' && this.#started && !node.element.textContent;
      if (!late) { node.element.textContent = words; return; }
      setTimeout(() => { node.element.textContent = node.shown.words; }, STATUS_DELAY_MS);
    });
  }

  #value(node, record) {
    const { element } = node;
    if (record.role === 'spin') {
      this.#attribute(node, 'aria-valuetext', record.value);
      const now = number(record.value);
      this.#attribute(node, 'aria-valuenow', Number.isFinite(now) ? now : null);
      this.#attribute(node, 'aria-valuemin', record.high > record.low ? record.low : null);
      this.#attribute(node, 'aria-valuemax', record.high > record.low ? record.high : null);
    }
    node.value = record.value;
    if (node.typing || element.value === record.value) return;
    element.value = record.value;
    if (document.activeElement === element) element.select();     // what is typed next takes its place
  }

  #attribute(node, name, value) {
    this.#show(node, name, value, () => {
      if (value === null) node.element.removeAttribute(name);
      else node.element.setAttribute(name, value);
    });
  }

  #show(node, what, value, apply) {
    if (node.shown[what] === value) return;
    node.shown[what] = value;
    apply(value);
  }

  // ---- dialogs: the focus goes in when one opens, and back to where it was when it closes

  #followDialogs(focusedBefore) {
    const open = [...this.#nodes.values()].filter((node) => node.role === 'dialog');
    let last = null;
    while (this.#dialogs.length && !open.includes(this.#dialogs[this.#dialogs.length - 1].node)) last = this.#dialogs.pop();
    for (const node of open) {
      if (this.#dialogs.some((dialog) => dialog.node === node)) continue;
      this.#dialogs.push({ node, opener: focusedBefore?.key ?? null });
      last = null;
      if (!this.#nodeOf(document.activeElement)?.typing) this.#focusQuietly(node);
    }
    if (!last) return;
    const back = this.#nodes.get(last.opener) || this.#dialogs[this.#dialogs.length - 1]?.node;
    if (back) this.#focusQuietly(back);
  }

  #focusQuietly(node) {
    this.#quiet = true;
    node.element.focus({ preventScroll: true });
    this.#quiet = false;
  }

  #keepTabInside(event) {
    const dialog = this.#dialogs[this.#dialogs.length - 1]?.node.element;
    if (!dialog) return;
    const stops = [...dialog.querySelectorAll('button, input')];
    if (!stops.length) return;
    const first = stops[0];
    const last = stops[stops.length - 1];
    const at = document.activeElement;
    if (event.shiftKey ? at === first || at === dialog : at === last) {
      event.preventDefault();
      (event.shiftKey ? last : first).focus({ preventScroll: true });
    }
  }

  // ---- from the page

  #nodeOf(element) { return element?.branchlight ?? null; }

  #act(node, kind, text = '') {
    this.#app.call('app_act', node.id, kind, text);
    this.#frames.wake();
  }

  #clicked(event) {
    const node = this.#nodeOf(event.target);
    if (!node || !PRESSED.has(node.role)) return;
    if (node.role === 'checkbox' || node.role === 'switch' || node.role === 'radio') event.preventDefault();
    if (this.isRecentPointer(event)) return;     // the app has seen the pointer itself
    this.#act(node, ACTION.press);
    this.focusIfWanted();
  }

  #focused(event, kind) {
    const node = this.#nodeOf(event.target);
    if (!node || !FOCUSED.has(node.role)) return;
    if (node.role === 'textbox') this.#setTyping(node, kind === ACTION.focus);
    if (kind === ACTION.blur) {
      this.#wanted = 0;
      if (node.role === 'spin' && node.typing) this.#finishSpin(node, true);
    } else if (node.role === 'spin') {
      node.element.select();
    }
    if (!this.#quiet) this.#act(node, kind);
  }

  #setTyping(node, typing) {
    node.typing = typing;
    node.element.classList.toggle('typed', typing);
    if (!typing && node.element.value !== node.value) node.element.value = node.value;
  }

  #typed(event) {
    const node = this.#nodeOf(event.target);
    if (node?.role === 'textbox') this.#act(node, ACTION.setText, node.element.value);
    if (node?.role === 'spin' && !node.typing) this.#setTyping(node, true);
  }

  // A value set from outside the keyboard (dictation, automation) is as good as a typed one.
  #committed(event) {
    const node = this.#nodeOf(event.target);
    if (node?.role === 'spin' && node.typing) this.#finishSpin(node, true);
  }

  #finishSpin(node, keep) {
    const text = node.element.value;
    const changed = keep && text.trim() !== '' && text !== node.value;
    this.#setTyping(node, false);
    if (changed) this.#act(node, ACTION.setText, text);
  }

  #keyed(event) {
    const node = this.#nodeOf(event.target);
    if (event.key === 'Tab') { this.#keepTabInside(event); return; }
    if (!node || event.isComposing) return;
    if (node.role === 'textbox' && (event.key === 'Enter' || event.key === 'Escape')) {
      node.element.blur();
      event.preventDefault();
    }
    if (node.role !== 'spin') return;
    if (event.key === 'ArrowUp' || event.key === 'ArrowDown') {
      if (node.typing) this.#finishSpin(node, true);
      this.#act(node, event.key === 'ArrowUp' ? ACTION.stepUp : ACTION.stepDown);
      event.preventDefault();
    } else if ((event.key === 'Enter' || event.key === 'Escape') && node.typing) {
      this.#finishSpin(node, event.key === 'Enter');
      event.preventDefault();
    }
  }
}
