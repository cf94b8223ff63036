#include "pictures/sketch_marks.h"

#include <cmath>
#include <optional>

#include "pictures/sketch_layout.h"

namespace pictures {
namespace {

using drawing::Ink;
using drawing::Point;

// Where an outlet stands. Its splice may be drawn once more at the start of a row: the stop counts.
struct Stand {
  const Row* row = nullptr;
  const Stop* stop = nullptr;
};

class MarkPainter {
 public:
  MarkPainter(const circuit::Circuit& circuit, const Measures& m, const Layout& layout, std::vector<drawing::Shape>& shapes)
      : circuit_(circuit), m_(m), layout_(layout), shapes_(shapes) {}

  void paint(const SketchMark& mark) {
    if (layout_.rows.empty()) return;
    if (at_source(mark)) return;
    const Stand stand = stand_of(mark.outlet);
    if (stand.stop != nullptr) at_outlet(mark, stand);
  }

 private:
  [[nodiscard]] Stand stand_of(circuit::OutletId id) const {
    for (const Row& row : layout_.rows)
      for (const Stop& stop : row.stops)
        if (circuit_.outlets[stop.outlet].id == id) return {&row, &stop};
    return {};
  }

  // Battery and block lie at the start of the first row. True: the mark was one of theirs.
  bool at_source(const SketchMark& mark) {
    const Row& row = layout_.rows.front();
    const double y = mark.red ? row.red_y : row.black_y;
    const Span& battery = layout_.battery;
    const Span& fuse = layout_.fuse;
    const double middle = (fuse.left + fuse.right) / 2.0;
    const double half = m_.text_height / 2.0 + 2.0 * m_.unit;
    switch (mark.place) {
      case MarkPlace::battery:
        box({battery.left, row.red_y - 9.0 * m_.unit}, {battery.right, row.black_y + 9.0 * m_.unit});
        return true;
      case MarkPlace::battery_post: point({battery.right, y}, mark.shape); return true;
      case MarkPlace::feeder: point({(battery.right + (mark.red ? fuse.left : middle)) / 2.0, y}, mark.shape); return true;
      case MarkPlace::bus: point({mark.red ? fuse.left - 5.0 * m_.unit : middle, y}, mark.shape); return true;
      case MarkPlace::block: box({fuse.left, row.red_y - half}, {fuse.right, row.black_y + 3.0 * m_.unit}); return true;
      case MarkPlace::fuse: box({fuse.left, row.red_y - half}, {fuse.right, row.red_y + half}); return true;
      case MarkPlace::fuse_feed: point({fuse.left, y}, mark.shape); return true;
      case MarkPlace::fuse_wire: point({fuse.right, y}, mark.shape); return true;
      case MarkPlace::clamp: point({fuse.right + 7.0 * m_.unit, y}, mark.shape); return true;
      default: return false;
    }
  }

  void at_outlet(const SketchMark& mark, const Stand& stand) {
    const double x = stand.stop->x;
    const double line = mark.red ? stand.row->red_y : stand.row->black_y;
    const Point centre{x, (stand.row->red_y + stand.row->black_y) / 2.0};
    const double inward = mark.red ? 1.0 : -1.0;
    const double edge = centre.y - inward * m_.radius;
    switch (mark.place) {
      case MarkPlace::run: point({stand.stop->length_x, line}, mark.shape); return;
      case MarkPlace::wire_end: point({x - 10.0 * m_.unit, line}, mark.shape); return;
      case MarkPlace::splice: point({x, line}, mark.shape); return;
      case MarkPlace::tab: point({x, (line + edge) / 2.0}, mark.shape); return;
      case MarkPlace::lug: point({x, edge}, mark.shape); return;
      case MarkPlace::contact: half_ring(centre, mark.red); return;
      case MarkPlace::outlet: ring(centre, m_.radius + kAir * m_.unit); return;
      case MarkPlace::behind:
        box({x - m_.radius, stand.row->red_y - 3.0 * m_.unit}, {x + m_.radius, stand.row->black_y + 3.0 * m_.unit});
        return;
      default: return;
    }
  }

  // -- pens: each mark twice, a wide one in the card's colour below, so that it parts from the wires
  static constexpr double kAir = 4.5;      // between a part and what is drawn round it
  static constexpr double kPoint = 7.5;    // radius round a single point
  static constexpr double kWidth = 2.75;
  static constexpr double kHalo = 5.5;

  template <class Form>
  void add(Form form) {
    shapes_.emplace_back().form.emplace<Form>(std::move(form));
  }
  void ring(Point centre, double radius) {
    add(drawing::Circle{centre, radius, kHalo * m_.unit, Ink::card, Ink::none});
    add(drawing::Circle{centre, radius, kWidth * m_.unit, Ink::accent, Ink::none});
  }
  void point(Point at, MarkShape shape) {
    const double r = kPoint * m_.unit;
    if (shape == MarkShape::ring) return ring(at, r);
    frame({at.x - r, at.y - r}, {at.x + r, at.y + r}, 1.5 * m_.unit);
  }
  void box(Point corner, Point opposite) {
    const double air = kAir * m_.unit;
    frame({corner.x - air, corner.y - air}, {opposite.x + air, opposite.y + air}, 7.0 * m_.unit);
  }
  void frame(Point corner, Point opposite, double radius) {
    drawing::Box box{corner, opposite.x - corner.x, opposite.y - corner.y, radius, kHalo * m_.unit, Ink::card, Ink::none};
    add(box);
    box.line_width = kWidth * m_.unit;
    box.ink = Ink::accent;
    add(box);
  }
  // The plus contact is the upper half of the outlet, the minus contact the lower one.
  void half_ring(Point centre, bool upper) {
    constexpr int kSteps = 20;
    constexpr double kFrom = 0.12, kTo = 3.14159265358979 - kFrom;   // a gap parts two halves
    const double radius = m_.radius + kAir * m_.unit;
    std::vector<Point> path;
    for (int k = 0; k <= kSteps; ++k) {
      const double angle = kFrom + (kTo - kFrom) * static_cast<double>(k) / kSteps;
      path.push_back({centre.x + radius * std::cos(angle), centre.y + (upper ? -radius : radius) * std::sin(angle)});
    }
    add(drawing::Polyline{path, kHalo * m_.unit, Ink::card, false, Ink::none});
    add(drawing::Polyline{std::move(path), kWidth * m_.unit, Ink::accent, false, Ink::none});
  }

  const circuit::Circuit& circuit_;
  const Measures& m_;
  const Layout& layout_;
  std::vector<drawing::Shape>& shapes_;
};

}  // namespace

void paint_marks(const circuit::Circuit& circuit, const std::vector<SketchMark>& marks, const Measures& measures,
                 const Layout& layout, std::vector<drawing::Shape>& shapes) {
  MarkPainter painter(circuit, measures, layout, shapes);
  for (const SketchMark& mark : marks) painter.paint(mark);
}

}  // namespace pictures
