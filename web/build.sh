#!/usr/bin/env bash
# Builds the app for the browser into dist/. Installs nothing (web/serve.sh does).
#   web/build.sh [--build FOLDER] [--dist FOLDER]
# Needs Emscripten (the distribution's or an activated SDK), CMake, Node.js; terser makes it smaller.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
build=$root/build/app
dist=$root/dist
while [ $# -gt 0 ]; do
  case $1 in
    --build) build=$2; shift 2 ;;
    --dist) dist=$2; shift 2 ;;
    -h|--help) sed -n '2,4s/^# \?//p' "$0"; exit 0 ;;
    *) echo "web/build.sh: unknown option $1" >&2; exit 2 ;;
  esac
done
step() { printf '\n== %s\n' "$*"; }

toolchain=
for candidate in "${EMSDK:-/nowhere}/upstream/emscripten" "$(dirname "$(command -v emcc || echo /nowhere/emcc)")" /usr/share/emscripten; do
  [ -n "$toolchain" ] || [ ! -f "$candidate/cmake/Modules/Platform/Emscripten.cmake" ] \
    || toolchain=$candidate/cmake/Modules/Platform/Emscripten.cmake
done
[ -n "$toolchain" ] || { echo "web/build.sh: Emscripten is not installed (web/serve.sh installs it)." >&2; exit 1; }
# The distribution's Emscripten keeps its Node.js modules here; another Node.js does not look there.
[ ! -d /usr/share/nodejs ] || export NODE_PATH=/usr/share/nodejs${NODE_PATH:+:$NODE_PATH}

step "Dear ImGui"
"$root/web/get-imgui.sh"
step "Compiling ($toolchain)"
[ -f "$build/build.ninja" ] || cmake -S "$root" -B "$build" -G Ninja -DCMAKE_TOOLCHAIN_FILE="$toolchain" \
  -DCMAKE_BUILD_TYPE=Release -DCMAKE_UNITY_BUILD=ON ${BRANCHLIGHT_IMGUI:+-DBRANCHLIGHT_IMGUI="$BRANCHLIGHT_IMGUI"}
cmake --build "$build" --target branchlight_app
step "Packing into $dist"
node "$root/web/pack.mjs" "$build/wasm/browser/app.js" "$build/wasm/browser/app.wasm" "$dist"
