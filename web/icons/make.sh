#!/usr/bin/env bash
# Draws the PNG icons from icon.svg (our own drawing: a fused line with three outlets) with
# Chromium. The made files are committed; run this only when the drawing changes.
set -euo pipefail
cd "$(dirname "$0")"
work=$(mktemp -d); trap 'rm -rf "$work"' EXIT
shot() {  # NAME SIZE STYLE
  printf '<!doctype html><style>html,body{margin:0;width:100%%;height:100%%;overflow:hidden}%s</style>%s' "$3" "$(cat icon.svg)" > "$work/page.html"
  chromium --headless --no-sandbox --disable-gpu --hide-scrollbars --default-background-color=00000000 \
    --user-data-dir="$work/profile" --window-size="$2,$2" --screenshot="$PWD/$1" "file://$work/page.html" 2>/dev/null
  echo "$1"
}
for size in 192 512; do
  shot "icon-$size.png" "$size" 'svg{display:block;width:100%;height:100%}'
  # Maskable: ground to the edge, the drawing within the safe circle (80 % of the width).
  shot "maskable-$size.png" "$size" 'body{background:#15181B}svg{display:block;width:76%;height:76%;margin:12%}'
done
