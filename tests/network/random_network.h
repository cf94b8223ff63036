// Random circuits, networks and fault edits for the checks of this folder. Same seed, same
// networks, whatever the compiler and library: no standard distributions, and never two random
// calls in one argument list.
#pragma once

#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <random>
#include <string_view>

#include "circuit/circuit.h"
#include "network/branch_network.h"
#include "network/netlist.h"

namespace network_test {

class Random {
 public:
  explicit Random(std::uint64_t seed) : engine_(seed) {}
  double uniform(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) * 0x1p-53;
  }
  double log_uniform(double low, double high);
  std::size_t below(std::size_t count) { return static_cast<std::size_t>(engine_() % count); }
  bool chance(double part) { return uniform(0.0, 1.0) < part; }

 private:
  std::mt19937_64 engine_;
};

// How many of a long run: 5 % with BRANCHLIGHT_QUICK=1.
inline int run_count(int full) {
  const char* quick = std::getenv("BRANCHLIGHT_QUICK");
  return quick != nullptr && std::string_view(quick) == "1" ? (full + 19) / 20 : full;
}

circuit::Circuit random_circuit(Random& random, std::size_t outlets);
network::Fitted random_fitted(Random& random);
network::Loading random_loading(Random& random, std::size_t outlets);
network::BranchNetwork random_build(Random& random, const circuit::Circuit& circuit);

// Any connected tangle: resistances from milliohms to kilohms, batteries anywhere, every kind of load.
network::Netlist random_tangle(Random& random, std::size_t nodes);

// One fault: an open, a series resistance up to 1e7 ohm, a short, a swap, a meter, a stray battery.
void random_fault(Random& random, network::Netlist& netlist);

}  // namespace network_test
