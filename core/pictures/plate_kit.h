// Private to this room: the small tools that plates are drawn with.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "drawing/shape.h"
#include "pictures/plates.h"

namespace pictures {

// A picture in the making, `unit` px at text size 100 % being options.text_scale px.
class Plate {
 public:
  Plate(const PlateOptions& options, double height_units);
  [[nodiscard]] double width() const { return picture_.width; }
  [[nodiscard]] double unit() const { return unit_; }
  [[nodiscard]] double height() const { return picture_.height; }

  Plate& line(drawing::Point a, drawing::Point b, double width, drawing::Ink ink);
  Plate& circle(drawing::Point centre, double radius, drawing::Ink ink, drawing::Ink fill, double width = 1.0);
  Plate& box(drawing::Point corner, double width, double height, double radius, drawing::Ink ink, drawing::Ink fill);
  Plate& path(std::vector<drawing::Point> points, double width, drawing::Ink ink, bool closed = false,
              drawing::Ink fill = drawing::Ink::none);
  // Held inside the picture by moving it sideways.
  Plate& text(drawing::Point at, const std::string& text, drawing::Anchor anchor = drawing::Anchor::centre,
              drawing::Ink ink = drawing::Ink::text, bool bold = false,
              drawing::TextSize size = drawing::TextSize::caption);
  [[nodiscard]] double text_width(const std::string& text, bool bold = false,
                                  drawing::TextSize size = drawing::TextSize::caption) const;
  drawing::Picture done(std::string description);

 private:
  template <class Form>
  Plate& add(Form form) {
    picture_.shapes.emplace_back().form = std::move(form);
    return *this;
  }

  const PlateOptions& options_;
  double unit_;
  drawing::Picture picture_;
};

// The plates, a file per subject. Empty where `which` is not known.
std::optional<drawing::Picture> conductor_plate(const std::string& conductor_id, const PlateOptions& options);
std::optional<drawing::Picture> fuse_plate(const std::string& which, const PlateOptions& options);
std::optional<drawing::Picture> terminal_plate(const reference::Depicted& depicted, const PlateOptions& options);
std::optional<drawing::Picture> probe_plate(reference::Depicts what, const PlateOptions& options);
std::optional<drawing::Picture> how_to_plate(const std::string& card, const PlateOptions& options);
std::optional<drawing::Picture> battery_plot(const std::string& battery, const PlateOptions& options);
// `at_multiple` above 0: marked on the chart.
std::optional<drawing::Picture> gate_plot(const std::string& family, double at_multiple, const PlateOptions& options);
drawing::Picture drop_plot(const calculators::DropCurve& curve, const PlateOptions& options);

}  // namespace pictures
