// Random valid circuits over the whole range of settings, for the property tests.
#pragma once

#include <cstdlib>
#include <cstddef>
#include <random>

#include "circuit/circuit.h"

namespace random_circuits {

using Engine = std::mt19937_64;

// Never invalid: drawn again until validate() finds nothing.
circuit::Circuit any(Engine& engine);
// Small, with no shelf and no odd parts: for brute force over loadings.
circuit::Circuit small(Engine& engine, std::size_t most_outlets);

double uniform(Engine& engine, double low, double high);
bool chance(Engine& engine, double probability);

// Full counts by default; BRANCHLIGHT_QUICK=1 cuts them to 5 %, for the sanitizers.
inline std::size_t count(std::size_t full) {
  const char* quick = std::getenv("BRANCHLIGHT_QUICK");
  return quick != nullptr && *quick == '1' ? full / 20 + 1 : full;
}

}  // namespace random_circuits
