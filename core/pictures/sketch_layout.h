// Where everything of the sketch lies. Rows of a red line over a black line; a line too long
// for the view goes on in the next row, joined by a turn. A branch hangs below its splice
// where there is room; where there is none, its splice shows an arrow to it, and the branch
// gets a row of its own that starts at its splice's letter.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "pictures/sketch.h"
#include "pictures/sketch_words.h"

namespace pictures {

// Fixed measures in px at the text scale asked for.
struct Measures {
  explicit Measures(double text_scale, double circle_radius);
  double unit;            // 1 px at text size 100 %
  double text_height;     // one caption line
  double radius;          // outlet circle
  double line_gap;        // red line to black line
  double margin;
  double lane;            // between the red and the black of a turn or a tap
  double turn_room;       // kept free at the right for a turn
  double mark_room;       // for the + and - at the start of a row
};

// Where branches leave: beside an outlet's splice, or behind the fuse.
struct Tap {
  std::optional<std::size_t> from;   // outlet index; nullopt: the fuse block
  double black_x = 0.0;
  double red_x = 0.0;
  std::vector<std::size_t> hung;     // rows that hang from it
  std::string arrow_to;              // letters of branches that have a row of their own
};

struct Stop {
  std::size_t outlet = 0;
  double x = 0.0;
  double length_x = 0.0;             // centre of the length's text
  std::optional<Tap> tap;
};

enum class RowStart { battery, turn, hung, splice };

struct Row {
  RowStart start = RowStart::battery;
  std::optional<std::size_t> from;   // what feeds the row's first stop; nullopt: the fuse block
  double left = 0.0;                 // where its red line begins
  double black_left = 0.0;
  double red_y = 0.0;
  double black_y = 0.0;
  double parent_red_y = 0.0;         // hung rows: the line they leave
  double parent_black_y = 0.0;
  std::vector<Stop> stops;
  std::optional<Tap> block_tap;      // the row that starts at the fuse block only
  double turn_black_y = 0.0;         // where it goes back below; 0: it does not
};

struct Span { double left = 0.0; double right = 0.0; };

struct Layout {
  double width = 0.0;
  double height = 0.0;
  Span battery;
  Span fuse;                // also the shape that rows starting at the block repeat
  double turn_red_x = 0.0;  // right edge of every turn, outer; the black one is a lane inside
  std::vector<Row> rows;
  std::size_t arrows = 0;   // branches without room below their splice
};

Measures measures_for(const SketchWords& words, const SketchOptions& options);
double caption_width(const SketchOptions& options, const std::string& text, bool bold);
// Width of the mark in front of a voltage beyond its limit, gap included.
double warning_width(const Measures& measures);

Layout lay_out(const SketchWords& words, const SketchOptions& options, const Measures& measures);

}  // namespace pictures
