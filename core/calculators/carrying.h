// What a wire may carry where it lies, and the fuse that protects it: the same ampacity
// tables, margin and ceiling as sizing.
#pragma once

#include <optional>

#include "circuit/circuit.h"
#include "tables/ampacity.h"
#include "tables/fuse.h"
#include "units/quantity.h"

namespace calculators {

// Where the wire lies and what it is in.
struct Lie {
  std::optional<tables::AmpacityTableId> table;   // nullopt: the usual one for the wire's gauge
  tables::Surroundings around;
  circuit::Setting setting = circuit::Setting::van;
  tables::FuseFamilyId family = tables::FuseFamilyId::blade;
};
tables::AmpacityResult most_current(const tables::Conductor& wire, const Lie& lie);

// The largest fuse that still protects the wire: its derated ampacity, and in road vehicles
// the ceiling for thin wire. nullopt: the ampacity table ends.
struct Ceiling {
  units::Amperes most;
  const tables::Citation* citation = nullptr;
  bool road_vehicle = false;       // the road vehicle figure is the lower
};
std::optional<Ceiling> fuse_ceiling(const tables::Conductor& wire, const Lie& lie);

struct FusePick {
  std::optional<units::Amperes> fuse;      // smallest standard rating from `least` to the ceiling
  units::Amperes least;                    // 1.25 x the load
  std::optional<Ceiling> ceiling;          // nullopt: the ampacity table ends
  std::optional<units::Amperes> largest;   // largest standard rating within the ceiling
  bool family_ends = false;                // the family has no rating as large as `least`
};
FusePick fuse_for(const tables::Conductor& wire, units::Amperes load, const Lie& lie);

}  // namespace calculators
