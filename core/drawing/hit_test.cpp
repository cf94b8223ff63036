#include "drawing/hit_test.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>

namespace drawing {
namespace {

double distance_to_segment(Point p, Point a, Point b) {
  const double dx = b.x - a.x;
  const double dy = b.y - a.y;
  const double length_squared = dx * dx + dy * dy;
  const double along =
      length_squared > 0.0 ? std::clamp(((p.x - a.x) * dx + (p.y - a.y) * dy) / length_squared, 0.0, 1.0) : 0.0;
  return std::hypot(p.x - (a.x + along * dx), p.y - (a.y + along * dy));
}

double distance_to_rectangle(Point p, const Rectangle& r) {
  const double dx = std::max({r.left - p.x, 0.0, p.x - r.right});
  const double dy = std::max({r.top - p.y, 0.0, p.y - r.bottom});
  return std::hypot(dx, dy);
}

double distance(Point p, const Shape& shape, double text_scale, const TextWidth& text_width) {
  if (const auto* line = std::get_if<Line>(&shape.form)) return distance_to_segment(p, line->a, line->b);
  if (const auto* circle = std::get_if<Circle>(&shape.form)) {
    return std::max(0.0, std::hypot(p.x - circle->centre.x, p.y - circle->centre.y) - circle->radius);
  }
  if (const auto* polyline = std::get_if<Polyline>(&shape.form)) {
    const auto& points = polyline->points;
    double nearest = std::numeric_limits<double>::infinity();
    for (std::size_t i = 1; i < points.size(); ++i) {
      nearest = std::min(nearest, distance_to_segment(p, points[i - 1], points[i]));
    }
    if (polyline->closed && points.size() > 2) {
      nearest = std::min(nearest, distance_to_segment(p, points.back(), points.front()));
    }
    return nearest;
  }
  return distance_to_rectangle(p, bounds(shape, text_scale, text_width));
}

}  // namespace

Subject hit_test(const Picture& picture, Point point, double finger_radius, const TextWidth& text_width) {
  Subject found;
  double nearest = finger_radius;
  for (const Shape& shape : picture.shapes) {
    if (shape.subject.kind == 0) continue;
    const double d = distance(point, shape, picture.text_scale, text_width);
    if (d <= nearest) {
      nearest = d;
      found = shape.subject;
    }
  }
  return found;
}

}  // namespace drawing
