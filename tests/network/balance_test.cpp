// Laws of nature on many random networks: currents balance, branches keep their laws, power in
// is power out. Checked from the netlist's own words, not with the solver's code.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "network/random_network.h"
#include "network/solve.h"

using namespace network;
using network_test::Random;

namespace {

double law_current(const Branch& branch, double voltage_v) {
  const double folded = branch.law == Law::constant_power ? branch.value / branch.fold_v / branch.fold_v
                                                          : branch.value / branch.fold_v;
  switch (branch.law) {
    case Law::resistance: return voltage_v / branch.value;
    case Law::battery: return (voltage_v + branch.emf_v) / branch.value;
    case Law::constant_current:
      return voltage_v <= 0.0 ? 0.0 : voltage_v < branch.fold_v ? folded * voltage_v : branch.value;
    case Law::constant_power:
      return voltage_v <= 0.0 ? 0.0 : voltage_v < branch.fold_v ? folded * voltage_v : branch.value / voltage_v;
    case Law::open: break;
  }
  return 0.0;
}

struct Worst {
  double imbalance_a = 0.0;    // Kirchhoff's current law
  double ohm = 0.0;            // a resistance's or battery's law: V below 1 ohm, A above
  double load_a = 0.0;         // a load against its law
  double power_part = 0.0;     // power in less power out, part of what turns over
};

void look_at(const Netlist& netlist, const Solution& solution, Worst& worst) {
  std::vector<double> into(netlist.node_count());
  double given_w = 0.0, taken_w = 0.0, turnover_w = 1e-3;
  for (std::size_t b = 0; b < netlist.branches().size(); ++b) {
    const Branch& branch = netlist.branches()[b];
    const double current = solution.branch_current_a[b];
    const double voltage = solution.between(branch.from, branch.to).number();
    into[static_cast<std::size_t>(branch.from.index)] -= current;
    into[static_cast<std::size_t>(branch.to.index)] += current;
    const bool resists = branch.law == Law::resistance || branch.law == Law::battery;
    if (resists) {
      const double off_v = std::abs(voltage + branch.emf_v - current * branch.value);
      worst.ohm = std::max(worst.ohm, off_v / std::max(1.0, branch.value));
      given_w += branch.emf_v * current;
      taken_w += current * current * branch.value;
      turnover_w += std::abs(branch.emf_v * current);
    } else {
      worst.load_a = std::max(worst.load_a, std::abs(current - law_current(branch, voltage)));
      taken_w += voltage * current;
    }
  }
  for (const double sum : into) worst.imbalance_a = std::max(worst.imbalance_a, std::abs(sum));
  worst.power_part = std::max(worst.power_part, std::abs(given_w - taken_w) / turnover_w);
}

}  // namespace

TEST_CASE("currents balance below 1e-9 A on 100,000 random faulted networks") {
  Random random(60601);
  const int runs = network_test::run_count(100000);
  Worst worst;
  int folded = 0, floating = 0, most_steps = 0;
  for (int run = 0; run < runs; ++run) {
    Netlist netlist;
    if (run % 3 == 0) {
      const std::size_t outlets = 1 + random.below(5);
      const circuit::Circuit made = network_test::random_circuit(random, outlets);
      netlist = network_test::random_build(random, made).netlist;
    } else {
      netlist = network_test::random_tangle(random, 3 + random.below(18));
    }
    for (std::size_t faults = random.below(5); faults > 0; --faults) network_test::random_fault(random, netlist);
    const Solution solution = solve(netlist);
    INFO("run ", run, ": ", solution.message, " imbalance ", solution.worst_imbalance_a);
    REQUIRE(solution.usable());
    look_at(netlist, solution, worst);
    REQUIRE(worst.imbalance_a < 1e-9);
    REQUIRE(worst.ohm < 1e-11);
    REQUIRE(worst.load_a < 1e-9);
    REQUIRE(worst.power_part < 1e-9);
    folded += solution.folded.empty() ? 0 : 1;
    floating += std::count(solution.floating.begin(), solution.floating.end(), true) > 0 ? 1 : 0;
    most_steps = std::max(most_steps, solution.iterations);
  }
  MESSAGE("seed 60601, ", runs, " networks, ", folded, " with a load folded, ", floating, " with a floating part, at most ",
          most_steps, " steps; worst imbalance ", worst.imbalance_a, " A, branch law ", worst.ohm, ", load law ",
          worst.load_a, " A, power ", worst.power_part, " of the turnover");
  CHECK(folded > runs / 20);
  CHECK(floating > runs / 20);
}
