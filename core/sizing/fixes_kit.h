// Private to the fixes: a circuit changed in one thing, tried with the size in hand.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "circuit/circuit.h"
#include "sizing/answer.h"
#include "sizing/fixes.h"

namespace sizing {

// What people set a current and a length by: figures to change to are whole ones of these.
inline constexpr double kCurrentStepA = 0.1;
inline constexpr double kLengthStepM = 0.05;

// The size in hand serves this circuit: valid, every judgement passes, and the shop has the
// size's fuse; then the circuit has an answer on the shelf.
std::optional<Candidate> serves(const circuit::Circuit& circuit, const tables::Conductor& size);

// Largest whole number in [low, high] for which `holds` is true, taking it to be true below and
// false above; the number returned was tried. nullopt: not even low.
template <class Holds>
std::optional<long> largest_that_holds(long low, long high, const Holds& holds) {
  if (low > high || !holds(low)) return std::nullopt;
  if (holds(high)) return high;
  while (high - low > 1) {
    const long middle = low + (high - low) / 2;
    (holds(middle) ? low : high) = middle;
  }
  return low;
}

circuit::Circuit with_runs_scaled(const circuit::Circuit& circuit, double factor);
units::Metres farthest_outlet(const circuit::Circuit& circuit);

std::optional<Fix> feeder_fix(const circuit::Circuit& circuit, const tables::Conductor& size, const Candidate& failing);
std::optional<Fix> split_fix(const circuit::Circuit& circuit, const tables::Conductor& size);
std::optional<Fix> other_part_fix(const circuit::Circuit& circuit, const tables::Conductor& size,
                                  const Candidate& failing);

}  // namespace sizing
