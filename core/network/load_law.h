// The two load laws, their slope, and the integral that the line search goes down.
// Private to this room. Plain doubles: volts, amperes, watts.
//
//                 reversed      0 to fold_v            fold_v and above
//   current       0             proportional           value_a
//   power         0             value_w * v / fold_v^2 value_w / v
//
// Continuous everywhere. Constant current never falls with voltage, so a network of it has one
// answer; constant power does, so it can have two stable ones, or none above the fold.
#pragma once

#include <algorithm>
#include <cmath>

#include "network/netlist.h"

namespace network::detail {

// A load that holds up a part with nothing else to hold it stands at 0 V give or take a rounding;
// within this it counts as forward, or every other step would let the part go.
inline constexpr double kNoVoltsV = 1e-10;

struct LoadLaw {
  Law law = Law::constant_current;  // or constant_power
  double value = 0.0;               // A or W; 0: takes nothing
  double fold_v = 1.0;              // above 0

  [[nodiscard]] double folded_siemens() const {
    return law == Law::constant_power ? value / (fold_v * fold_v) : value / fold_v;
  }
  [[nodiscard]] double current_a(double voltage_v) const {
    if (voltage_v <= 0.0) return 0.0;
    if (voltage_v < fold_v) return folded_siemens() * voltage_v;
    return law == Law::constant_power ? value / voltage_v : value;
  }
  [[nodiscard]] double slope_siemens(double voltage_v) const {
    if (voltage_v < -kNoVoltsV) return 0.0;
    if (voltage_v < fold_v) return folded_siemens();
    return law == Law::constant_power ? -value / (voltage_v * voltage_v) : 0.0;
  }
  // Integral of current over voltage from a to b, exact in each piece and free of cancellation
  // for a short step.
  [[nodiscard]] double content_w(double a_v, double b_v) const {
    if (a_v > b_v) return -content_w(b_v, a_v);
    double sum = 0.0;
    const double low = std::max(a_v, 0.0);
    const double knee = std::min(b_v, fold_v);
    if (knee > low) sum += 0.5 * folded_siemens() * (knee - low) * (knee + low);
    const double start = std::max(a_v, fold_v);
    if (b_v > start) {
      sum += law == Law::constant_power ? value * std::log1p((b_v - start) / start) : value * (b_v - start);
    }
    return sum;
  }
};

}  // namespace network::detail
