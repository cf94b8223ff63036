#include "calculators/battery.h"

#include <algorithm>
#include <cmath>

namespace calculators {

RunTime run_time(double capacity_ah, units::Amperes load, double depth, double exponent, double rated_hours) {
  RunTime run;
  // t = H (C / (I H))^n, so the charge given is I t = C (C / (I H))^(n - 1).
  const double rated_a = capacity_ah / rated_hours;
  run.rate_factor = std::min(1.0, std::pow(rated_a / load.number(), exponent - 1.0));
  run.usable_ah = capacity_ah * run.rate_factor * depth;
  run.time = units::Seconds(3600.0 * run.usable_ah / load.number());
  return run;
}

}  // namespace calculators
