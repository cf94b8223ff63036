// Somebody at a van with a fault in it, who answers the app's checks from what is really so: three outlets
// in a chain, A, B, C, with every joint a place that can be open. Knows nothing of how the app reasons. A
// question that it does not understand is an error, and fails the walk.
const OUTLETS = ['A', 'B', 'C'];
const BATTERY_V = 12.7;

// From the battery to the contacts: each point hangs on the one before it.
function chain(side) {
  const red = side === 'red';
  const links = red ? [['post', 'stud'], ['stud', 'feed'], ['feed', 'fuse'], ['fuse', 'clamp']] : [['post', 'bus'], ['bus', 'clamp']];
  OUTLETS.forEach((outlet, at) => {
    const from = at === 0 ? 'clamp' : 'splice ' + OUTLETS[at - 1];
    links.push([from, 'end ' + outlet], ['end ' + outlet, 'splice ' + outlet], ['splice ' + outlet, 'tab ' + outlet], ['tab ' + outlet, 'blade ' + outlet],
      ['blade ' + outlet, 'contact ' + outlet]);
  });
  return links.map(([from, to]) => [`${side} ${from}`, `${side} ${to}`]);
}

const POINTS = [
  [/^the battery's plus post$/, () => 'red post'],
  [/^the battery's minus post$/, () => 'black post'],
  [/^the block's feed stud$/, () => 'red stud'],
  [/^the negative bus$/, () => 'black bus'],
  [/^the fuse, feed side$/, () => 'red feed'],
  [/^the fuse, wire side$/, () => 'red fuse'],
  [/^the block's (red|black) clamp$/, (m) => `${m[1]} clamp`],
  [/^the (red|black) wire's free end at ([ABC])$/, (m) => `${m[1]} end ${m[2]}`],
  [/^the (red|black) splice at ([ABC])$/, (m) => `${m[1]} splice ${m[2]}`],
  [/^the (red|black) tab's crimp at ([ABC])$/, (m) => `${m[1]} tab ${m[2]}`],
  [/^([ABC])'s own (plus|minus) blade$/, (m) => `${m[2] === 'plus' ? 'red' : 'black'} blade ${m[1]}`],
  [/^the (plus|minus) contact of ([ABC])$/, (m) => `${m[1] === 'plus' ? 'red' : 'black'} contact ${m[2]}`],
];
const PAIRS = [
  [/between the two contacts of ([ABC])/, 'contact'],
  [/between the two splices at ([ABC])/, 'splice'],
  [/between the crimps of the two tabs at ([ABC])/, 'tab'],
  [/between the two blades of ([ABC]) itself/, 'blade'],
];

function pointOf(words) {
  for (const [pattern, name] of POINTS) {
    const match = words.match(pattern);
    if (match) return name(match);
  }
  throw new Error(`no such point: ${words}`);
}
function pointsOf(question) {
  for (const [pattern, name] of PAIRS) {
    const match = question.match(pattern);
    if (match) return [`red ${name} ${match[1]}`, `black ${name} ${match[1]}`];
  }
  const match = question.match(/(?:[Mm]easure|Hold the lamp from) (.+?) to (.+?)(, red lead first)?\.$/);
  if (!match) throw new Error(`between which points? ${question}`);
  return [pointOf(match[1]), pointOf(match[2])];
}

// What is plugged in or taken apart before a reading. Every sentence must be understood, or the reading would be another.
const STATES = [
  [/^Plug the (?:lamp|device that you know is good) into ([ABC])$/, (state, m) => { state.lampAt = m[1]; }],
  [/^Leave the device that failed in ([ABC]), switched on$/, (state, m) => { state.lampAt = m[1]; state.failed = true; }],
  [/^Unplug everything$/, () => {}],
  [/^Pull the .*fuse at position \d+$/, () => {}],
  [/^Take the wires from .+ out of both splices at ([ABC]), ends apart$/, (state, m) => { state.parted = m[1]; }],
  [/^Draw .+ forward by its plate, fingers off the metal behind it$/, () => {}],
  [/^With the fuse out draw .+ forward by its plate and let it hang free$/, () => {}],
  [/^Then put the fuse back in$/, () => {}],
  [/^Prove .+ dead on the bare metal: red to a minus that you know, black to it, red to black, each time (below 1 V|the lamp dark)$/, () => {}],
  [/^Try the (meter|lamp) on a live point before and after$/, () => {}],
  [/^Still live: another circuit feeds it, hands off$/, () => {}],
  [/^Switch off what is plugged in$/, () => {}],
  [/^Take a new .*fuse.*$/, () => {}],
  [/^Plug a device into [ABC] and switch it on$/, () => {}],
  [/^See something small run in [ABC], then unplug it$/, () => {}],
  [/^Pull the fuse of (.+)$/, (state, m) => { state.pulled = m[1]; }],
  [/^Is the fuse of .* out\?.*$/, () => {}],
  [/^Put its own fuse in.*$/, () => {}],
  [/^Open the main switch, or draw a main fuse that needs no tool$/, () => {}],
  [/^Neither there: the battery's minus lead comes off, insulated spanner, rings off$/, () => {}],
  [/^Take the block's cover off, fingers off the metal$/, () => {}],
];
function stateOf(before) {
  const state = {};
  for (const sentence of before) {
    const known = STATES.find(([pattern]) => pattern.test(sentence));
    if (!known) throw new Error(`nobody taught this person to do: ${sentence}`);
    known[1](state, sentence.match(known[0]));
  }
  return state;
}

// Answers: the words on the button, a pattern of them, or { type: '12.6' } for the keypad.
const FULL = /^About \d/;
const ZERO = /^(Near 0 V|Below [\d.]+ V)$/;

export class Person {
  // `open` names a point that what comes before it no longer reaches: 'black end B' is a broken wire to B.
  // faults: { fuse: 'blown' | 'missing' | 'elsewhere', open: ['red splice B'], swapped: 'C', otherPair: 'C',
  //           deadDevice: true, types: true (readings, not words) }
  constructor(faults) {
    this.fuse = 'whole';
    this.open = [];
    Object.assign(this, faults);
  }

  // What hangs together, with or without the fuse, and what potential it has.
  #parts(fuseIn, { lampAt, parted } = {}) {
    const part = new Map();
    const find = (point) => {
      while (part.has(point)) point = part.get(point);
      return point;
    };
    const join = (a, b) => {
      if (find(a) !== find(b)) part.set(find(a), find(b));
    };
    for (const [from, to] of [...chain('red'), ...chain('black')]) {
      const noFuse = to === 'red fuse' && (!fuseIn || this.fuse !== 'whole');
      const otherwise = this.otherPair && to === `${to.split(' ')[0]} splice ${this.otherPair}`;
      const apart = parted && to.endsWith(' splice ' + parted);
      if (noFuse || otherwise || apart || this.open.includes(to)) continue;
      const outlet = to.split(' ')[2];
      const crossed = this.swapped === outlet && to.includes(' blade ');
      join(crossed ? (from.startsWith('red') ? from.replace('red', 'black') : from.replace('black', 'red')) : from, to);
    }
    // The other branch's pair: its black goes to the same bus, its fuse is out.
    if (this.otherPair) join('black bus', 'black splice ' + this.otherPair);
    const volts = new Map([[find('red post'), BATTERY_V], [find('black post'), 0]]);
    if (lampAt) {
      const ends = ['red', 'black'].map((side) => find(`${side} contact ${lampAt}`));
      for (const [a, b] of [ends, [...ends].reverse()]) if (!volts.has(a) && volts.has(b)) volts.set(a, volts.get(b));
    }
    return { find, voltsOf: (point) => volts.get(find(point)) };
  }

  volts(red, black, state) {
    const { voltsOf } = this.#parts(true, state);
    const [over, under] = [voltsOf(red), voltsOf(black)];
    return over === undefined || under === undefined ? 0 : over - under;      // what hangs in the air shows nothing
  }
  at(outlet) { return this.volts('red contact ' + outlet, 'black contact ' + outlet); }
  runs(outlet) { return !this.deadDevice && this.at(outlet) > 10; }

  #reading(volts) {
    if (this.types) return { type: volts.toFixed(1) };
    return volts > 10 ? FULL : volts < -1 ? 'Minus' : ZERO;
  }
  #behind(outlet, words) {
    for (const side of ['Red', 'Black']) {
      for (const [joint, point] of [['splice', 'splice'], ['tab', 'blade']]) {
        if (this.open.includes(`${side.toLowerCase()} ${point} ${outlet}`)) return `${side} ${joint} ${words[joint]}`;
      }
    }
    return undefined;
  }
  #look() {
    return { whole: 'There, and whole', blown: 'Blown', missing: 'No fuse there', elsewhere: 'It sits in another position' }[this.fuse];
  }
  // A new fuse in our position, and whether the outlet complained of then lives.
  #withFuse(outlet) {
    const before = this.fuse;
    this.fuse = 'whole';
    const lives = this.runs(outlet);
    this.fuse = before;
    return lives && before !== 'whole';
  }

  answer(question, before = []) {
    const outlet = (pattern) => question.match(pattern)?.[1];
    let at;
    const state = stateOf(before);
    if (this.deadDevice && state.failed) state.lampAt = undefined;      // it takes nothing
    if (/^On ohms, measure /.test(question)) {
      const { find } = this.#parts(false, state);
      const [red, black] = pointsOf(question);
      return find(red) === find(black) ? /^Below / : 'Open';
    }
    if (/^Measure /.test(question)) return this.#reading(this.volts(...pointsOf(question), state));
    if (/across the two clips of the fuse position/.test(question)) return 'Dark';
    if (/^Hold the lamp /.test(question)) return Math.abs(this.volts(...pointsOf(question), state)) > 10 ? 'Bright' : 'Dark';
    if ((at = outlet(/^Plug the device that failed into ([ABC])\./))) return this.runs(at) ? 'Works' : 'Dead';
    if ((at = outlet(/^Try another device, one you know is good, in ([ABC])\./))) return this.at(at) > 10 ? 'Works' : 'Dead';
    if (/^Try the device that failed in an outlet of another circuit/.test(question)) return this.deadDevice ? 'Dead there too' : 'Works there';
    if (/^Do the other outlets on this fuse work/.test(question)) {
      const others = OUTLETS.filter((each) => !this.dead.includes(each)).map((each) => this.runs(each));
      return others.every(Boolean) ? 'They all work' : others.some(Boolean) ? 'Some do' : 'None works';
    }
    if (/^Move its cable and plug/.test(question)) return 'No change';
    if ((at = outlet(/^Look behind ([ABC]), touch nothing/))) {
      if (this.otherPair === at) return 'Another cable is in there';
      if (this.swapped === at) return 'Colours crossed at the tabs';
      return this.#behind(at, { splice: 'wrong', tab: 'off' }) || 'All looks right';
    }
    if ((at = outlet(/^Tug each wire behind ([ABC])/))) return this.#behind(at, { splice: 'gives', tab: 'gives' }) || 'All hold';
    if (/^Read the size printed on the wire/.test(question)) return 'As drawn';
    if (/^Does anything else on the fuse block work/.test(question)) return 'Yes, as always';
    if (/^Look at position \d+/.test(question)) return this.#look();
    if (/^Press the fuse at position \d+ home\./.test(question)) return 'No change';
    if (/^Put the new fuse in, /.test(question)) return this.#withFuse(this.dead[0]) ? 'Now it works' : 'Still the same';
    if ((at = outlet(/^Plug it into ([ABC]) again: does it run/))) {
      if (this.at(at) < 10) return 'Nothing ran there';
      return state.pulled === 'this circuit' ? 'Dead now' : 'It still runs';
    }
    if (/^With that fuse in, does /.test(question)) return this.otherPair ? 'Now it works' : 'No change';
    if (/^Tug this circuit's \w+ and \w+ wire/.test(question)) return 'Both hold';
    if (/^Look at the main switch and the main fuse/.test(question)) return 'On, and whole';
    if (/^Add up what is usually plugged in/.test(question)) return 'Within the fuse';
    throw new Error(`nobody taught this person to answer: ${question}`);
  }
}
