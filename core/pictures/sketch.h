// The circuit sketch, the same everywhere: battery, fuse, red line over black line, outlets as
// lettered circles, lengths above, volts below, the suspect or the current step ringed.
// Branches of a tree hang below their splice. Wider than `view_width` it scrolls or folds into
// rows; thirty outlets stay readable.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "circuit/circuit.h"
#include "drawing/measure.h"
#include "drawing/shape.h"
#include "pictures/sketch_marks.h"
#include "sizing/answer.h"
#include "units/format.h"

namespace pictures {

enum class SketchSubject : std::uint32_t { none = 0, battery = 1, fuse = 2, outlet = 3, run = 4 };  // number: OutletId

struct SketchOptions {
  double view_width = 340.0;               // px available
  units::Preference preference = units::Preference::metric;
  std::optional<circuit::OutletId> ringed;
  std::vector<SketchMark> marks;           // where leads are held, or what is put right
  std::optional<std::string> fuse;         // on the fuse, where it is not the choice's: "20 A"
  double text_scale = 1.0;                 // the person's text size; the picture grows with it
  // Width of a text at text size 100 %, in px: the sketch multiplies by text_scale itself.
  // The app passes its font's; empty: a plain estimate.
  drawing::TextWidth text_width;
};
drawing::Picture sketch(const circuit::Circuit& circuit, const sizing::Candidate* choice, const SketchOptions& options);

}  // namespace pictures
