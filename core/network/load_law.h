// What a load takes at a voltage: the one place of these laws. The network, the search for the
// worst loading and the tracing all ask here. Plain doubles: volts, amperes, watts, ohm.
//
//                 reversed      0 to fold_v            fold_v and above
//   resistance    proportional  proportional           value_v / value
//   current       0             proportional           value_a
//   power         0             value_w * v / fold_v^2 value_w / v
//
// Continuous everywhere. Constant current never falls with voltage, so a network of it has one
// answer; constant power does, so it can have two stable ones, or none above the fold.
#pragma once

#include "circuit/circuit.h"
#include "network/netlist.h"
#include "units/quantity.h"

namespace network {

// A load that holds up a part with nothing else to hold it stands at 0 V give or take a rounding;
// within this it counts as forward, or every other step would let the part go.
inline constexpr double kNoVoltsV = 1e-10;

// Part of nominal: where a device folds whose lowest voltage nobody has told.
inline constexpr double kFoldsBelow = 0.25;

struct LoadLaw {
  Law law = Law::constant_current;  // or constant_power, resistance; open: takes nothing
  double value = 0.0;               // A, W or ohm; 0 A and 0 W: takes nothing
  double fold_v = 1.0;              // above 0; of no meaning for a resistance

  [[nodiscard]] bool constant() const { return law == Law::constant_current || law == Law::constant_power; }
  [[nodiscard]] double folded_siemens() const {
    return law == Law::constant_power ? value / (fold_v * fold_v) : value / fold_v;
  }
  [[nodiscard]] double current_a(double voltage_v) const {
    if (!constant()) return law == Law::resistance ? voltage_v / value : 0.0;
    if (voltage_v <= 0.0) return 0.0;
    if (voltage_v < fold_v) return folded_siemens() * voltage_v;
    return law == Law::constant_power ? value / voltage_v : value;
  }
  [[nodiscard]] double slope_siemens(double voltage_v) const {
    if (!constant()) return law == Law::resistance ? 1.0 / value : 0.0;
    if (voltage_v < -kNoVoltsV) return 0.0;
    if (voltage_v < fold_v) return folded_siemens();
    return law == Law::constant_power ? -value / (voltage_v * voltage_v) : 0.0;
  }
  // The same load on by a part of it, above 0.
  [[nodiscard]] LoadLaw part(double on) const { return {law, law == Law::resistance ? value / on : value * on, fold_v}; }
  // Integral of current over voltage from a to b, of the constant laws: exact in each piece and free
  // of cancellation for a short step.
  [[nodiscard]] double content_w(double a_v, double b_v) const;
  // Volts across it behind a source of `emf_v` with `ohm` in the way, nothing else on: the higher
  // point where a power has two.
  [[nodiscard]] double volts_behind(double emf_v, double ohm) const;
};

// The whole load of a device in a network of this nominal voltage. open: it has no rating.
LoadLaw load_law(const circuit::Load& load, units::Volts nominal);

// Below this a device is taken as unable to run at all: its own lowest voltage when told, else
// kFoldsBelow of nominal.
units::Volts fold_voltage(const circuit::Load& load, units::Volts nominal);

}  // namespace network
