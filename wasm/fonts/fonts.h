// The two font files of the app, embedded: web/fonts/*.otf, made by web/fonts/bake.py.
// One family drawn for legibility: figures of one width, slashed zero, I l 1 unlike each other.
// Characters: ASCII, Latin-1, Latin Extended-A and the signs listed in bake.py (no emoji).
#pragma once

#include <span>

namespace fonts {

[[nodiscard]] std::span<const unsigned char> text();       // Medium: running text
[[nodiscard]] std::span<const unsigned char> semibold();   // SemiBold: numbers and headings

}  // namespace fonts
