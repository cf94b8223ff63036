// One size of a fault that is not open or shorted outright.
#pragma once

#include <limits>

namespace diagnosis {

inline constexpr double kOpenOhm = std::numeric_limits<double>::infinity();
struct Size {
  double value;  // ohm; of a flat source the share of nominal volts; of a thin wire times its ohms
  double share;  // of the fault's prior; they sum to one
};

}  // namespace diagnosis
