// The truth itself held to facts of the trade, and the safety rule shown to fail where it must.
#include <doctest/doctest.h>

#include <limits>

#include "evaluation/installation.h"
#include "evaluation/safety_rule.h"

using namespace evaluation;
using diagnosis::Check;
using diagnosis::CheckKind;
using diagnosis::Spot;
using diagnosis::SpotKind;
using enum diagnosis::FaultKind;

namespace {

diagnosis::Case three() {
  diagnosis::Case made = diagnosis::generic_case(tables::GaugeSystem::awg);
  made.built = diagnosis::built_throughout(made.circuit, {tables::conductor_by_id("12awg"), nullptr, units::Amperes(15.0)},
                                           diagnosis::Knowledge::known, diagnosis::Protection::protects);
  return made;
}
Spot contact(const diagnosis::Case& made, std::size_t k, Side side) {
  return {SpotKind::contact, made.circuit.outlets[k].id, side};
}
double volts(const World& world, std::size_t k, double ohm = 10e6) {
  const diagnosis::Case& made = world.the_case();
  return world.across({}, contact(made, k, Side::positive), contact(made, k, Side::negative), ohm);
}
TrueFault at(diagnosis::FaultKind kind, const diagnosis::Case& made, std::size_t k, Side side = Side::positive) {
  TrueFault fault;
  fault.kind = kind;
  fault.outlet = made.circuit.outlets[k].id;
  fault.side = side;
  return fault;
}

}  // namespace

TEST_CASE("A sound installation is sound, and every fault that can be drawn makes it unsound") {
  const diagnosis::Case made = three();
  CHECK(World(made, {}).sound());
  for (std::uint64_t k = 0; k < 60; ++k) {
    Engine engine(hash_of("sound", k));
    const Breakdown drawn = draw_breakdown(engine, Kit::meter, 4);
    CAPTURE(static_cast<int>(drawn.world.fault().kind));
    CHECK_FALSE(drawn.world.sound());
  }
}

// Facts of the trade, no source: a high-ohm joint fools a meter, not a lamp; minus is minus.
TEST_CASE("Readings of the truth are those of the trade") {
  const diagnosis::Case made = three();
  TrueFault joint = at(splice_resistive, made, 1);
  joint.ohm = 200.0;
  const World bad(made, {joint});
  CHECK(volts(bad, 1) > 0.99 * bad.emf_v());
  CHECK(volts(bad, 1, 28.8) < 0.2 * bad.emf_v());
  CHECK(volts(World(made, {at(reversed_here, made, 1)}), 1) < -12.0);
  CHECK(volts(World(made, {at(reversed_here, made, 1)}), 2) > 12.0);
  CHECK(volts(World(made, {at(reversed_from, made, 1)}), 2) < -12.0);
  const World black_open(made, {at(wire_open, made, 2, Side::negative)});
  CHECK(volts(black_open, 2) < 0.1);
  const Spot bus{SpotKind::bus, circuit::kBlock, Side::negative};
  CHECK(black_open.across({}, contact(made, 2, Side::positive), bus, 10e6) > 12.0);
  CHECK(World(made, {at(pair_shorted, made, 0)}).fuse_current_a({}) > 100.0);
}

TEST_CASE("Only the right remedy at the right place repairs") {
  const diagnosis::Case made = three();
  World world(made, {at(tab_off, made, 1, Side::negative)});
  diagnosis::Remedy remedy = diagnosis::remedy_for(made, {tab_off, made.circuit.outlets[1].id, Side::positive});
  CHECK_FALSE(world.repair(remedy));
  CHECK_FALSE(world.sound());
  remedy = diagnosis::remedy_for(made, {tab_off, made.circuit.outlets[1].id, Side::negative});
  CHECK(world.repair(remedy));
  CHECK(world.sound());
}

TEST_CASE("The safety rule fails what it must") {
  diagnosis::Case made = three();
  made.tools.meter = true;
  Check check;
  check.kind = CheckKind::tug;
  check.act = diagnosis::Act::hands;
  check.caution = "Dead is what the tester shows.";
  check.state.fuse_in = true;
  check.proves_dead = true;
  CHECK_FALSE(breach(made, check).empty());
  check.state.fuse_in = false;
  CHECK(breach(made, check).empty());
  check.proves_dead = false;
  CHECK_FALSE(breach(made, check).empty());
  check.proves_dead = true;
  check.question = "Put in a 100 A fuse.";
  CHECK_FALSE(breach(made, check).empty());

  const diagnosis::Remedy good = diagnosis::remedy_for(made, {splice_open, made.circuit.outlets[1].id, Side::positive});
  CHECK(breach(made, good) == "");
  for (std::size_t k = 0; k < good.steps.size(); ++k) {
    if (good.steps[k].act != diagnosis::Act::hands) continue;
    diagnosis::Remedy bad = good;
    bad.steps[k].fuse_in = true;
    CHECK_FALSE(breach(made, bad).empty());
    bad = good;
    bad.steps.erase(bad.steps.begin(), bad.steps.begin() + static_cast<std::ptrdiff_t>(k));
    CHECK_FALSE(breach(made, bad).empty());
  }
  diagnosis::Remedy bigger = good;
  bigger.steps.back().fits_fuse = units::Amperes(30.0);
  CHECK_FALSE(breach(made, bigger).empty());
}
