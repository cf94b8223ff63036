// BRANCHLIGHT_DOC_PICTURES=1 node tests/web/doc_pictures.mjs : the pictures of the guide, taken
// from the app itself, as small palette PNGs in docs/pictures/. Without the variable it does
// nothing, so that a test run changes no file that is kept.
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deflateSync } from 'node:zlib';
import { bring, find, idle, openBrowser, openPhone, press, startServer } from './support.mjs';
import { Person } from './trace_person.mjs';
import { chainFile, doneFirst, goTo, importFile, openNotebook, scratch, understand } from './walk.mjs';

const FOLDER = join(dirname(fileURLToPath(import.meta.url)), '..', '..', 'docs', 'pictures');
const COLOURS = [48, 24, 16];     // as many as keep it under the limit
const LIMIT = 60000;      // bytes, each
const PHONE = { width: 412, height: 915, ratio: 2 };

// The most frequent colours, then each pixel's nearest: a screen has few colours and soft edges.
function quantise([base64, colours]) {
  return new Promise((done) => {
    const image = new Image();
    image.onload = () => {
      const canvas = document.createElement('canvas');
      canvas.width = image.width;
      canvas.height = image.height;
      const context = canvas.getContext('2d');
      context.drawImage(image, 0, 0);
      const { data } = context.getImageData(0, 0, image.width, image.height);
      const count = new Map();
      for (let i = 0; i < data.length; i += 4) {
        const key = (data[i] << 16) | (data[i + 1] << 8) | data[i + 2];
        count.set(key, (count.get(key) || 0) + 1);
      }
      const far = (a, b) => {
        const red = (a >> 16) - (b >> 16);
        const green = ((a >> 8) & 255) - ((b >> 8) & 255);
        const blue = (a & 255) - (b & 255);
        return red * red + green * green + blue * blue;
      };
      const palette = [];
      for (const [key] of [...count].sort((a, b) => b[1] - a[1])) {
        if (palette.length === colours) break;
        if (palette.every((have) => far(have, key) > 260)) palette.push(key);
      }
      const nearest = new Map();
      let pixels = '';
      const line = new Uint8Array(image.width);
      for (let i = 0; i < data.length; i += 4) {
        const key = (data[i] << 16) | (data[i + 1] << 8) | data[i + 2];
        if (!nearest.has(key)) nearest.set(key, palette.reduce((best, have, at) => (far(have, key) < far(palette[best], key) ? at : best), 0));
        const x = (i / 4) % image.width;
        line[x] = nearest.get(key);
        if (x === image.width - 1) pixels += String.fromCharCode(...line);
      }
      done({ width: image.width, height: image.height, palette, pixels: btoa(pixels) });
    };
    image.src = 'data:image/png;base64,' + base64;
  });
}

function crc32(bytes) {      // as the PNG specification gives it
  let crc = 0xFFFFFFFF;
  for (const byte of bytes) {
    crc ^= byte;
    for (let k = 0; k < 8; k += 1) crc = (crc >>> 1) ^ (crc & 1 ? 0xEDB88320 : 0);
  }
  return (crc ^ 0xFFFFFFFF) >>> 0;
}

function chunk(kind, bytes) {
  const body = Buffer.concat([Buffer.from(kind, 'latin1'), bytes]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(bytes.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

function palettePng({ width, height, palette, pixels }) {
  const flat = Buffer.from(pixels, 'base64');
  const bits = palette.length > 16 ? 8 : 4;
  const stride = Math.ceil(width * bits / 8);
  const lines = Buffer.alloc(height * (stride + 1));
  for (let y = 0; y < height; y += 1) {
    for (let x = 0; x < width; x += 1) {
      const at = y * (stride + 1) + 1 + Math.floor(x * bits / 8);
      lines[at] |= bits === 8 || x % 2 ? flat[y * width + x] : flat[y * width + x] << 4;
    }
  }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  head.set([bits, 3, 0, 0, 0], 8);
  return Buffer.concat([Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'), chunk('IHDR', head),
    chunk('PLTE', Buffer.from(palette.flatMap((key) => [key >> 16, (key >> 8) & 255, key & 255]))),
    chunk('IDAT', deflateSync(lines, { level: 9 })), chunk('IEND', Buffer.alloc(0))]);
}

async function take(workshop, page, name) {
  await idle(page);
  const picture = await page.screenshot({ type: 'png' });
  let png;
  for (const colours of COLOURS) {
    png = palettePng(await workshop.evaluate(quantise, [picture.toString('base64'), colours]));
    if (png.length <= LIMIT) break;
  }
  if (png.length > LIMIT) throw new Error(`${name}: ${png.length} bytes, at most ${LIMIT}`);
  writeFileSync(join(FOLDER, name + '.png'), png);
  console.log(name, (png.length / 1000).toFixed(0) + ' kB');
}

const open = async (browser, server, options = {}) => {
  const { page } = await openPhone(browser, server.url, { ...PHONE, ...options });
  await understand(page);
  return page;
};

// A trace until a check of this kind is asked, or until a remedy is there.
async function trace(page, person, until) {
  await goTo(page, 'Trace');
  await press(page, 'checkbox', 'Meter');
  await press(page, 'button', 'One outlet is dead');
  await press(page, 'button', /^C, /);
  for (let i = 0; i < 20; i += 1) {
    const heading = find(page, 'group', 'Check').first().getByRole('heading').first();
    if (!await heading.count()) return;
    const asks = (await heading.textContent()).trim();
    if (until && until.test(asks)) return;
    await press(page, 'button', person.answer(asks, await doneFirst(page)));
  }
}
const looseSplice = () => new Person({ open: ['black splice C'], dead: ['C'] });

const PICTURES = {
  'size-day': async () => {},
  why: (page) => press(page, 'button', /^12 AWG/),
  keypad: (page) => press(page, 'spinbutton', 'Load of A'),
  outlet: (page) => press(page, 'button', /^Outlet C/),
  shop: async (page) => {
    await press(page, 'button', /^What the shop has/);
    await press(page, 'checkbox', '10 AWG, in the shop');
  },
  branch: async (page) => {
    await press(page, 'button', /^Outlet A/);
    await press(page, 'button', 'Branch from outlet A');
    await page.goBack();
    await idle(page);
    await bring(page, find(page, 'group', 'Answer').first());
  },
  'trace-check': (page) => trace(page, looseSplice(), /splice/),
  'trace-found': (page) => trace(page, looseSplice()),
  'thirty-outlets': async (page) => {
    const files = scratch();
    await openNotebook(page);
    await importFile(page, files.file('thirty.json', chainFile(30)));
    await page.waitForTimeout(12000);     // until the word that it came in has gone
    await page.evaluate(() => branchlight.wake());
    files.clear();
  },
};

if (process.env.BRANCHLIGHT_DOC_PICTURES !== '1') {
  console.log('Set BRANCHLIGHT_DOC_PICTURES=1 to renew docs/pictures/.');
} else {
  mkdirSync(FOLDER, { recursive: true });
  const server = await startServer();
  const browser = await openBrowser();
  try {
    const workshop = await browser.newPage();
    for (const [name, walk] of Object.entries(PICTURES)) {
      const page = await open(browser, server);
      await walk(page);
      await take(workshop, page, name);
      await page.context().close();
    }
    const night = await open(browser, server, { dark: true });
    await take(workshop, night, 'size-night');
  } finally {
    await browser.close();
    await server.stop();
  }
}
