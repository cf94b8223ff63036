// node web/serve.mjs FOLDER PORT : a folder of static files on 127.0.0.1, for trying and for tests.
// Any static host will do instead; what matters is the type of .wasm and that sw.js is asked anew.
import { createHash } from 'node:crypto';
import { createServer } from 'node:http';
import { readFile } from 'node:fs/promises';
import { extname, join, normalize, resolve, sep } from 'node:path';
import { pathToFileURL } from 'node:url';
import { brotliCompressSync, gzipSync, constants } from 'node:zlib';

const TYPES = {
  '.html': 'text/html; charset=utf-8', '.js': 'text/javascript; charset=utf-8', '.css': 'text/css; charset=utf-8',
  '.wasm': 'application/wasm', '.webmanifest': 'application/manifest+json', '.svg': 'image/svg+xml',
  '.png': 'image/png', '.txt': 'text/plain; charset=utf-8', '.json': 'application/json',
};
// The page carries its own content-security policy; frame-ancestors only works as a header.
const HEADERS = {
  'content-security-policy': "frame-ancestors 'none'", 'x-content-type-options': 'nosniff',
  'referrer-policy': 'no-referrer', 'cache-control': 'no-cache',
};

const packed = new Map();     // encoding and digest -> bytes, so that each content is packed once
function pack(encoding, bytes) {
  const at = encoding + createHash('sha256').update(bytes).digest('base64');
  if (!packed.has(at)) {
    packed.set(at, encoding === 'br'
      ? brotliCompressSync(bytes, { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } }) : gzipSync(bytes));
  }
  return packed.get(at);
}

// answer(request, response) may take a request over by returning true (tests do). Port 0: a free one.
export async function serve(folder, port = 0, answer = () => false) {
  const root = resolve(folder);
  const server = createServer(async (request, response) => {
    if (await answer(request, response)) return;
    let path;
    try { path = decodeURIComponent(new URL(request.url, 'http://localhost').pathname); } catch { path = '/..'; }
    if (path.endsWith('/')) path += 'index.html';
    const file = normalize(join(root, path));
    if (!file.startsWith(root + sep)) { response.writeHead(403).end('no'); return; }
    let bytes;
    try { bytes = await readFile(file); } catch { response.writeHead(404, { 'content-type': 'text/plain' }).end('not here'); return; }
    const head = { ...HEADERS, 'content-type': TYPES[extname(file)] || 'application/octet-stream' };
    const takes = request.headers['accept-encoding'] || '';
    const encoding = /\bbr\b/.test(takes) ? 'br' : /\bgzip\b/.test(takes) ? 'gzip' : '';
    if (encoding && extname(file) !== '.png') {
      bytes = pack(encoding, bytes);
      head['content-encoding'] = encoding;
    }
    response.writeHead(200, head).end(request.method === 'HEAD' ? undefined : bytes);
  });
  await new Promise((done, failed) => { server.once('error', failed); server.listen(port, '127.0.0.1', done); });
  return {
    url: `http://127.0.0.1:${server.address().port}/`,
    close: () => new Promise((done) => { server.close(done); server.closeAllConnections(); }),
  };
}

if (import.meta.url === pathToFileURL(process.argv[1]).href) {
  const [folder = 'dist', port = '8080'] = process.argv.slice(2);
  try {
    const { url } = await serve(folder, Number(port));
    console.log(`\nBranchlight is at ${url}  (Ctrl+C ends it)`);
  } catch (error) {
    console.error(error.code === 'EADDRINUSE' ? `Port ${port} is taken: give another one with --port.` : error.message);
    process.exit(1);
  }
}
