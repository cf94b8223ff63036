// node web/pack.mjs GLUE WASM DIST : the page's scripts in one file, hashes where they belong, the
// service worker's list, the single-file build. Called by web/build.sh; needs nothing but Node.js.
import { createHash } from 'node:crypto';
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, readdirSync, rmSync, writeFileSync, existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';

const web = dirname(fileURLToPath(import.meta.url));
const [glueFile, wasmFile, distFolder] = process.argv.slice(2).map((path) => resolve(path));
if (!distFolder) throw new Error('usage: pack.mjs GLUE WASM DIST');

// The distribution's terser finds its own parts here, also when Node.js comes from elsewhere.
if (existsSync('/usr/share/nodejs')) process.env.NODE_PATH = '/usr/share/nodejs';

const read = (name) => readFileSync(join(web, name), 'utf8');
const hash = (kind, bytes, form = 'base64') => createHash(kind).update(bytes).digest(form);
const integrity = (bytes) => 'sha384-' + hash('sha384', bytes);

// ---- scripts: each module becomes a function of its own that returns what it exports

function modulesInOrder(name, seen = new Set()) {
  if (seen.has(name)) return [];
  seen.add(name);
  const needs = [...read(name).matchAll(/from '\.\/([\w.]+)'/g)].map((match) => match[1]);
  return [...needs.flatMap((need) => modulesInOrder(need, seen)), name];
}
const holder = (name) => 'm_' + name.replace(/\W/g, '_');

function wrapModule(name) {
  const exported = [];
  const body = read(name)
    .replace(/^import (\{[^}]*\}) from '\.\/([\w.]+)';$/gm, (_, names, from) => `const ${names} = ${holder(from)};`)
    .replace(/^export (async function|function|class|const) (\w+)/gm, (_, kind, what) => { exported.push(what); return `${kind} ${what}`; });
  if (/^(import|export)\b/m.test(body)) throw new Error(`${name}: a form of import or export that pack.mjs does not know`);
  return `const ${holder(name)} = (() => {\n${body}\nreturn { ${exported.join(', ')} };\n})();\n`;
}

function minify(code, extra = []) {
  const options = ['--compress', '--mangle', ...extra];
  try {
    return execFileSync('terser', options, { input: code, encoding: 'utf8', maxBuffer: 64e6, stdio: ['pipe', 'pipe', 'inherit'] });
  } catch (error) {
    if (error.code !== 'ENOENT') throw error;
    console.log('  terser is not installed: scripts stay as they are (larger, same work)');
    return code;
  }
}

const page = (entry) => `'use strict';\n${modulesInOrder(entry).map(wrapModule).join('')}`;

// ---- build

const wasm = readFileSync(wasmFile);
const glue = readFileSync(glueFile, 'utf8');
const started = page('boot.js').replace('@WASM_INTEGRITY@', integrity(wasm));
const script = minify(`${glue}\n;(() => {${started}})();\n`);
const style = minifyStyle(read('style.css'));

function minifyStyle(text) {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/\s+/g, ' ').replace(/ ?([{};,>]) ?/g, '$1').trim() + '\n';
}

const CSP = (script_, style_, connect) => [
  "default-src 'none'", `script-src ${script_} 'wasm-unsafe-eval'`, `style-src ${style_}`, "img-src 'self' data: blob:",
  `connect-src ${connect}`, "manifest-src 'self'", "worker-src 'self'", "base-uri 'none'", "form-action 'none'",
].join('; ');

// The icon rides in the page: a request for it, made when the page has loaded, could cross a newer version
// taking over, which Chromium then forgets (web/updates.js).
const icon = 'data:image/svg+xml;base64,' + Buffer.from(read('icons/icon.svg')).toString('base64');
const withIcon = read('index.html').replace('href="icons/icon.svg"', `href="${icon}"`);

const index = withIcon
  .replace('@CSP@', CSP("'self'", "'self'", "'self'"))
  .replace('<script src="app.js">', `<script src="app.js" integrity="${integrity(script)}">`)
  .replace('href="style.css">', `href="style.css" integrity="${integrity(style)}">`);

const files = new Map([
  ['index.html', index], ['app.js', script], ['app.wasm', wasm], ['style.css', style],
  ['manifest.webmanifest', read('manifest.webmanifest')], ['licences.txt', read('licences.txt') + '\n' + read('fonts/OFL.txt')],
]);
for (const name of readdirSync(join(web, 'icons')).filter((n) => /\.(svg|png)$/.test(n))) {
  files.set('icons/' + name, readFileSync(join(web, 'icons', name)));
}

// The PNG icons are for the system when the app is put on the home screen; no page shows them.
const kept = [...files].filter(([path]) => !path.endsWith('.png'));
const hashes = Object.fromEntries(kept.map(([path, bytes]) => [path, hash('sha256', bytes)]));
const worker = minify(read('sw.js')
  .replace('/*@FILES@*/{}', JSON.stringify(hashes))
  .replace('@VERSION@', hash('sha256', JSON.stringify(hashes) + read('sw.js'), 'hex').slice(0, 16)), ['--toplevel']);
files.set('sw.js', worker);
files.set('branchlight.html', singleFile());

// One page that opens from a memory card: everything in it, nothing fetched, no service worker.
function singleFile() {
  const bring = `globalThis.branchlightWasm=async()=>{
    const text=document.getElementById('wasm').textContent.trim();
    const bytes=Uint8Array.from(atob(text),(c)=>c.charCodeAt(0));
    if(typeof DecompressionStream!=='function')throw new Error('the browser is too old for the single-file page');
    return new Response(new Blob([bytes]).stream().pipeThrough(new DecompressionStream('gzip'))).arrayBuffer();
  };`;
  const inline = bring + script;
  if (/<\/script/i.test(inline)) throw new Error('the script would end its own element');
  const sha = (text) => `'sha256-${hash('sha256', text)}'`;
  return withIcon
    .replace('@CSP@', CSP(sha(inline), sha(style), "'none'"))
    .replace(/<link rel="manifest".*\n/, '').replace(/<link rel="apple-touch-icon".*\n/, '')
    .replace('<link rel="stylesheet" href="style.css">', () => `<style>${style}</style>`)
    .replace('<script src="app.js"></script>', () =>
      `<script id="wasm" type="text/plain">${gzipSync(wasm, { level: 9 }).toString('base64')}</script>\n<script>${inline}</script>`);
}

rmSync(distFolder, { recursive: true, force: true });
for (const [path, bytes] of files) {
  mkdirSync(dirname(join(distFolder, path)), { recursive: true });
  writeFileSync(join(distFolder, path), bytes);
}
const kB = (bytes) => (bytes.length / 1000).toFixed(0) + ' kB';
const visit = [...kept, ['sw.js', worker]].map(([, bytes]) => Buffer.from(bytes));
console.log(`  wasm ${kB(wasm)}, all of a visit ${kB(Buffer.concat(visit))} (gzip ` +
  `${(visit.reduce((sum, bytes) => sum + gzipSync(bytes, { level: 9 }).length, 0) / 1000).toFixed(0)} kB), ` +
  `single file ${kB(Buffer.from(files.get('branchlight.html')))}`);
