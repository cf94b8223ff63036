// Draws a laid-out sketch as shapes.
#pragma once

#include "circuit/circuit.h"
#include "drawing/shape.h"
#include "pictures/sketch_layout.h"

namespace pictures {

std::vector<drawing::Shape> paint(const circuit::Circuit& circuit, const SketchWords& words,
                                  const SketchOptions& options, const Measures& measures, const Layout& layout);

}  // namespace pictures
