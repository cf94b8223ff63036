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

// in_line: switch, relay, breaker, fuse holder, disconnect, in the positive between block and outlet
// or battery and block. wired_in: how a device without an outlet is joined to its wire.
enum class PartKind { clamp, splice, terminal, outlet, in_line, wired_in };

struct Part {
  PartKind kind;
  std::string_view key;       // stable key in files
  std::string_view name;      // "Lever splice, up to 6 mm²"
  units::SquareMillimetres smallest;       // conductor it holds, bare
  units::SquareMillimetres largest_bare;
  std::optional<units::SquareMillimetres> largest_with_ferrule;  // nullopt: takes no ferrule
  units::Amperes rated;       // most current through it
  units::Amperes continuous;  // most that should flow for long; the rating where nothing else is known
  // Good and new. Of a fuse holder or breaker only the joints of its wires: what is in it adds its
  // element and contacts (fuse.h).
  units::Ohms typical_resistance;
  bool stands_vibration;      // twist-on connectors do not: never offered for anything that moves
  bool holds_boat_pull;       // a splice that may meet the pull asked on boats (terminal.h); levers may not
  // An outlet takes what is plugged in, so its fuse must bound it by the rating, unless it bounds
  // itself (a charger takes no more than it gives) or is one device wired in, which counts with its load.
  bool limits_itself;
  bool wired_in;
  std::optional<units::Watts> rated_power;  // of what limits itself: the most it takes
  const Citation* citation;
};
// kind: clamp position of the fuse block, splice, outlet terminal (tab, screw, stud), outlet.
// Ascending largest_bare.
std::span<const Part> parts(PartKind kind);
const Part* part_by_key(std::string_view key);
std::span<const PartKind> part_kinds();
// Splices to offer. In anything that moves, only those that stand vibration; on the water only
// those that may hold the pull asked there.
std::vector<const Part*> splices_offered(bool moves, bool on_water = false);

// A push-on tab's permitted current depends on the wire crimped to it (UL 310, from memory), at the
// outlet, on the block and on the narrow tab alike.
// Returns the lower of the part's rating and that figure.
units::Amperes part_rating_with(const Part& part, units::SquareMillimetres wire);
// Where part_rating_with()'s figure comes from: the tab table where it is the lower, else the part.
const Citation& part_rating_citation(const Part& part, units::SquareMillimetres wire);
// Band rule of thumb behind every typical_resistance.
const Citation& joint_resistance_citation();

// Does the conductor go in?  Bare strands or with a ferrule pressed on.
bool part_accepts(const Part& part, units::SquareMillimetres wire, bool ferrule);

}  // namespace tables
