// How large things are: text sizes in px, and the rectangle a shape covers.
#pragma once

#include <functional>
#include <string>

#include "drawing/shape.h"

namespace drawing {

// Width in px of a text at text size 100 %. Whoever lays out multiplies by the text scale.
using TextWidth = std::function<double(const std::string&, TextSize, bool bold)>;

// Font size in px at text size 100 %: 13 caption, 15 text, 18 title.
double size_px(TextSize size);
// Height of one line of text, a quarter more than the font size.
double line_height(TextSize size);
// A width for when no font is at hand: a little more than a plain sans-serif face takes, so
// that what does not overlap by this figure does not overlap on the screen.
double estimated_text_width(const std::string& text, TextSize size, bool bold);

struct Rectangle {
  double left = 0.0, top = 0.0, right = 0.0, bottom = 0.0;
  [[nodiscard]] bool overlaps(const Rectangle& other) const {
    return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
  }
  [[nodiscard]] bool inside(const Rectangle& outer) const {
    return left >= outer.left && right <= outer.right && top >= outer.top && bottom <= outer.bottom;
  }
};
// Ink and line width included. `text_width` may be empty: the estimate is used.
Rectangle bounds(const Shape& shape, double text_scale, const TextWidth& text_width = {});

}  // namespace drawing
