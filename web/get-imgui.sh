#!/bin/sh
# get-imgui.sh [DEST] -- Dear ImGui's sources into DEST (default: .cache/imgui of the project).
#
# Tried in this order; the files are checked by their SHA-256 whatever the way they came:
#   1. DEST has them already;
#   2. BRANCHLIGHT_IMGUI, a folder that has the sources, is copied;
#   3. the tarball kept from an earlier run;
#   4. the source package of a newer Debian suite, from the mirror that this machine's apt already
#      uses. Lists and caches go to a private folder, nothing of the system's apt state is touched,
#      root is not needed, and apt verifies the chain by the archive's keyring;
#   5. elsewhere: git, the public repository at the tag.
#
#   IMGUI_SUITES   suites to try, in order (default "forky sid")
#   IMGUI_DEBUG    set: show what apt and git say
set -eu
version=1.92.2b
files_sha256=030c72262252f862c4b39a470e5d6fdb4e28c24a46f0d55138be1a8109dd6c11   # of the files below, in order
files="imgui.cpp imgui_draw.cpp imgui_tables.cpp imgui_widgets.cpp imgui.h imgui_internal.h imconfig.h
  imstb_rectpack.h imstb_textedit.h imstb_truetype.h backends/imgui_impl_opengl3.cpp
  backends/imgui_impl_opengl3.h backends/imgui_impl_opengl3_loader.h"
tar_sha256=e7bd201d56b5ee90d24d5dac85e5c12f98bdb95410252a62d27b7f89e4566d48
upstream=https://github.com/ocornut/imgui.git
suites=${IMGUI_SUITES:-forky sid}
keyring=/usr/share/keyrings/debian-archive-keyring.gpg
root=$(cd "$(dirname "$0")/.." && pwd)
dest=${1:-$root/.cache/imgui}
kept=$root/.cache/imgui_$version.orig.tar.xz

say() { echo "get-imgui: $*" >&2; }
die() { say "$*"; exit 1; }
trace() { [ -z "${IMGUI_DEBUG:-}" ] || cat "$work/log" >&2; }

whole() {  # FOLDER: has exactly the files we build
  for f in $files; do [ -f "$1/$f" ] || return 1; done
  # shellcheck disable=SC2086
  [ "$(cd "$1" && cat $files | sha256sum | cut -d' ' -f1)" = "$files_sha256" ]
}
if whole "$dest"; then say "$dest has Dear ImGui $version"; exit 0; fi
[ ! -e "$dest" ] || [ -z "$(ls -A "$dest" 2>/dev/null)" ] || [ -f "$dest/imgui.h" ] || die "$dest is not empty and is not ours"

work=$(mktemp -d "${TMPDIR:-/tmp}/get-imgui.XXXXXX")
trap 'rm -rf "$work"' EXIT
trap 'exit 130' INT TERM HUP

take() {  # FOLDER: becomes DEST, whole or not at all
  whole "$1" || { say "the files in $1 are not those of $version"; return 1; }
  mkdir -p "$(dirname "$dest")"
  part=$dest.part.$$
  rm -rf "$part"; mkdir -p "$part/backends"
  for f in $files LICENSE.txt; do [ ! -f "$1/$f" ] || cp "$1/$f" "$part/$f"; done
  rm -rf "$dest"; mv "$part" "$dest"
  say "$dest: Dear ImGui $version"
}
unpack() {  # TARBALL
  [ "$(sha256sum "$1" | cut -d' ' -f1)" = "$tar_sha256" ] || { say "$1 is not the pinned tarball"; return 1; }
  mkdir -p "$work/tree"
  # apt-helper decompresses without xz-utils being installed
  if [ -x /usr/lib/apt/apt-helper ]; then /usr/lib/apt/apt-helper cat-file "$1"; else xz -dc "$1"; fi \
    | tar -x -C "$work/tree" --strip-components=1 --no-same-owner
  take "$work/tree"
}

from_apt() {
  command -v apt-get >/dev/null && [ -r "$keyring" ] || return 1
  # The mirror: apt reads one-line and deb822 lists alike. The main archive first, no security mirror.
  code=$(. /etc/os-release; echo "${VERSION_CODENAME:-stable}")
  mirrors=$(apt-get indextargets --no-release-info --format '$(RELEASE) $(REPO_URI)' 2>/dev/null \
    | sort -u | awk -v c="$code" '
        $2 ~ /^cdrom:/ || $2 ~ /security/ { next }
        $1 == c || $1 == "stable"         { a[++n] = $2; next }
                                          { b[++m] = $2 }
        END { for (i=1;i<=n;i++) print a[i]; for (i=1;i<=m;i++) print b[i] }' | awk '!s[$0]++')
  [ -n "$mirrors" ] || return 1
  mkdir -p "$work/parts" "$work/state/lists/partial" "$work/cache/archives/partial" "$work/prefs" "$work/dl"
  cat > "$work/apt.conf" <<CONF
#clear APT::Update::Pre-Invoke;
#clear APT::Update::Post-Invoke;
#clear APT::Update::Post-Invoke-Success;
#clear DPkg::Post-Invoke;
Dir::State "$work/state/";
Dir::State::lists "$work/state/lists/";
Dir::State::status "$work/state/status";
Dir::Cache "$work/cache/";
Dir::Etc::sourcelist "/dev/null";
Dir::Etc::sourceparts "$work/parts/";
Dir::Etc::preferences "/dev/null";
Dir::Etc::preferencesparts "$work/prefs/";
Acquire::AllowInsecureRepositories "false";
Acquire::AllowDowngradeToInsecureRepositories "false";
APT::Get::AllowUnauthenticated "false";
Acquire::Languages "none";
Acquire::Retries "3";
CONF
  : > "$work/state/status"
  [ "$(id -u)" -ne 0 ] || echo 'APT::Sandbox::User "root";' >> "$work/apt.conf"
  for suite in $suites; do
    for mirror in $mirrors; do
      rm -rf "$work/state/lists"; mkdir -p "$work/state/lists/partial"
      printf 'Types: deb-src\nURIs: %s\nSuites: %s\nComponents: main\nSigned-By: %s\nTargets: Sources\nPDiffs: no\n' \
        "$mirror" "$suite" "$keyring" > "$work/parts/src.sources"
      apt-get -c "$work/apt.conf" -q update -o APT::Update::Error-Mode=any >"$work/log" 2>&1 || { trace; continue; }
      found=$(apt-cache -c "$work/apt.conf" showsrc --only-source imgui 2>/dev/null \
        | sed -n "s/^Version: \($version[+~-].*\)/\1/p" | sort -u | tail -n1)
      [ -n "$found" ] || { say "$suite has another version"; continue; }
      ( cd "$work/dl" && apt-get -c "$work/apt.conf" -q source --download-only --only-source "imgui=$found" ) \
        >"$work/log" 2>&1 || { trace; continue; }
      tarball=$(ls "$work"/dl/imgui_*.orig.tar.*z | head -n1)
      unpack "$tarball" || continue
      mkdir -p "$(dirname "$kept")" && cp "$tarball" "$kept"
      return 0
    done
  done
  return 1
}

from_git() {
  command -v git >/dev/null || return 1
  say "asking $upstream"
  git clone --quiet --depth 1 --branch "v$version" -c core.autocrlf=false "$upstream" "$work/git" >"$work/log" 2>&1 \
    || { trace; return 1; }
  take "$work/git"
}

if [ -n "${BRANCHLIGHT_IMGUI:-}" ] && [ "$BRANCHLIGHT_IMGUI" != "$dest" ] && take "$BRANCHLIGHT_IMGUI"; then exit 0; fi
if [ -f "$kept" ] && unpack "$kept"; then exit 0; fi
if from_apt || from_git; then exit 0; fi
die "could not get Dear ImGui $version: no mirror and no git reached. Give a folder with it in BRANCHLIGHT_IMGUI."
