#include "drawing/measure.h"

#include <algorithm>
#include <cstddef>

namespace drawing {
namespace {

// Widths in parts of the font size, from common sans-serif faces, rounded up.
double em_of(unsigned char byte) {
  if ((byte & 0xC0U) == 0x80U) return 0.0;            // a later byte of a character already counted
  if (byte >= 0x80U) return 0.80;
  if (byte >= '0' && byte <= '9') return 0.65;        // tabular digits
  switch (byte) {
    case ' ': case '.': case ',': case ':': case ';': case '\'': case '!': case '|':
    case 'i': case 'j': case 'l': case 'I': return 0.32;
    case 'f': case 't': case 'r': case '(': case ')': case '-': return 0.42;
    case 'm': case 'w': case 'M': case 'W': case '@': case '%': return 0.98;
    default: break;
  }
  return byte >= 'A' && byte <= 'Z' ? 0.76 : 0.62;
}

Rectangle around(const std::vector<Point>& points, double reach) {
  if (points.empty()) return {};
  Rectangle r{points[0].x, points[0].y, points[0].x, points[0].y};
  for (const Point& p : points) {
    r.left = std::min(r.left, p.x);
    r.right = std::max(r.right, p.x);
    r.top = std::min(r.top, p.y);
    r.bottom = std::max(r.bottom, p.y);
  }
  return {r.left - reach, r.top - reach, r.right + reach, r.bottom + reach};
}

struct Bounds {
  double text_scale;
  const TextWidth& text_width;

  Rectangle operator()(const Line& line) const { return around({line.a, line.b}, line.width / 2.0); }
  Rectangle operator()(const Circle& circle) const {
    return around({circle.centre}, circle.radius + circle.width / 2.0);
  }
  Rectangle operator()(const Box& box) const {
    return around({box.corner, {box.corner.x + box.width, box.corner.y + box.height}}, box.line_width / 2.0);
  }
  Rectangle operator()(const Polyline& line) const { return around(line.points, line.width / 2.0); }
  Rectangle operator()(const Text& text) const {
    const double width = text_scale * (text_width ? text_width(text.text, text.size, text.bold)
                                                  : estimated_text_width(text.text, text.size, text.bold));
    const double half = text_scale * line_height(text.size) / 2.0;
    const double left = text.anchor == Anchor::left    ? text.at.x
                        : text.anchor == Anchor::right ? text.at.x - width
                                                       : text.at.x - width / 2.0;
    return {left, text.at.y - half, left + width, text.at.y + half};
  }
};

}  // namespace

double size_px(TextSize size) {
  switch (size) {
    case TextSize::caption: return 13.0;
    case TextSize::text: return 15.0;
    case TextSize::title: return 18.0;
  }
  return 13.0;
}

double line_height(TextSize size) { return 1.25 * size_px(size); }

double estimated_text_width(const std::string& text, TextSize size, bool bold) {
  double em = 0.0;
  for (const char c : text) em += em_of(static_cast<unsigned char>(c));
  return em * size_px(size) * (bold ? 1.06 : 1.0);
}

Rectangle bounds(const Shape& shape, double text_scale, const TextWidth& text_width) {
  return std::visit(Bounds{text_scale, text_width}, shape.form);
}

}  // namespace drawing
