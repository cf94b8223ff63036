// Random faulted circuits against ngspice (package ngspice, version 39 when written), a general
// circuit simulator that shares nothing with this core. Loads are behavioural sources with the
// fold law of netlist.h. Where the two differ by more than 1e-5 V, 113-bit arithmetic decides,
// and it may never decide against us.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "network/ngspice.h"
#include "network/quad_referee.h"
#include "network/random_network.h"
#include "network/solve.h"

using namespace network;
using network_test::Random;

namespace {

using network_test::Printed;
using network_test::with_number;

std::string name(NodeId node) {
  return node == kReference ? std::string("0") : with_number("n", static_cast<std::size_t>(node.index));
}

std::string deck_of(const Netlist& netlist) {
  std::ostringstream out;
  out.precision(17);
  out << "* random circuit\n";
  const auto& branches = netlist.branches();
  for (std::size_t b = 0; b < branches.size(); ++b) {
    const Branch& branch = branches[b];
    const std::string from = name(branch.from), to = name(branch.to);
    if (branch.law == Law::open || from == to) continue;
    const std::string v = std::string("v(").append(from).append(",").append(to).append(")");
    switch (branch.law) {
      case Law::resistance: out << "R" << b << " " << from << " " << to << " " << branch.value << "\n"; break;
      case Law::battery:
        out << "V" << b << " e" << b << " " << from << " " << branch.emf_v << "\n"
            << "R" << b << " e" << b << " " << to << " " << branch.value << "\n";
        break;
      case Law::constant_current:
        out << "B" << b << " " << from << " " << to << " I = " << v << " >= " << branch.fold_v << " ? " << branch.value
            << " : (" << v << " > 0 ? " << v << "*" << branch.value / branch.fold_v << " : 0)\n";
        break;
      case Law::constant_power:
        out << "B" << b << " " << from << " " << to << " I = " << v << " >= " << branch.fold_v << " ? " << branch.value
            << "/max(" << v << "," << branch.fold_v << ") : (" << v << " > 0 ? " << v << "*"
            << branch.value / (branch.fold_v * branch.fold_v) << " : 0)\n";
        break;
      case Law::open: break;
    }
  }
  const std::vector<bool> held = network_test::held_nodes(netlist);
  for (std::size_t n = 1; n < held.size(); ++n) {
    if (held[n]) out << "Vheld" << n << " n" << n << " 0 0\n";
  }
  return out.str();
}

double apart_v(const Solution& solution, const std::vector<double>& other) {
  double apart = 0.0;
  for (std::size_t n = 0; n < other.size(); ++n)
    apart = std::max(apart, std::abs(solution.node_voltage_v[n] - other[n]));
  return apart;
}

double sum_of_load_voltages(const Netlist& netlist, const std::vector<double>& voltage_v) {
  double sum = 0.0;
  for (const Branch& branch : netlist.branches()) {
    if (branch.law != Law::constant_current && branch.law != Law::constant_power) continue;
    sum +=
        voltage_v[static_cast<std::size_t>(branch.from.index)] - voltage_v[static_cast<std::size_t>(branch.to.index)];
  }
  return sum;
}

Netlist random_case(Random& random, std::size_t k) {
  Netlist netlist;
  if (k % 2 == 0) {
    const std::size_t outlets = 1 + random.below(6);
    const circuit::Circuit made = network_test::random_circuit(random, outlets);
    netlist = network_test::random_build(random, made).netlist;
  } else {
    netlist = network_test::random_tangle(random, 4 + random.below(20));
  }
  for (std::size_t faults = random.below(4); faults > 0; --faults) network_test::random_fault(random, netlist);
  return netlist;
}

}  // namespace

TEST_CASE("random faulted circuits agree with ngspice within 1e-5 V, or 113-bit arithmetic sides with us") {
  Random random(515);
  const auto circuits = static_cast<std::size_t>(std::max(network_test::run_count(1500), 200));
  std::vector<Netlist> netlists;
  for (std::size_t k = 0; k < circuits; ++k) netlists.push_back(random_case(random, k));
  std::vector<std::string> decks;
  for (const Netlist& netlist : netlists) decks.push_back(deck_of(netlist));
  const std::vector<Printed> printed = network_test::run_ngspice(decks);

  int agree = 0, unanswered = 0, undecided = 0, other_digits = 0, other_point = 0;
  for (std::size_t k = 0; k < circuits; ++k) {
    INFO("circuit ", k);
    const Solution ours = solve(netlists[k]);
    REQUIRE(ours.usable());
    std::vector<double> theirs(1, 0.0);
    const std::vector<bool> held = network_test::held_nodes(netlists[k]);
    bool answered = true;
    for (std::size_t n = 1; n < netlists[k].node_count(); ++n) {
      const auto found = printed[k].find(with_number("n", n));
      if (found == printed[k].end()) answered = answered && held[n];  // held alone: not in the deck
      theirs.push_back(found == printed[k].end() ? 0.0 : found->second);
    }
    if (answered && apart_v(ours, theirs) <= 1e-5) {
      ++agree;
      continue;
    }
    const network_test::Verdict on_ours = network_test::judge(netlists[k], ours.node_voltage_v, held);
    INFO("apart ", apart_v(ours, theirs), " V, ours is off by ", on_ours.moved_v, " V");
    CHECK(on_ours.settled);
    CHECK(on_ours.moved_v <= 1e-9);
    if (!answered) {
      ++unanswered;
      continue;
    }
    const network_test::Verdict on_theirs = network_test::judge(netlists[k], theirs, held);
    if (!on_theirs.settled) {
      ++undecided;
    } else if (on_theirs.moved_v > 1e-5) {
      ++other_digits;  // theirs moves away from where it stood: no operating point to five places
    } else {
      ++other_point;  // two true points: ours must be the one with the loads better fed
      CHECK(sum_of_load_voltages(netlists[k], ours.node_voltage_v) >= sum_of_load_voltages(netlists[k], theirs) - 1e-6);
    }
  }
  MESSAGE("seed 515, circuits ", circuits, ": within 1e-5 V ", agree, ", ngspice gave no answer ", unanswered,
          ", lost digits there ", other_digits, ", settled on a lower or undecided point ", other_point,
          ", not to be settled from its answer ", undecided);
  CHECK(agree >= static_cast<int>(circuits) * 8 / 10);
}
