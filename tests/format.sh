#!/usr/bin/env bash
# Holds the C++ files to .clang-format, with clang-format 14: another version breaks lines elsewhere.
#   tests/format.sh                 lists the files that differ
#   tests/format.sh --check         fails when one does in a folder that tests/formatted.txt names
#   tests/format.sh --write FOLDER...   formats the files of these folders
set -uo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
cd "$root" || exit 1
formatter=$(command -v clang-format-14 || command -v clang-format || true)
[ -n "$formatter" ] || { echo "tests/format.sh: clang-format 14 is not installed." >&2; exit 2; }
case $("$formatter" --version) in *"version 14."*) ;; *) echo "tests/format.sh: clang-format 14 is needed, $("$formatter" --version) is here." >&2; exit 2 ;; esac

sources() { [ $# -eq 0 ] || find "$@" -name node_modules -prune -o -type f \( -name '*.cpp' -o -name '*.h' \) -print | sort; }
# Folders, one a line; a comment begins with #.
formatted() { sed 's/#.*//; s/[[:space:]]//g; /^$/d' tests/formatted.txt; }

mapfile -t folders < <(formatted)
for folder in "${folders[@]+"${folders[@]}"}"; do
  [ -d "$folder" ] || { echo "tests/formatted.txt: there is no folder $folder" >&2; exit 1; }
done
case ${1:-} in
  --write)
    shift
    [ $# -gt 0 ] || { echo "tests/format.sh: --write needs a folder" >&2; exit 2; }
    sources "$@" | xargs -r "$formatter" -i
    exit ;;
  --check) mapfile -t files < <(sources "${folders[@]+"${folders[@]}"}") ;;
  '') mapfile -t files < <(sources core wasm tests) ;;
  *) echo "tests/format.sh: unknown option $1" >&2; exit 2 ;;
esac
differing=0
for file in "${files[@]+"${files[@]}"}"; do
  "$formatter" "$file" | cmp -s - "$file" && continue
  differing=$((differing + 1))
  echo "$file"
done
echo "${#files[@]} files looked at, $differing differ from .clang-format"
[ "${1:-}" != --check ] || [ "$differing" -eq 0 ]
