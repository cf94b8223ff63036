// Watts, amperes and volts from any two; loads side by side and one after the other.
#pragma once

#include <span>
#include <vector>

#include "units/quantity.h"

namespace calculators {

struct Power {
  units::Volts volts;
  units::Amperes amperes;
  units::Watts watts;
  units::Ohms ohms;       // V / I: what a plain resistance would have
};
// Each above 0.
Power from_volts_amperes(units::Volts v, units::Amperes i);
Power from_volts_watts(units::Volts v, units::Watts p);
Power from_amperes_watts(units::Amperes i, units::Watts p);

enum class Joined { together, in_series };
struct Combined {
  units::Ohms resistance;
  units::Amperes current;             // from the supply
  units::Watts power;
  std::vector<units::Volts> across;   // each load
  std::vector<units::Watts> each;     // power in each load
};
// Plain resistances, each above 0, at least one, on a supply above 0 V.
Combined combine(std::span<const units::Ohms> loads, units::Volts supply, Joined joined);
// Resistance of a load that takes `rated` at `at`.
units::Ohms resistance_of(units::Watts rated, units::Volts at);

}  // namespace calculators
