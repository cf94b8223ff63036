// Networks worked by hand, what is refused, and the high-voltage operating point.
#include "network/solve.h"

#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "network/random_network.h"

using namespace network;
using namespace units::literals;
using doctest::Approx;
using units::Amperes;
using units::Ohms;
using units::Volts;
using units::Watts;

namespace {

struct OneLoad {
  Netlist netlist;
  NodeId post;
  BranchId battery, load;
};

OneLoad one_power_load(double emf_v, double ohm, double watts, double fold_v) {
  OneLoad made;
  made.post = made.netlist.add_node();
  made.battery = made.netlist.add_battery(kReference, made.post, Volts(emf_v), Ohms(ohm));
  made.load = made.netlist.add_constant_power(made.post, kReference, Watts(watts), Volts(fold_v));
  return made;
}

}  // namespace

TEST_CASE("constant power behind a resistance: the operating point and where it ends") {
  // 12 V behind 0.12 ohm: 0.12 I^2 - 12 I + P = 0. P = 60 W: I = (12 - sqrt(144 - 28.8)) / 0.24
  // = 5.27864 A at 11.36656 V. None above E^2 / 4R = 300 W.
  const OneLoad at_60 = one_power_load(12.0, 0.12, 60.0, 3.0);
  const Solution solution = solve(at_60.netlist);
  CHECK(solution.outcome == Outcome::solved);
  CHECK(solution.through(at_60.load).number() == Approx(5.27864).epsilon(1e-6));
  CHECK(solution.through(at_60.battery).number() == Approx(5.27864).epsilon(1e-6));
  CHECK(solution.between(at_60.post, kReference).number() == Approx(11.366563).epsilon(1e-7));

  CHECK(solve(one_power_load(12.0, 0.12, 299.0, 3.0).netlist).outcome == Outcome::solved);
  const OneLoad at_301 = one_power_load(12.0, 0.12, 301.0, 3.0);
  const Solution folded = solve(at_301.netlist);
  CHECK(folded.outcome == Outcome::no_operating_point);
  REQUIRE(folded.folded.size() == 1);
  CHECK(folded.folded[0] == at_301.load);
  // Below the fold it is a resistance of 9 / 301 ohm: 12 V * 0.0299003 / 0.1499003.
  CHECK(folded.between(at_301.post, kReference).number() == Approx(2.393618).epsilon(1e-6));
}

TEST_CASE("constant current: full above its fold, in proportion below, none reversed") {
  Netlist netlist;
  const NodeId post = netlist.add_node(), far = netlist.add_node();
  netlist.add_battery(kReference, post, 12_V, 0.1_ohm);
  const BranchId wire = netlist.add_resistance(post, far, 0.5_ohm);
  const BranchId load = netlist.add_constant_current(far, kReference, 10_A, 3_V);
  Solution solution = solve(netlist);
  CHECK(solution.outcome == Outcome::solved);
  CHECK(solution.between(far, kReference).number() == Approx(6.0));   // 12 V - 10 A * 0.6 ohm
  netlist.add_series(wire, 1.0_ohm);                                   // 10 A would need 16 V
  solution = solve(netlist);
  CHECK(solution.outcome == Outcome::no_operating_point);
  CHECK(solution.between(far, kReference).number() == Approx(12.0 * 0.3 / 1.9));  // a 0.3 ohm resistance
  CHECK(solution.through(load).number() == Approx(12.0 / 1.9));
  Netlist reversed;
  const NodeId plus = reversed.add_node();
  reversed.add_battery(kReference, plus, 12_V, 0.1_ohm);
  const BranchId backwards = reversed.add_constant_current(kReference, plus, 10_A, 3_V);
  solution = solve(reversed);
  CHECK(solution.usable());
  CHECK(solution.through(backwards).number() == 0.0);
  CHECK(solution.between(plus, kReference).number() == Approx(12.0));
}

TEST_CASE("two batteries in parallel share by hand") {
  // 12.8 V behind 10 mohm and 12.4 V behind 30 mohm into 1 ohm (Millman's theorem):
  // (1280 + 413.333) / (100 + 33.333 + 1) = 12.605459 V.
  Netlist netlist;
  const NodeId post = netlist.add_node();
  const BranchId strong = netlist.add_battery(kReference, post, 12.8_V, 0.010_ohm);
  const BranchId weak = netlist.add_battery(kReference, post, 12.4_V, 0.030_ohm);
  netlist.add_resistance(post, kReference, 1_ohm);
  const Solution solution = solve(netlist);
  CHECK(solution.between(post, kReference).number() == Approx(12.605459).epsilon(1e-7));
  CHECK(solution.through(strong).number() == Approx(19.4541).epsilon(1e-5));
  CHECK(solution.through(weak).number() == Approx(-6.84864).epsilon(1e-5));  // it is being charged
}

TEST_CASE("Wheatstone bridge: balanced, no current across") {
  Netlist netlist;
  const NodeId top = netlist.add_node(), left = netlist.add_node(), right = netlist.add_node();
  netlist.add_battery(kReference, top, 10_V, 1_ohm);
  netlist.add_resistance(top, left, 100_ohm);
  netlist.add_resistance(left, kReference, 200_ohm);
  netlist.add_resistance(top, right, 10_ohm);
  netlist.add_resistance(right, kReference, 20_ohm);
  const BranchId across = netlist.add_resistance(left, right, 5_ohm);
  CHECK(std::abs(solve(netlist).through(across).number()) < 1e-14);
}

TEST_CASE("a floating part with its own battery stands at 0 somewhere and says that it floats") {
  Netlist netlist;
  const NodeId a = netlist.add_node(), b = netlist.add_node(), alone = netlist.add_node();
  netlist.add_battery(a, b, 12_V, 0.01_ohm);
  const BranchId lamp = netlist.add_resistance(b, a, 1.99_ohm);
  const Solution solution = solve(netlist);
  CHECK(solution.outcome == Outcome::solved);
  CHECK(solution.through(lamp).number() == Approx(6.0));
  CHECK(solution.floating == std::vector<bool>{false, true, true, true});
  CHECK((solution.between(a, kReference).number() == 0.0 || solution.between(b, kReference).number() == 0.0));
  CHECK(solution.between(alone, kReference).number() == 0.0);
}

TEST_CASE("a bolted part behind a meter keeps its digits") {
  // 12 V feeds a lump of 1e-4 ohm joints through 10 Mohm; nothing else touches the lump, so all of
  // it stands at 12 V. A factorisation that subtracts loses nine of its digits here.
  Netlist netlist;
  const NodeId post = netlist.add_node();
  netlist.add_battery(kReference, post, 12_V, 0.005_ohm);
  std::vector<NodeId> lump{netlist.add_node()};
  netlist.bridge(post, lump[0], 1e7_ohm);
  for (int k = 0; k < 30; ++k) {
    lump.push_back(netlist.add_node());
    netlist.bridge(lump[lump.size() - 2], lump.back(), 1e-4_ohm);
    netlist.bridge(lump[lump.size() / 3], lump.back(), 1e-4_ohm);
  }
  netlist.add_battery(lump[3], lump[20], 12_V, 0.005_ohm);  // its own battery, shorted: thousands of amperes
  const Solution solution = solve(netlist);
  CHECK(solution.outcome == Outcome::solved);
  CHECK(std::abs(solution.between(post, lump[0]).number()) < 1e-12);
}

TEST_CASE("values out of range are refused by name") {
  const double nan = std::numeric_limits<double>::quiet_NaN(), inf = std::numeric_limits<double>::infinity();
  const auto refused = [](auto&& edit) {
    Netlist netlist;
    const NodeId post = netlist.add_node();
    netlist.add_battery(kReference, post, 12_V, 0.01_ohm);
    edit(netlist, post);
    const Solution solution = solve(netlist);
    return solution.outcome == Outcome::invalid && solution.message.find("Branch 1") == 0 && !solution.usable();
  };
  for (const double ohm : {0.0, -1.0, 9e-6, 1e13, nan, inf}) {
    CAPTURE(ohm);
    CHECK(refused([&](Netlist& n, NodeId post) { n.add_resistance(post, kReference, Ohms(ohm)); }));
    CHECK(refused([&](Netlist& n, NodeId post) { n.add_battery(kReference, post, 12_V, Ohms(ohm)); }));
  }
  for (const double bad : {-1.0, 1e7, nan, inf}) {
    CAPTURE(bad);
    CHECK(refused([&](Netlist& n, NodeId post) { n.add_constant_current(post, kReference, Amperes(bad), 3_V); }));
    CHECK(refused([&](Netlist& n, NodeId post) { n.add_constant_power(post, kReference, Watts(bad), 3_V); }));
  }
  for (const double fold : {0.0, -3.0, nan}) {
    CHECK(refused([&](Netlist& n, NodeId post) { n.add_constant_power(post, kReference, 10_W, Volts(fold)); }));
  }
  CHECK(refused([&](Netlist& n, NodeId post) { n.add_battery(kReference, post, Volts(nan), 1_ohm); }));
  CHECK(refused([&](Netlist& n, NodeId post) { n.add_resistance(post, NodeId{7}, 1_ohm); }));
  CHECK(refused([&](Netlist& n, NodeId post) { n.add_resistance(post, NodeId{-1}, 1_ohm); }));
  CHECK(solve(Netlist{}).outcome == Outcome::solved);
  CHECK(Solution{}.outcome == Outcome::invalid);
}

TEST_CASE("constant power agrees with bisection, an independent way, and is the upper point") {
  // Behind E and R the load must carry P / v = (E - v) / R. Above v = E / 2 the left side times v less
  // the right one falls to zero once, so halving finds it.
  network_test::Random random(77);
  const int runs = network_test::run_count(5000);
  int feasible = 0;
  for (int run = 0; run < runs; ++run) {
    const double emf = random.uniform(9.0, 58.0), ohm = random.log_uniform(1e-3, 10.0);
    const double nose_w = emf * emf / (4.0 * ohm);
    const double watts = nose_w * random.uniform(0.01, 1.2);
    const double fold = emf * random.uniform(0.1, 0.5);
    const OneLoad made = one_power_load(emf, ohm, watts, fold);
    const Solution solution = solve(made.netlist);
    REQUIRE(solution.usable());
    CAPTURE(watts / nose_w);
    if (watts > nose_w * (1.0 + 1e-9)) {
      REQUIRE(solution.outcome == Outcome::no_operating_point);
      continue;
    }
    double low = emf / 2.0, high = emf;
    for (int halving = 0; halving < 200; ++halving) {
      const double middle = 0.5 * (low + high);
      (middle * (emf - middle) / ohm >= watts ? low : high) = middle;
    }
    ++feasible;
    REQUIRE(solution.outcome == Outcome::solved);
    // Near the nose the voltage goes with the root of the power's last digit.
    const double allowed = 1e-11 * emf / std::max(1e-5, std::sqrt(1.0 - watts / nose_w));
    REQUIRE(std::abs(solution.between(made.post, kReference).number() - low) < allowed);
  }
  CHECK(feasible > runs / 2);
}
