// Any sequence of edits leaves a network that can be answered.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "network/probe.h"
#include "network/random_network.h"
#include "network/solve.h"

using namespace network;
using network_test::Random;
using units::Ohms;

TEST_CASE("twenty edits in a row, any of them, never leave the network without an answer") {
  Random random(4242);
  const int runs = network_test::run_count(3000);
  int steps = 0;
  for (int run = 0; run < runs; ++run) {
    const std::size_t outlets = 1 + random.below(4);
    const circuit::Circuit made = network_test::random_circuit(random, outlets);
    BranchNetwork branch = network_test::random_build(random, made);
    for (int edit = 0; edit < 20; ++edit) {
      network_test::random_fault(random, branch.netlist);
      const Solution solution = solve(branch.netlist);
      INFO("run ", run, ", edit ", edit, ": ", solution.message, ", imbalance ", solution.worst_imbalance_a);
      REQUIRE(solution.usable());
      for (const double voltage : solution.node_voltage_v) REQUIRE(std::isfinite(voltage));
      steps = std::max(steps, solution.iterations);
    }
    const auto node = [&] { return NodeId{static_cast<std::int32_t>(random.below(branch.netlist.node_count()))}; };
    const NodeId red = node();
    const Reading reading = probe(branch.netlist, red, node(), Instrument::meter_volts, made.supply.nominal);
    REQUIRE((reading.outcome == Outcome::solved || reading.outcome == Outcome::no_operating_point));
  }
  MESSAGE("seed 4242, at most ", steps, " steps");
}

TEST_CASE("edits do what they say") {
  Netlist netlist;
  const NodeId a = netlist.add_node(), b = netlist.add_node();
  const BranchId wire = netlist.add_resistance(kReference, a, Ohms(1.0));
  const BranchId other = netlist.add_resistance(kReference, b, Ohms(2.0));
  const BranchId load = netlist.add_constant_current(a, b, units::Amperes(1.0), units::Volts(1.0));
  netlist.add_series(wire, Ohms(0.5));
  CHECK(netlist.branch(wire).value == 1.5);
  netlist.swap_ends(wire, other);
  CHECK(netlist.branch(wire).to == b);
  CHECK(netlist.branch(other).to == a);
  netlist.add_series(load, Ohms(3.0));  // a new node between a and the load
  CHECK(netlist.node_count() == 4);
  CHECK(netlist.branches().size() == 4);
  CHECK(netlist.branch(load).from == NodeId{3});
  CHECK(netlist.branches().back().value == 3.0);
  netlist.open(load);
  netlist.add_series(load, Ohms(3.0));
  CHECK(netlist.branch(load).law == Law::open);
  const BranchId bridge = netlist.bridge(a, b, Ohms(1e-4));
  CHECK(netlist.branch(bridge).law == Law::resistance);
}
