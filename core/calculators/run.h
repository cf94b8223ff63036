// One run of red and black wire: what it loses, how long it may be, which size it needs.
// Only the wire counts here; what joints and feeder add, sizing knows.
#pragma once

#include <optional>
#include <string>

#include "calculators/carrying.h"
#include "tables/conductor.h"
#include "units/quantity.h"

namespace calculators {

// Both conductors of a run, one-way `length`, with the metal at this temperature.
units::Ohms loop_resistance(const tables::Conductor& wire, units::Metres length, units::Celsius metal);

struct RunLoss {
  units::Ohms loop;
  units::Volts drop;
  units::Watts heat;       // in the whole wire
  double fraction = 0.0;   // of nominal
};
RunLoss drop_of_run(const tables::Conductor& wire, units::Metres length, units::Amperes current,
                    units::Volts nominal, units::Celsius metal);

// One way; infinite when the current is 0.
units::Metres longest_run(const tables::Conductor& wire, units::Amperes current, units::Volts allowed,
                          units::Celsius metal);

struct RunDemand {
  tables::GaugeSystem gauge = tables::GaugeSystem::awg;
  units::Metres length;
  units::Amperes current;
  units::Volts nominal{12.0};
  double drop_limit = 0.05;           // fraction of nominal
  units::Celsius metal{50.0};
  Lie lie;
};
enum class SizeLacks { nothing, minimum, ampacity, fuse, drop };
struct SizeForRun {
  const tables::Conductor* wire = nullptr;     // nullptr: none of the list serves
  RunLoss loss;
  std::optional<units::Amperes> fuse;
  const tables::Conductor* smaller = nullptr;  // next smaller size, if there is one
  SizeLacks smaller_lacks = SizeLacks::nothing;
  SizeLacks largest_lacks = SizeLacks::nothing;  // why even the largest failed, when none serves
};
SizeForRun wire_for_run(const RunDemand& demand);
SizeLacks what_lacks(const tables::Conductor& wire, const RunDemand& demand);

}  // namespace calculators
