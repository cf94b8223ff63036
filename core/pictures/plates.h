// Pictures beside reference rows, how-to cards and calculators: conductors to scale, fuses in
// their colours, tabs and terminals, where the probes go, plots. All drawn for a width and a
// text size; each fits the width it is given and describes itself in words.
#pragma once

#include <optional>

#include "calculators/calculator.h"
#include "drawing/measure.h"
#include "drawing/shape.h"
#include "reference/book.h"
#include "units/format.h"

namespace pictures {

struct PlateOptions {
  double view_width = 320.0;               // px available, at least 120
  units::Preference preference = units::Preference::metric;
  double text_scale = 1.0;                 // the person's text size
  drawing::TextWidth text_width;           // at text size 100 %, px; empty: a plain estimate
};

// What a row, page or card depicts; nullopt for Depicts::nothing and for a `which` not known.
std::optional<drawing::Picture> plate(const reference::Depicted& depicted, const PlateOptions& options);

// What Calculator::plot asks for, for these values; nullopt where there is nothing to draw.
std::optional<drawing::Picture> plot(const calculators::Calculator& calculator, const calculators::Values& values,
                                     const PlateOptions& options);

}  // namespace pictures
