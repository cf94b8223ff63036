// A short at the far end of a run, and what a fuse does at a multiple of its rating.
#pragma once

#include <optional>

#include "tables/conductor.h"
#include "tables/fuse.h"
#include "units/quantity.h"

namespace calculators {

struct ShortCircuit {
  units::Amperes current;
  double multiple = 0.0;                    // of the fuse's rating
  std::optional<units::Seconds> opens;      // by the slowest gates; nullopt: nothing promised
  std::optional<units::AmpereSquaredSeconds> let_through;
  units::AmpereSquaredSeconds withstands;
  bool in_time = false;                     // opens within sizing's limit of 5 s
  bool wire_survives = false;
};
// The wire as hot as its insulation allows, the source with `before` ohms up to the run.
ShortCircuit far_short(const tables::Conductor& wire, units::Metres length, const tables::FuseFamily& family,
                       units::Amperes rating, units::Volts source, units::Ohms before, units::Celsius insulation);

struct FuseAt {
  units::Amperes current;
  std::optional<units::Seconds> holds;      // at least; nullopt: nothing promised
  std::optional<units::Seconds> opens;      // at most; nullopt: nothing promised
};
FuseAt fuse_at(const tables::FuseFamily& family, units::Amperes rating, double multiple);

}  // namespace calculators
