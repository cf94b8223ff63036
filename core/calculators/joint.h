// A joint or a path judged from voltage readings under load.
#pragma once

#include <string_view>

#include "units/quantity.h"

namespace calculators {

enum class JointGrade { good, fair, doubtful, bad };   // below 2, 5, 20 mohm, and above
struct JointReading {
  units::Volts lost;
  units::Ohms resistance;
  units::Ohms excess;            // above what a good one has; never below 0
  units::Watts heat;             // in the joint, all of it
  JointGrade grade = JointGrade::good;
};
// Readings before and after the joint against the same point; current above 0.
JointReading judge_joint(units::Volts before, units::Volts after, units::Amperes current, units::Ohms good_one);

struct PathReading {
  units::Ohms resistance;
  units::Watts heat;             // along the path
  double fraction = 0.0;         // of the unloaded reading
  units::Amperes into_short;     // what a dead short there would take
};
// Unloaded and loaded reading at one place; current above 0.
PathReading judge_path(units::Volts unloaded, units::Volts loaded, units::Amperes current);

}  // namespace calculators
