// How long a battery runs a load.
#pragma once

#include "units/quantity.h"

namespace calculators {

struct RunTime {
  units::Seconds time;
  double usable_ah = 0.0;        // capacity x depth x what the rate leaves
  double rate_factor = 1.0;      // share of the rated capacity that this current leaves; never above 1
};
// Peukert's rule t = H (C / (I H))^n, held to the rated capacity for currents below the rated
// one, times the usable depth. `exponent` 1: no rate effect. All above 0, depth up to 1.
RunTime run_time(double capacity_ah, units::Amperes load, double depth, double exponent, double rated_hours);

}  // namespace calculators
