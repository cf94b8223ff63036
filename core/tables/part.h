// The parts a branch goes through and what each accepts: wire range with bare strands, wire
// range with a ferrule, and current. Figures are typical parts, marked so; the user can type
// what is marked on the part in hand.
#pragma once

#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "tables/citation.h"
#include "units/quantity.h"

namespace tables {

enum class PartKind { clamp, splice, terminal, outlet };

struct Part {
  PartKind kind;
  std::string_view key;       // stable key in files
  std::string_view name;      // "Lever splice, up to 6 mm²"
  units::SquareMillimetres smallest;       // conductor it holds, bare
  units::SquareMillimetres largest_bare;
  std::optional<units::SquareMillimetres> largest_with_ferrule;  // nullopt: takes no ferrule
  units::Amperes rated;       // most current through it
  units::Ohms typical_resistance;  // good joint, new
  bool stands_vibration;      // twist-on connectors do not: never offered for anything that moves
  const Citation* citation;
};
// kind: clamp position of the fuse block, splice, outlet terminal (tab, screw, stud), outlet.
// Ascending largest_bare.
std::span<const Part> parts(PartKind kind);
const Part* part_by_key(std::string_view key);
// Splices to offer. In anything that moves, only those that stand vibration.
std::vector<const Part*> splices_offered(bool moves);

// A push-on tab's permitted current depends on the wire crimped to it (UL 310, from memory).
// Returns the lower of the part's rating and that figure.
units::Amperes part_rating_with(const Part& part, units::SquareMillimetres wire);
// Where part_rating_with()'s figure comes from: the tab table where it is the lower, else the part.
const Citation& part_rating_citation(const Part& part, units::SquareMillimetres wire);
// Band rule of thumb behind every typical_resistance.
const Citation& joint_resistance_citation();

// Does the conductor go in?  Bare strands or with a ferrule pressed on.
bool part_accepts(const Part& part, units::SquareMillimetres wire, bool ferrule);

}  // namespace tables
