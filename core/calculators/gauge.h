// AWG, mm2 and diameter of round copper, and its resistance.
#pragma once

#include "tables/conductor.h"
#include "units/quantity.h"

namespace calculators {

struct Gauge {
  double awg = 0.0;                    // 1/0 to 4/0 are 0 to -3; between two sizes a fraction
  units::SquareMillimetres area;
  units::Millimetres diameter;         // solid; a stranded wire is wider
  units::OhmsPerMetre solid;           // at `metal`, IEC 60028 copper
  const tables::Conductor* not_thinner_awg = nullptr;      // smallest listed size with at least this copper;
  const tables::Conductor* not_thinner_metric = nullptr;   // nullptr past the end of the list
};
Gauge from_awg(double awg, units::Celsius metal);
Gauge from_area(units::SquareMillimetres area, units::Celsius metal);
Gauge from_diameter(units::Millimetres diameter, units::Celsius metal);

}  // namespace calculators
