#include "pictures/plate_kit.h"

#include <algorithm>

namespace pictures {

using drawing::Anchor;
using drawing::Ink;
using drawing::Point;

Plate::Plate(const PlateOptions& options, double height_units) : options_(options), unit_(std::clamp(options.text_scale, 0.5, 4.0)) {
  picture_.width = std::max(120.0, options.view_width);
  picture_.height = height_units * unit_;
  picture_.text_scale = unit_;
}
Plate& Plate::line(Point a, Point b, double width, Ink ink) {
  return add(drawing::Line{a, b, width, ink});
}
Plate& Plate::circle(Point centre, double radius, Ink ink, Ink fill, double width) {
  return add(drawing::Circle{centre, radius, width, ink, fill});
}
Plate& Plate::box(Point corner, double width, double height, double radius, Ink ink, Ink fill) {
  return add(drawing::Box{corner, width, height, radius, 1.0, ink, fill});
}
Plate& Plate::path(std::vector<Point> points, double width, Ink ink, bool closed, Ink fill) {
  return add(drawing::Polyline{std::move(points), width, ink, closed, fill});
}
double Plate::text_width(const std::string& text, bool bold, drawing::TextSize size) const {
  return unit_ * (options_.text_width ? options_.text_width(text, size, bold) : drawing::estimated_text_width(text, size, bold));
}
Plate& Plate::text(Point at, const std::string& text, Anchor anchor, Ink ink, bool bold, drawing::TextSize size) {
  const double wide = text_width(text, bold, size);
  double left = anchor == Anchor::left ? at.x : anchor == Anchor::right ? at.x - wide : at.x - 0.5 * wide;
  left = std::max(2.0, std::min(left, picture_.width - 2.0 - wide));
  return add(drawing::Text{{left, at.y}, text, Anchor::left, size, bold, ink});
}
drawing::Picture Plate::done(std::string description) {
  picture_.description = std::move(description);
  return std::move(picture_);
}

}  // namespace pictures
