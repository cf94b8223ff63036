#!/usr/bin/env bash
# Installs what is missing, builds the app, and serves it on this machine only.
#   web/serve.sh [--port N] [--build-only] [--no-install]
# Works as root or through sudo; quick when run again. The result stands in dist/: a folder for any
# static host, and dist/branchlight.html, one file that opens without a server.
set -euo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
port=8080
build_only=no
install=yes
while [ $# -gt 0 ]; do
  case $1 in
    --port) port=${2:?--port needs a number}; shift 2 ;;
    --build-only) build_only=yes; shift ;;
    --no-install) install=no; shift ;;
    -h|--help) sed -n '2,6s/^# \?//p' "$0"; exit 0 ;;
    *) echo "web/serve.sh: unknown option $1 (--help tells)" >&2; exit 2 ;;
  esac
done

. "$root/web/packages.sh"
if [ "$install" = yes ]; then
  printf '== Packages\n'
  need_packages "${BUILD_PACKAGES[@]}"
fi
"$root/web/build.sh" --dist "$root/dist"
[ "$build_only" = yes ] || exec node "$root/web/serve.mjs" "$root/dist" "$port"
