// Whole vehicles against ngspice: several circuits at once on one block, chassis return, cascades of fuses and
// sub-blocks, a charger or alternator beside the battery. ngspice solves the vehicle as one network with every load's
// own law; the core solves each circuit with what the others draw beside it. Each device's volts and each fuse's
// amperes are compared.
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "network/ngspice.h"
#include "network/random_network.h"
#include "network/solve.h"
#include "network/vehicle_deck.h"
#include "vehicle/random_vehicle.h"
#include "vehicle/validate.h"

using network::BatteryState;
using network_test::Charger;
using network_test::Printed;
using network_test::Random;
using network_test::Running;
using network_test::VehicleDeck;
using vehicle::Vehicle;

namespace {

constexpr double kSameV = 1e-5;

struct Case {
  Vehicle vehicle;
  std::vector<Running> running;
  BatteryState state = BatteryState::resting;
  Charger charger;
  VehicleDeck deck;
};

struct Counts {
  int circuits = 0, devices = 0, chassis = 0, cascades = 0, chargers = 0, crowded = 0, folded = 0, silent = 0;
  double apart_v = 0.0, apart_a = 0.0, rule_apart_v = 0.0;
};

Running running_of(const circuit::Circuit& plan, const vehicle::Block& block, Random& random) {
  Running made;
  const auto sizes = tables::conductors(plan.wiring.gauge);
  made.fitted.size = &sizes[2 + random.below(8)];
  made.fitted.tail = random.chance(0.5) ? made.fitted.size : &sizes[2 + random.below(4)];
  const auto ratings = tables::fuse_family(block.fuse_family).ratings_a;
  made.fitted.fuse = units::Amperes(ratings[random.below(ratings.size())]);
  for (std::size_t i = network::load_slots(plan).size(); i > 0; --i)
    made.loading.push_back(random.chance(0.8) ? 1.0 : 0.0);
  return made;
}

// As met in vehicles; more circuits on the one block, currents that the wires bring.
Vehicle crowded_vehicle(random_vehicles::Engine& engine, Random& random) {
  random_vehicles::Style style = random_vehicles::kAsMet;
  style.most_blocks = 1;
  style.most_circuits = 8;
  for (;;) {
    Vehicle made = random_vehicles::any(engine, style);
    if (made.circuits.size() < 2) continue;
    for (vehicle::PlacedCircuit& placed : made.circuits) {
      placed.plan.wiring.wire_temperature = units::Celsius(50.0);
      placed.plan.wiring.around.ambient = units::Celsius(25.0);
      placed.plan.at_most_at_once.reset();
      for (circuit::Outlet& outlet : placed.plan.outlets) {
        for (circuit::Device& device : outlet.devices) device.load.rating *= random.uniform(0.05, 0.5);
      }
    }
    if (vehicle::validate(made).empty()) return made;
  }
}

Case any_case(random_vehicles::Engine& engine, Random& random) {
  Case made;
  made.vehicle = crowded_vehicle(engine, random);
  for (const vehicle::PlacedCircuit& placed : made.vehicle.circuits)
    made.running.push_back(running_of(placed.plan, made.vehicle.blocks.front(), random));
  made.state = random.chance(0.5) ? BatteryState::resting : BatteryState::low;
  if (random.chance(0.4))
    made.charger = {made.vehicle.battery.nominal.number() * random.uniform(1.1, 1.2), random.log_uniform(0.005, 0.3)};
  made.deck = network_test::deck_of(made.vehicle, made.running, made.state, made.charger);
  return made;
}

double read(const Printed& printed, const std::string& node) {
  if (node == "0") return 0.0;
  const auto found = printed.find(node);
  REQUIRE(found != printed.end());
  return found->second;
}

// Where it found no operating point it prints constants of its own, and no node.
bool answered(const Case& one, const Printed& printed) {
  return printed.count(one.deck.fuse_ammeter.front() + "#branch") > 0;
}

double fuse_a(const Case& one, const Printed& printed, std::size_t circuit) {
  return read(printed, one.deck.fuse_ammeter[circuit] + "#branch");
}

struct Core {
  std::vector<double> device_v;
  double fuse_a = 0.0;
  bool usable = false, folded = false;
};
Core core_of(const Case& one, std::size_t index, double beside_a) {
  circuit::Circuit circuit = vehicle::circuit_of(one.vehicle, one.vehicle.circuits[index].id);
  circuit.supply.beside = units::Amperes(beside_a);
  const Running& running = one.running[index];
  network::BranchNetwork built = network::build(circuit, running.fitted, running.loading, one.state);
  if (one.charger.ohms > 0.0) {
    const auto* battery = built.find({network::Element::battery});
    REQUIRE(battery != nullptr);
    built.netlist.add_battery(network::kReference, battery->away, units::Volts(one.charger.volts),
                              units::Ohms(one.charger.ohms));
  }
  const network::Solution solved = network::solve(built.netlist);
  Core core;
  core.usable = solved.usable();
  core.folded = !solved.folded.empty();
  for (const auto& named : built.elements) {
    if (named.place.element == network::Element::device)
      core.device_v.push_back(solved.between(named.near_source, named.away).number());
    if (named.place.element == network::Element::fuse) core.fuse_a = solved.through(named.branch).number();
  }
  return core;
}

double most_apart_v(const Case& one, const Printed& printed, std::size_t index, const Core& core) {
  const auto& devices = one.deck.devices[index];
  REQUIRE(core.device_v.size() == devices.size());
  double apart = 0.0;
  for (std::size_t d = 0; d < devices.size(); ++d)
    apart =
        std::max(apart, std::abs(read(printed, devices[d].red) - read(printed, devices[d].black) - core.device_v[d]));
  return apart;
}

void count_kinds(const Case& one, Counts& counts) {
  counts.chargers += one.charger.ohms > 0.0 ? 1 : 0;
  counts.crowded += one.vehicle.circuits.size() >= 4 ? 1 : 0;
  for (const vehicle::PlacedCircuit& placed : one.vehicle.circuits) {
    const auto& outlets = placed.plan.outlets;
    counts.chassis += std::any_of(outlets.begin(), outlets.end(),
                                  [](const auto& o) { return o.run.back == circuit::ReturnPath::chassis; })
                          ? 1
                          : 0;
    counts.cascades += std::any_of(outlets.begin(), outlets.end(),
                                   [](const auto& o) {
                                     return std::any_of(o.run.in_line.begin(), o.run.in_line.end(),
                                                        circuit::is_overcurrent_protection);
                                   })
                           ? 1
                           : 0;
  }
}

void compare(const Case& one, const Printed& printed, Counts& counts) {
  if (!answered(one, printed)) {
    ++counts.silent;
    return;
  }
  count_kinds(one, counts);
  double all_a = 0.0;
  for (std::size_t c = 0; c < one.running.size(); ++c) all_a += fuse_a(one, printed, c);
  for (std::size_t c = 0; c < one.running.size(); ++c) {
    INFO("circuit ", c, " of ", one.running.size());
    // What the others draw there is given to the core: all that is left is the network itself.
    const Core core = core_of(one, c, all_a - fuse_a(one, printed, c));
    REQUIRE(core.usable);
    const double apart = most_apart_v(one, printed, c, core);
    // A power load below its fold has two points; each solver may stand at its own.
    if (core.folded && apart > kSameV) {
      ++counts.folded;
      continue;
    }
    ++counts.circuits;
    counts.devices += static_cast<int>(core.device_v.size());
    CHECK(apart <= kSameV);
    CHECK(std::abs(core.fuse_a - fuse_a(one, printed, c)) <= 1e-4);
    counts.apart_v = std::max(counts.apart_v, apart);
    counts.apart_a = std::max(counts.apart_a, std::abs(core.fuse_a - fuse_a(one, printed, c)));
  }
}

bool all_steady(const Vehicle& vehicle) {
  for (const vehicle::PlacedCircuit& placed : vehicle.circuits)
    for (const circuit::Outlet& outlet : placed.plan.outlets)
      for (const circuit::Device& device : outlet.devices)
        if (device.load.kind != circuit::LoadKind::constant_current) return false;
  return true;
}

}  // namespace

TEST_CASE("random whole vehicles agree with ngspice within 1e-5 V at every device") {
  random_vehicles::Engine engine(818);
  Random random(818);
  std::vector<Case> cases;
  const auto vehicles = static_cast<std::size_t>(std::max(network_test::run_count(400), 60));
  std::vector<std::string> decks;
  while (cases.size() < vehicles) {
    cases.push_back(any_case(engine, random));
    decks.push_back(cases.back().deck.text);
  }
  const std::vector<Printed> printed = network_test::run_ngspice(decks);
  Counts counts;
  for (std::size_t k = 0; k < cases.size(); ++k) {
    INFO("vehicle ", k);
    compare(cases[k], printed[k], counts);
  }
  MESSAGE("seed 818, vehicles ", vehicles, " (no answer from ngspice ", counts.silent, "), circuits ", counts.circuits,
          ", devices ", counts.devices, ": most apart ", counts.apart_v, " V, ", counts.apart_a, " A; with a charger ",
          counts.chargers, ", four circuits or more ", counts.crowded, ", chassis return ", counts.chassis,
          ", fuses in the line ", counts.cascades, ", set aside below the fold ", counts.folded);
  CHECK(counts.circuits >= static_cast<int>(vehicles));
  CHECK(counts.silent * 20 <= static_cast<int>(vehicles));
  CHECK(counts.folded * 20 <= counts.circuits);
  for (const int kind : {counts.chargers, counts.crowded, counts.chassis, counts.cascades}) CHECK(kind >= 5);
}

TEST_CASE("steady loads: what the vehicle tells a circuit of its neighbours is what ngspice finds") {
  random_vehicles::Engine engine(819);
  Random random(819);
  std::vector<Case> cases;
  std::vector<std::string> decks;
  while (cases.size() < 40) {
    Case one = any_case(engine, random);
    for (vehicle::PlacedCircuit& placed : one.vehicle.circuits)
      for (circuit::Outlet& outlet : placed.plan.outlets)
        for (circuit::Device& device : outlet.devices) device.load.kind = circuit::LoadKind::constant_current;
    one.vehicle.blocks.front().at_most_at_once.reset();
    for (Running& running : one.running) std::fill(running.loading.begin(), running.loading.end(), 1.0);
    if (!all_steady(one.vehicle)) continue;
    one.deck = network_test::deck_of(one.vehicle, one.running, one.state, one.charger);
    cases.push_back(std::move(one));
    decks.push_back(cases.back().deck.text);
  }
  const std::vector<Printed> printed = network_test::run_ngspice(decks);
  int compared = 0;
  for (std::size_t k = 0; k < cases.size(); ++k) {
    if (!answered(cases[k], printed[k])) continue;
    for (std::size_t c = 0; c < cases[k].running.size(); ++c) {
      INFO("vehicle ", k, ", circuit ", c);
      const auto circuit = vehicle::circuit_of(cases[k].vehicle, cases[k].vehicle.circuits[c].id);
      const Core core = core_of(cases[k], c, circuit.supply.beside.number());
      if (core.folded) continue;
      double all_a = 0.0;
      for (std::size_t other = 0; other < cases[k].running.size(); ++other)
        all_a += other == c ? 0.0 : fuse_a(cases[k], printed[k], other);
      if (std::abs(all_a - circuit.supply.beside.number()) > 1e-3) continue;  // a neighbour could not run
      ++compared;
      CHECK(most_apart_v(cases[k], printed[k], c, core) <= kSameV);
    }
  }
  MESSAGE("seed 819: ", compared, " circuits");
  CHECK(compared >= 60);
}
