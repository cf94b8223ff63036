#include "pictures/sketch_paint.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

#include "drawing/palette.h"

namespace pictures {
namespace {

using drawing::Anchor;
using drawing::Ink;
using drawing::Point;
using drawing::Subject;
using drawing::TextSize;
using Path = std::vector<Point>;

double distance(Point a, Point b) { return std::hypot(b.x - a.x, b.y - a.y); }
Point towards(Point a, Point b, double reach) {
  const double length = distance(a, b);
  if (length <= 0.0) return a;
  return {a.x + (b.x - a.x) * reach / length, a.y + (b.y - a.y) * reach / length};
}

// Corners as short curves: a wire bends, it does not fold.
Path rounded(const Path& path, double radius) {
  if (path.size() < 3) return path;
  Path smooth{path.front()};
  for (std::size_t i = 1; i + 1 < path.size(); ++i) {
    const Point corner = path[i];
    const double r = std::min({radius, distance(path[i - 1], corner) / 2.0, distance(corner, path[i + 1]) / 2.0});
    const Point in = towards(corner, path[i - 1], r);
    const Point out = towards(corner, path[i + 1], r);
    constexpr int kSteps = 5;
    for (int k = 0; k <= kSteps; ++k) {   // a quadratic curve with the corner as its control point
      const double t = static_cast<double>(k) / kSteps;
      const double u = 1.0 - t;
      smooth.push_back({u * u * in.x + 2.0 * u * t * corner.x + t * t * out.x,
                        u * u * in.y + 2.0 * u * t * corner.y + t * t * out.y});
    }
  }
  smooth.push_back(path.back());
  return smooth;
}

// The conductors in this vehicle's colours: red and black as the theme has them.
Ink conductor_ink(std::string_view colour) {
  if (colour == "red") return Ink::positive;
  if (colour == "black") return Ink::negative;
  return drawing::swatch(colour);
}
bool needs_edge(Ink ink) { return ink != Ink::positive && ink != Ink::negative; }   // white upon white
Ink mark_ink(Ink ink) { return needs_edge(ink) ? Ink::text : ink; }

class Painter {
 public:
  Painter(const circuit::Circuit& circuit, const SketchWords& words, const SketchOptions& options, const Measures& m,
          const Layout& layout)
      : circuit_(circuit), words_(words), options_(options), m_(m), layout_(layout),
        plus_(conductor_ink(circuit::colours_of(circuit).plus)), minus_(conductor_ink(circuit::colours_of(circuit).minus)) {}

  std::vector<drawing::Shape> paint() {
    for (std::size_t r = 0; r < layout_.rows.size(); ++r) paint_lines(r);
    for (const Row& row : layout_.rows) {
      if (row.block_tap) paint_tap(*row.block_tap, row);
      for (const Stop& stop : row.stops) {
        if (stop.tap) paint_tap(*stop.tap, row);
      }
    }
    for (const Row& row : layout_.rows) {
      paint_start(row);
      for (const Stop& stop : row.stops) paint_stop(stop, row);
    }
    return std::move(shapes_);
  }

 private:
  // -- what shapes stand for
  [[nodiscard]] Subject outlet_subject(std::size_t outlet) const {
    return {static_cast<std::uint32_t>(SketchSubject::outlet), circuit_.outlets[outlet].id.number};
  }
  [[nodiscard]] Subject run_subject(std::size_t outlet) const {
    return {static_cast<std::uint32_t>(SketchSubject::run), circuit_.outlets[outlet].id.number};
  }
  static Subject battery_subject() { return {static_cast<std::uint32_t>(SketchSubject::battery), 0}; }
  static Subject fuse_subject() { return {static_cast<std::uint32_t>(SketchSubject::fuse), 0}; }

  // -- pens
  template <class Form>
  void add(Form form, Subject subject) {
    drawing::Shape& shape = shapes_.emplace_back();
    shape.form.emplace<Form>(std::move(form));
    shape.subject = subject;
  }
  [[nodiscard]] double wire_width() const { return 2.25 * m_.unit; }
  void line(Point a, Point b, double width, Ink ink, Subject subject) {
    add(drawing::Line{a, b, width, ink}, subject);
  }
  void wire(Path path, Ink ink, Subject subject) {
    if (needs_edge(ink)) add(drawing::Polyline{path, wire_width() + 1.5 * m_.unit, Ink::muted, false, Ink::none}, subject);
    add(drawing::Polyline{std::move(path), wire_width(), ink, false, Ink::none}, subject);
  }
  void lead(Point a, Point b, Ink ink, Subject subject) {
    if (needs_edge(ink)) line(a, b, 3.0 * m_.unit, Ink::muted, subject);
    line(a, b, 1.5 * m_.unit, ink, subject);
  }
  void bent_wire(const Path& path, Ink ink, Subject subject) { wire(rounded(path, 6.0 * m_.unit), ink, subject); }
  void dot(Point centre, Ink ink, Subject subject) {
    add(drawing::Circle{centre, 3.5 * m_.unit, 0.75 * m_.unit, needs_edge(ink) ? Ink::muted : ink, ink}, subject);
  }
  void text(Point at, std::string words, Ink ink, bool bold, Subject subject, Anchor anchor = Anchor::centre) {
    add(drawing::Text{at, std::move(words), anchor, TextSize::caption, bold, ink}, subject);
  }
  // Drawn, not written: the same in every font.
  void plus(Point at, Subject subject) {
    const double arm = 3.5 * m_.unit;
    line({at.x - arm, at.y}, {at.x + arm, at.y}, 1.5 * m_.unit, mark_ink(plus_), subject);
    line({at.x, at.y - arm}, {at.x, at.y + arm}, 1.5 * m_.unit, mark_ink(plus_), subject);
  }
  void minus(Point at, Subject subject) {
    const double arm = 3.5 * m_.unit;
    line({at.x - arm, at.y}, {at.x + arm, at.y}, 1.5 * m_.unit, mark_ink(minus_), subject);
  }

  // Straight down, hopping over the black lines it crosses, so that no crossing looks like a joint.
  [[nodiscard]] Path down(double x, double from_y, double to_y, std::vector<double> crossings) const {
    std::sort(crossings.begin(), crossings.end());
    const double r = 4.0 * m_.unit;
    Path path{{x, from_y}};
    for (const double y : crossings) {
      constexpr int kSteps = 8;
      for (int k = 0; k <= kSteps; ++k) {
        const double angle = 3.14159265358979 * static_cast<double>(k) / kSteps;
        path.push_back({x + r * std::sin(angle), y - r * std::cos(angle)});
      }
    }
    path.push_back({x, to_y});
    return path;
  }

  // -- lines between splices
  void paint_lines(std::size_t r) {
    const Row& row = layout_.rows[r];
    Point red{row.left, row.red_y};
    Point black{row.black_left, row.black_y};
    if (row.start == RowStart::battery) paint_feed(row, red, black);
    if (row.start == RowStart::splice && !row.from) red.x = m_.margin + (layout_.fuse.right - layout_.fuse.left);
    for (std::size_t k = 0; k < row.stops.size(); ++k) {
      const Stop& stop = row.stops[k];
      const Subject run = run_subject(stop.outlet);
      const Point red_end{stop.x, row.red_y};
      const Point black_end{stop.x, row.black_y};
      if (k == 0 && row.start == RowStart::turn) {
        paint_turn(r, red_end, black_end, run);
      } else if (k > 0 || row.start != RowStart::hung) {   // what hangs is drawn with its tap
        wire({red, red_end}, plus_, run);
        wire({black, black_end}, minus_, run);
      }
      text({stop.length_x, row.red_y - 7.0 * m_.unit - m_.text_height / 2.0}, words_.outlets[stop.outlet].length,
           Ink::muted, false, run);
      red = red_end;
      black = black_end;
    }
  }

  // Battery to fuse; leaves `red` behind the fuse.
  void paint_feed(const Row& row, Point& red, Point& black) {
    const double end = row.block_tap ? row.block_tap->red_x : layout_.fuse.right;
    wire({red, {layout_.fuse.left, row.red_y}}, plus_, fuse_subject());
    wire({{layout_.fuse.right, row.red_y}, {end, row.red_y}}, plus_, fuse_subject());
    wire({black, {end, row.black_y}}, minus_, battery_subject());
    red = {end, row.red_y};
    black = {end, row.black_y};
  }

  // The run that goes from the end of the row before to the first stop of this one.
  void paint_turn(std::size_t r, Point red_end, Point black_end, Subject run) {
    const Row& before = layout_.rows[r - 1];
    const Row& row = layout_.rows[r];
    double x = layout_.fuse.right;
    if (before.block_tap) x = before.block_tap->red_x;
    if (!before.stops.empty()) x = before.stops.back().x;
    const double right = layout_.turn_red_x;
    const double inner = right - m_.lane;
    const double black_y = before.turn_black_y;
    const double red_y = black_y + m_.lane;
    bent_wire({{x, before.red_y}, {right, before.red_y}, {right, red_y}, {row.left, red_y}, {row.left, row.red_y}, red_end},
              plus_, run);
    bent_wire({{x, before.black_y}, {inner, before.black_y}, {inner, black_y}, {row.black_left, black_y},
               {row.black_left, row.black_y}, black_end},
              minus_, run);
  }

  // -- branches
  void paint_tap(const Tap& tap, const Row& row) {
    const Subject own = tap.from ? outlet_subject(*tap.from) : fuse_subject();
    if (tap.hung.empty()) {
      paint_arrow(tap, row, own);
    } else {
      paint_hung(tap, row);
    }
    dot({tap.red_x, row.red_y}, plus_, own);
    dot({tap.black_x, row.black_y}, minus_, own);
  }

  void paint_hung(const Tap& tap, const Row& row) {
    std::vector<double> crossings{row.black_y};
    for (std::size_t k = 0; k < tap.hung.size(); ++k) {
      const Row& child = layout_.rows[tap.hung[k]];
      const Stop& first = child.stops.front();
      const Subject run = run_subject(first.outlet);
      const bool last = k + 1 == tap.hung.size();
      const double bend = last ? 6.0 * m_.unit : 0.0;   // where others hang further down, a joint and no bend
      Path red = down(tap.red_x, row.red_y, child.red_y - 2.0 * bend, crossings);
      const Path corner = rounded({red.back(), {tap.red_x, child.red_y}, {first.x, child.red_y}}, bend);
      red.insert(red.end(), corner.begin() + 1, corner.end());
      wire(std::move(red), plus_, run);
      wire(rounded({{tap.black_x, row.black_y}, {tap.black_x, child.black_y}, {first.x, child.black_y}}, bend),
           minus_, run);
      if (!last) {
        dot({tap.red_x, child.red_y}, plus_, run);
        dot({tap.black_x, child.black_y}, minus_, run);
        crossings.push_back(child.black_y);
      }
    }
  }

  void paint_arrow(const Tap& tap, const Row& row, Subject own) {
    const double middle = row.black_y + 8.0 * m_.unit + m_.text_height / 2.0;
    const double tip = middle + 5.0 * m_.unit;
    wire(down(tap.red_x, row.red_y, tip, {row.black_y}), plus_, own);
    wire({{tap.black_x, row.black_y}, {tap.black_x, tip}}, minus_, own);
    const double half = 2.5 * m_.unit;
    wire({{tap.red_x - half, tip - half}, {tap.red_x, tip}, {tap.red_x + half, tip - half}}, plus_, own);
    wire({{tap.black_x - half, tip - half}, {tap.black_x, tip}, {tap.black_x + half, tip - half}}, minus_, own);
    text({tap.red_x + 6.0 * m_.unit, middle}, tap.arrow_to, Ink::text, true, own, Anchor::left);
  }

  // -- starts of rows
  void paint_start(const Row& row) {
    double x = row.left;
    Subject subject;
    switch (row.start) {
      case RowStart::battery: paint_battery(row); subject = battery_subject(); break;
      case RowStart::turn: case RowStart::hung: break;
      case RowStart::splice: x = paint_splice_again(row); break;
    }
    plus({x + 8.0 * m_.unit, row.red_y - 9.0 * m_.unit}, subject);
    minus({x + 8.0 * m_.unit, row.black_y + 9.0 * m_.unit}, subject);
  }

  void paint_battery(const Row& row) {
    const double top = row.red_y - 9.0 * m_.unit;
    const double height = m_.line_gap + 18.0 * m_.unit;
    const Span& box = layout_.battery;
    add(drawing::Box{{box.left, top}, box.right - box.left, height, 5.0 * m_.unit, 1.75 * m_.unit,
                                    Ink::text, Ink::card}, battery_subject());
    const std::size_t space = words_.battery.find(' ');
    const double middle = row.red_y + m_.line_gap / 2.0;
    const double x = (box.left + box.right) / 2.0;
    if (space == std::string::npos) {
      text({x, middle}, words_.battery, Ink::text, true, battery_subject());
    } else {
      text({x, middle - 0.51 * m_.text_height}, words_.battery.substr(0, space), Ink::text, true, battery_subject());
      text({x, middle + 0.51 * m_.text_height}, words_.battery.substr(space + 1), Ink::text, true, battery_subject());
    }
    paint_fuse(layout_.fuse.left, row.red_y, Ink::text);
  }

  void paint_fuse(double left, double red_y, Ink ink) {
    const double width = layout_.fuse.right - layout_.fuse.left;
    const double height = m_.text_height + 4.0 * m_.unit;
    add(drawing::Box{{left, red_y - height / 2.0}, width, height, 4.0 * m_.unit, 1.75 * m_.unit, ink,
                                    Ink::card}, fuse_subject());
    text({left + width / 2.0, red_y}, words_.fuse, ink, true, fuse_subject());
  }

  // The splice or fuse that feeds a row which found no room below it, once more in grey.
  // Returns where the marks go.
  double paint_splice_again(const Row& row) {
    if (!row.from) {
      paint_fuse(m_.margin, row.red_y, Ink::muted);
      return m_.margin + layout_.fuse.right - layout_.fuse.left;
    }
    paint_circle(*row.from, row.left, row, Ink::muted);
    return row.left + m_.radius;
  }

  // -- outlets
  void paint_circle(std::size_t outlet, double x, const Row& row, Ink ink) {
    const Subject subject = outlet_subject(outlet);
    const Point centre{x, (row.red_y + row.black_y) / 2.0};
    lead({x, row.red_y}, {x, centre.y - m_.radius}, plus_, subject);
    lead({x, centre.y + m_.radius}, {x, row.black_y}, minus_, subject);
    dot({x, row.red_y}, plus_, subject);
    dot({x, row.black_y}, minus_, subject);
    add(drawing::Circle{centre, m_.radius, 1.75 * m_.unit, ink, Ink::card}, subject);
    text(centre, words_.outlets[outlet].letter, ink, true, subject);
  }

  void paint_stop(const Stop& stop, const Row& row) {
    const OutletWords& outlet = words_.outlets[stop.outlet];
    const Subject subject = outlet_subject(stop.outlet);
    paint_circle(stop.outlet, stop.x, row, Ink::text);
    if (options_.ringed && *options_.ringed == circuit_.outlets[stop.outlet].id) {
      add(drawing::Circle{{stop.x, (row.red_y + row.black_y) / 2.0}, m_.radius + 4.5 * m_.unit,
                                         2.5 * m_.unit, Ink::accent, Ink::none}, subject);
    }
    if (outlet.voltage.empty()) return;
    const double y = row.black_y + 8.0 * m_.unit + m_.text_height / 2.0;
    if (!outlet.beyond_limit) {
      text({stop.x, y}, outlet.voltage, Ink::muted, false, subject);
      return;
    }
    paint_warning({stop.x - caption_width(options_, outlet.voltage, true) / 2.0 - 1.5 * m_.unit, y}, subject);
    text({stop.x + warning_width(m_) / 2.0, y}, outlet.voltage, Ink::stop, true, subject);
  }

  void paint_warning(Point centre, Subject subject) {
    const double half = 6.0 * m_.unit;
    const Path triangle{{centre.x, centre.y - half}, {centre.x + half, centre.y + half}, {centre.x - half, centre.y + half}};
    add(drawing::Polyline{triangle, 1.0 * m_.unit, Ink::stop, true, Ink::stop}, subject);
    line({centre.x, centre.y - 1.5 * m_.unit}, {centre.x, centre.y + 2.0 * m_.unit}, 1.5 * m_.unit, Ink::card, subject);
    line({centre.x, centre.y + 4.4 * m_.unit}, {centre.x, centre.y + 4.5 * m_.unit}, 1.5 * m_.unit, Ink::card, subject);
  }

  const circuit::Circuit& circuit_;
  const SketchWords& words_;
  const SketchOptions& options_;
  const Measures& m_;
  const Layout& layout_;
  Ink plus_, minus_;   // of the conductors
  std::vector<drawing::Shape> shapes_;
};

}  // namespace

std::vector<drawing::Shape> paint(const circuit::Circuit& circuit, const SketchWords& words,
                                  const SketchOptions& options, const Measures& measures, const Layout& layout) {
  return Painter(circuit, words, options, measures, layout).paint();
}

}  // namespace pictures
