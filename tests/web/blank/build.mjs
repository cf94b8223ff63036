// Builds the blank page with the app's own flags, once per Dear ImGui version and source.
//   import { buildBlank } from './blank/build.mjs';  const folder = buildBlank();
import { createHash } from 'node:crypto';
import { execFileSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '..', '..', '..');
const IMGUI = process.env.BRANCHLIGHT_IMGUI || join(root, '.cache', 'imgui');
const FLAGS = ['-std=c++20', '-Os', '-flto', '-DNDEBUG', '-fno-exceptions', '-fno-rtti', '-DIMGUI_DISABLE_DEMO_WINDOWS',
  '-DIMGUI_DISABLE_DEBUG_TOOLS', '-DIMGUI_DISABLE_OBSOLETE_FUNCTIONS', '-DIMGUI_DISABLE_FILE_FUNCTIONS',
  '-sMIN_WEBGL_VERSION=2', '-sMAX_WEBGL_VERSION=2', '-sENVIRONMENT=web', '-sFILESYSTEM=0', '-sMALLOC=emmalloc',
  '-sALLOW_MEMORY_GROWTH=1', '-sSUPPORT_LONGJMP=0', '-sMODULARIZE=1', '-sEXPORT_NAME=createBlank'];
const SOURCES = ['imgui.cpp', 'imgui_draw.cpp', 'imgui_tables.cpp', 'imgui_widgets.cpp', 'backends/imgui_impl_opengl3.cpp'];

export function buildBlank() {
  const sources = [join(here, 'main.cpp'), ...SOURCES.map((name) => join(IMGUI, name))];
  const mark = createHash('sha256').update(FLAGS.join(' '));
  for (const file of [...sources, join(IMGUI, 'imgui.h')]) mark.update(readFileSync(file));
  const folder = join(root, '.cache', 'blank-' + mark.digest('hex').slice(0, 12));
  mkdirSync(folder, { recursive: true });
  for (const name of ['index.html', 'start.js']) copyFileSync(join(here, name), join(folder, name));
  if (!existsSync(join(folder, 'blank.wasm'))) {
    const node = existsSync('/usr/share/nodejs') ? { NODE_PATH: '/usr/share/nodejs' } : {};
    execFileSync('em++', [...FLAGS, '-I' + IMGUI, ...sources, '-o', join(folder, 'blank.js')],
      { stdio: 'inherit', env: { ...process.env, ...node } });
  }
  return folder;
}
