// A vehicle held to the limits and to its own shape: at least one block, each circuit alone on a
// position that its block has, each circuit valid as seen from there.
#pragma once

#include <cstddef>

#include "circuit/problem.h"
#include "vehicle/vehicle.h"

namespace vehicle {

inline constexpr std::size_t kMaxBlocks = 8;
inline constexpr std::size_t kMaxSources = 8;
inline constexpr std::size_t kMaxCircuits = 100;
inline constexpr std::size_t kMaxPlannedOutlets = 2500;   // of all circuits together
inline constexpr std::size_t kMaxTraces = 50;        // kept for one circuit; the oldest goes
inline constexpr std::size_t kMaxTold = 200;         // answers in one trace
inline constexpr std::size_t kMaxTextBytes = 2000;   // one sentence of a trace

circuit::Problems validate(const Vehicle& vehicle);

}  // namespace vehicle
