// What anyone who has traced a dead outlet knows. Common practice, no source.
#include <doctest/doctest.h>

#include <cmath>

#include "network/branch_network.h"
#include "network/probe.h"
#include "network/radial.h"
#include "network/random_network.h"
#include "network/solve.h"

using namespace network;
using namespace units::literals;
using circuit::OutletId;
using doctest::Approx;

namespace {

constexpr OutletId kFirst{1}, kSecond{2};

circuit::Circuit two_outlets() {
  circuit::Circuit made = circuit::new_circuit(tables::GaugeSystem::awg);
  made.outlets.clear();
  for (std::uint32_t k = 0; k < 2; ++k) {
    circuit::Outlet outlet;
    outlet.id = {k + 1};
    outlet.fed_from = {k};
    outlet.run.length = 2_m;
    outlet.devices.front().load.rating = 5.0;
    made.outlets.push_back(outlet);
  }
  return made;
}

BranchNetwork laid(double loading) {
  return build(two_outlets(), {tables::conductor_by_id("12awg"), nullptr, 15_A}, {loading, loading}, BatteryState::resting);
}

Reading read(const BranchNetwork& branch, NodeId red, NodeId black, Instrument instrument) {
  const Reading reading = probe(branch.netlist, red, black, instrument, 12_V);
  REQUIRE((reading.outcome == Outcome::solved || reading.outcome == Outcome::no_operating_point));
  return reading;
}
Reading read_outlet(const BranchNetwork& branch, OutletId outlet, Instrument instrument) {
  return read(branch, branch.outlet_contact(outlet, Side::positive), branch.outlet_contact(outlet, Side::negative), instrument);
}

}  // namespace

TEST_CASE("a 20 ohm joint reads nearly full volts on a meter and far less with a lamp") {
  BranchNetwork branch = laid(0.0);
  branch.netlist.add_series(branch.find({Element::splice, kFirst, Side::positive})->branch, 20_ohm);
  CHECK(read_outlet(branch, kFirst, Instrument::meter_volts).voltage.number() == Approx(12.85).epsilon(1e-4));
  // 28.8 ohm behind 20 ohm: 12.85 * 28.8 / 48.8, less the few milliohms.
  CHECK(read_outlet(branch, kFirst, Instrument::lamp).voltage.number() == Approx(7.58).epsilon(0.01));
}

TEST_CASE("a 20 ohm joint leaves next to nothing with a lamp beside a load of 5 A plugged in") {
  BranchNetwork branch = laid(1.0);
  branch.netlist.add_series(branch.find({Element::splice, kFirst, Side::positive})->branch, 20_ohm);
  const Reading lamp = read_outlet(branch, kFirst, Instrument::lamp);
  CHECK(lamp.outcome == Outcome::no_operating_point);
  CHECK(lamp.voltage.number() < 0.3);
}

TEST_CASE("open black conductor: red to chassis full volts, red to black none") {
  for (const double loading : {0.0, 1.0}) {
    CAPTURE(loading);
    BranchNetwork branch = laid(loading);
    branch.netlist.open(branch.find({Element::wire, kFirst, Side::negative})->branch);
    for (const OutletId outlet : {kFirst, kSecond}) {
      const NodeId red = branch.outlet_contact(outlet, Side::positive);
      CHECK(read(branch, red, kReference, Instrument::meter_volts).voltage.number() == Approx(12.85).epsilon(1e-6));
      CHECK(std::abs(read_outlet(branch, outlet, Instrument::meter_volts).voltage.number()) < 1e-9);
      CHECK(std::abs(read_outlet(branch, outlet, Instrument::lamp).voltage.number()) < 1e-9);
    }
    CHECK(solve(branch.netlist).floating[static_cast<std::size_t>(branch.outlet_contact(kSecond, Side::negative).index)] ==
          (loading == 0.0));  // through a load there is a path
  }
}

TEST_CASE("with a load across an open black conductor the black wire itself stands at battery volts") {
  BranchNetwork branch = laid(1.0);
  branch.netlist.open(branch.find({Element::wire, kFirst, Side::negative})->branch);
  const NodeId black = branch.outlet_contact(kFirst, Side::negative);
  CHECK(read(branch, black, kReference, Instrument::meter_volts).voltage.number() == Approx(12.85).epsilon(1e-4));
}

TEST_CASE("a reversed outlet reads minus, and so does everything past a reversed splice") {
  BranchNetwork here = laid(0.0);
  here.netlist.swap_ends(here.find({Element::terminal, kFirst, Side::positive})->branch,
                         here.find({Element::terminal, kFirst, Side::negative})->branch);
  CHECK(read_outlet(here, kFirst, Instrument::meter_volts).voltage.number() == Approx(-12.85).epsilon(1e-6));
  CHECK(read_outlet(here, kSecond, Instrument::meter_volts).voltage.number() == Approx(12.85).epsilon(1e-6));
  BranchNetwork from_here = laid(0.0);
  from_here.netlist.swap_ends(from_here.find({Element::splice, kFirst, Side::positive})->branch,
                              from_here.find({Element::splice, kFirst, Side::negative})->branch);
  for (const OutletId outlet : {kFirst, kSecond}) {
    CHECK(read_outlet(from_here, outlet, Instrument::meter_volts).voltage.number() == Approx(-12.85).epsilon(1e-6));
  }
}

TEST_CASE("fuse out: nothing anywhere past it, full volts before it") {
  BranchNetwork branch = laid(1.0);
  branch.netlist.open(branch.find({Element::fuse})->branch);
  CHECK(read_outlet(branch, kFirst, Instrument::meter_volts).voltage.number() == Approx(0.0));
  CHECK(read(branch, branch.find({Element::fuse_contact})->away, kReference, Instrument::meter_volts).voltage.number() ==
        Approx(12.85).epsilon(1e-6));
}

TEST_CASE("a shorted pair takes hundreds of amperes, and the outlets go dark") {
  BranchNetwork branch = laid(1.0);
  const BranchNetwork::Named& red = *branch.find({Element::wire, kFirst, Side::positive});
  const BranchNetwork::Named& black = *branch.find({Element::wire, kFirst, Side::negative});
  branch.netlist.bridge(red.away, black.away, 1e-4_ohm);
  const Solution solution = solve(branch.netlist);
  CHECK(solution.outcome == Outcome::no_operating_point);
  CHECK(solution.through(branch.find({Element::fuse})->branch).number() > 200.0);
  CHECK(read_outlet(branch, kSecond, Instrument::meter_volts).voltage.number() < 0.1);
}

TEST_CASE("a lamp for 24 V has four times the resistance of one for 12 V") {
  CHECK(lamp_hot_resistance(12_V).number() == Approx(28.8));
  CHECK(lamp_hot_resistance(24_V).number() == Approx(115.2));
}

TEST_CASE("every element is there once on each side it has") {
  const BranchNetwork branch = laid(1.0);
  for (const Side side : {Side::positive, Side::negative}) {
    for (const Element both : {Element::feeder, Element::bus, Element::clamp}) CHECK(branch.find({both, circuit::kBlock, side}));
    for (const Element both : {Element::wire, Element::splice, Element::tail, Element::terminal, Element::outlet_inside}) {
      CHECK(branch.find({both, kSecond, side}) != nullptr);
    }
  }
  for (const Element one : {Element::battery, Element::main_fuse, Element::fuse_contact, Element::fuse}) CHECK(branch.find({one}));
  CHECK(branch.find({Element::device, kFirst}) != nullptr);
  CHECK(branch.find({Element::wire, OutletId{9}}) == nullptr);
  CHECK(branch.elements.size() == 5 + 3 * 2 - 1 + 2 * 11);
  for (std::size_t a = 0; a < branch.elements.size(); ++a) CHECK(branch.find(branch.elements[a].place) == &branch.elements[a]);
}

TEST_CASE("two conductors of 10 m of 2.5 mm2 at 20 degC are 20 times the standard's 7.98 ohm/km") {
  // IEC 60228 class 5, 2.5 mm2: at most 7.98 ohm/km at 20 degC (from memory).
  circuit::Circuit made = two_outlets();
  made.wiring.wire_temperature = 20_C;
  made.outlets[0].run.length = 10_m;
  const Tree tree =
      tree_of(made, {tables::conductor_by_id("2.5mm2"), nullptr, 15_A}, BatteryState::resting);
  CHECK(tree.points[0].wire_ohm == Approx(0.1596).epsilon(1e-6));
  CHECK(Radial(made, {tables::conductor_by_id("2.5mm2"), nullptr, 15_A}, BatteryState::resting).loop_to(0).number() ==
        Approx(tree.source_ohm + tree.supply_ohm + tree.points[0].path_ohm).epsilon(1e-14));
}

TEST_CASE("battery states: low is below resting, charging above; series batteries add") {
  circuit::Circuit made = two_outlets();
  const auto emf = [&](BatteryState state) {
    return tree_of(made, {tables::conductor_by_id("10awg"), nullptr, 15_A}, state).emf_v;
  };
  CHECK(emf(BatteryState::low) < emf(BatteryState::resting));
  CHECK(emf(BatteryState::charging) > emf(BatteryState::resting));
  const double at_12 = emf(BatteryState::resting);
  made.supply.nominal = 24_V;
  CHECK(emf(BatteryState::resting) == Approx(2.0 * at_12));
  made.supply.resting = 25.1_V;
  CHECK(emf(BatteryState::resting) == 25.1);
}
