// The fewest expected minutes there are, on circuits small enough to say so: dynamic programming over
// everything that can have been answered, with the engine's own likelihoods, minutes and stopping rule.
// What is compared is the choice of checks, nothing else.
#pragma once

#include <cstdint>
#include <optional>

#include "diagnosis/tracer.h"

namespace evaluation {

struct Best {
  double optimum = 0.0;   // expected minutes to the first conclusion, best choice at every turn
  double engine = 0.0;    // with the engine's choice
  double greedy = 0.0;    // with the plain one: most information per minute, one step ahead
  std::size_t checks = 0, states = 0;
  std::size_t other_stops = 0;   // turns at which the engine stopped and the optimum would not, or the other way
};
// nullopt when the case has more than `most_checks` checks, or more states than can be gone through.
std::optional<Best> best_minutes(const diagnosis::Case& the_case, std::size_t most_checks, std::size_t most_states);

// One or two outlets, a device with a light in hand, and most places shut. The same for the same seed and `k`.
diagnosis::Case small_case(std::uint64_t seed, std::size_t k);

}  // namespace evaluation
