// Circuits that were each kept with a copy of their supply, gathered into vehicles: what version 1
// of the file held. Nothing of a circuit is lost, and none is changed.
#pragma once

#include <cstddef>
#include <vector>

#include "vehicle/vehicle.h"

namespace vehicle {

struct Gathered {
  std::vector<Vehicle> vehicles;
  // For each circuit given: where it is now.
  struct Where { std::size_t vehicle; CircuitId circuit; };
  std::vector<Where> where;
};
// Circuits of the same named place, kind, practice and battery become one vehicle; a circuit
// without a place one of its own, named after it. In a vehicle, circuits of the same feeder, main
// fuse and block parts share a block, unless two name the same position: the later one then gets
// another block of the same kind. A vehicle that is full is followed by another of its name.
// Every circuit is valid, and tells nothing that a vehicle works out (supply.highest and beside).
Gathered gather(const std::vector<circuit::Circuit>& circuits);

// What version 1 kept as fitted: the one size and the fuse as read off them. Lengths were those of
// the plan: guessed. An empty size and 0 A are unknown; so is a fuse beyond circuit/limits.h.
Built built_from_v1(const circuit::Circuit& plan, const std::string& size, units::Amperes fuse);

}  // namespace vehicle
