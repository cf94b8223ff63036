// The tree sweep against the whole network, the laws of nature and finite differences.
#include "network/radial.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "network/random_network.h"
#include "network/solve.h"

using namespace network;
using network_test::Random;
using network_test::run_count;

TEST_CASE("the sweep and the whole network give the same voltages, chains and trees, every load") {
  Random random(20261125);
  const int circuits = run_count(6000);
  MESSAGE("seed 20261125, circuits ", circuits);
  double worst_v = 0.0, worst_a = 0.0;
  int with_folded = 0;
  for (int run = 0; run < circuits; ++run) {
    const std::size_t outlets = 1 + random.below(run % 20 == 0 ? 60 : 8);
    const circuit::Circuit made = network_test::random_circuit(random, outlets);
    const Fitted fitted = network_test::random_fitted(random);
    const Loading loading = network_test::random_loading(random, outlets);
    const auto battery = static_cast<BatteryState>(random.below(3));
    const RadialSolution tree = Radial(made, fitted, battery).solve(loading);
    const BranchNetwork whole = build(made, fitted, loading, battery);
    const Solution solution = solve(whole.netlist);
    INFO("run ", run, ": ", solution.message);
    REQUIRE(solution.usable());
    REQUIRE(tree.outcome == solution.outcome);
    with_folded += solution.folded.empty() ? 0 : 1;
    for (std::size_t k = 0; k < outlets; ++k) {
      const BranchNetwork::Named& device = *whole.find({Element::device, made.outlets[k].id});
      const double whole_v = solution.between(device.near_source, device.away).number();
      const double whole_a = solution.through(device.branch).number();
      worst_v = std::max(worst_v, std::abs(whole_v - tree.outlet_voltage_v[k]));
      worst_a = std::max(worst_a, std::abs(whole_a - tree.load_current_a[k]));
      const bool folded = std::find(solution.folded.begin(), solution.folded.end(), device.branch) != solution.folded.end();
      REQUIRE(folded == tree.folded[k]);
    }
    const BranchNetwork::Named& source = *whole.find({Element::battery});
    worst_a = std::max(worst_a, std::abs(solution.through(source.branch).number() - tree.total_current_a));
    worst_v = std::max(worst_v, std::abs(solution.between(source.away, source.near_source).number() - tree.battery_voltage_v));
    REQUIRE(worst_v < 1e-9);
  }
  MESSAGE("with a load folded: ", with_folded, ", worst ", worst_v, " V, ", worst_a, " A");
  CHECK(with_folded > circuits / 50);
  CHECK(worst_a < 1e-8);
}
