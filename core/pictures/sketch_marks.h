// Marks on the sketch: the points where two leads are held, or the part that is looked at or put
// right. What a place is, in the sketch's own words; where it lies only the layout knows.
#pragma once

#include <vector>

#include "circuit/circuit.h"
#include "drawing/shape.h"

namespace pictures {

enum class MarkPlace {
  battery, battery_post,   // the box; its plus or minus end
  feeder,                  // between battery and block; red: with the main fuse and main switch
  bus,                     // red: the feed stud before the fuse; black: the negative bus under it
  block,                   // fuse and bus together
  fuse, fuse_feed, fuse_wire,
  clamp,                   // where the circuit's wire leaves the block
  run,                     // the length that feeds an outlet
  wire_end,                // its end before the splice
  splice, tab,             // on the line; between line and outlet
  lug, contact,            // at the outlet's circle; half of the circle
  outlet,                  // the whole circle
  behind,                  // everything behind an outlet: both splices and tabs
};
// Told by shape, for colour alone would not do: a part in a ring, the red lead in a ring, the
// black lead in a square.
enum class MarkShape { ring, square };

struct SketchMark {
  MarkPlace place = MarkPlace::outlet;
  bool red = true;                                // which side, where the place has two
  circuit::OutletId outlet = circuit::kBlock;     // places at an outlet; unknown ids mark nothing
  MarkShape shape = MarkShape::ring;
  friend constexpr bool operator==(const SketchMark&, const SketchMark&) = default;
};

struct Layout;
struct Measures;
void paint_marks(const circuit::Circuit& circuit, const std::vector<SketchMark>& marks, const Measures& measures,
                 const Layout& layout, std::vector<drawing::Shape>& shapes);

}  // namespace pictures
