// A picture as standalone SVG 1.1 text, for print, sharing and golden files.
#pragma once

#include <string>
#include <string_view>

#include "drawing/palette.h"
#include "drawing/shape.h"

namespace drawing {

struct SvgOptions {
  Palette palette = Palette::paper;
  bool filled_ground = false;   // paint the card colour behind; false: see-through
  std::string title{};          // short name; empty: none
};
// Every text is escaped: a name typed by a user is data, never markup. The result is
// well-formed whatever the picture holds. Coordinates carry two decimals.
std::string to_svg(const Picture& picture, const SvgOptions& options);

// Text safe inside an XML element or attribute. Bytes that are not UTF-8 become U+FFFD;
// characters that XML forbids (control characters) are dropped.
std::string escape_xml(std::string_view text);

}  // namespace drawing
