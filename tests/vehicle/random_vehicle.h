// Random valid vehicles for the property tests: every field is used, and told as well as left out.
#pragma once

#include <cstddef>
#include <random>

#include "vehicle/vehicle.h"

namespace random_vehicles {

using Engine = std::mt19937_64;

struct Style {
  std::size_t most_blocks = 3;
  std::size_t most_sources = 3;
  std::size_t most_circuits = 6;
  std::size_t most_points = 6;    // in one circuit
  bool whole_ranges = true;       // every field over all that its limit allows, its ends too, and names of any
                                  // script; else as is met in vehicles
  bool built = true;              // what is built, and kept traces
};
inline constexpr Style kAsMet{.whole_ranges = false, .built = false};

// Never invalid: a part is drawn again until validate() finds nothing.
vehicle::Vehicle any(Engine& engine, const Style& style = {});
// One circuit as it is seen from a position of such a vehicle.
circuit::Circuit any_circuit(Engine& engine, const Style& style = {});

}  // namespace random_vehicles
