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
      worst_v = std::max(worst_v, std::abs(whole_v - tree.device_voltage_v[k]));
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

namespace {

const circuit::LoadKind kAllKinds[] = {circuit::LoadKind::constant_current, circuit::LoadKind::constant_power,
                                       circuit::LoadKind::resistive};

}  // namespace

// Not so with resistive loads: on thicker wire they take more, and what they share with the others,
// battery and feeder, then drops more.
TEST_CASE("thicker wire never drops more, and power in is power out") {
  Random random(11);
  for (int run = 0; run < run_count(2000); ++run) {
    const std::size_t outlets = 1 + random.below(8);
    circuit::Circuit made = network_test::random_circuit(random, outlets);
    const Loading loading = network_test::random_loading(random, outlets);
    const bool any_kind = random.chance(0.3);
    for (circuit::Outlet& outlet : made.outlets) {
      if (!any_kind && outlet.devices.front().load.kind == circuit::LoadKind::resistive) outlet.devices.front().load.kind = circuit::LoadKind::constant_power;
    }
    std::vector<double> thinner(outlets, 0.0);
    bool all_ran = false;
    for (const tables::Conductor& size : tables::conductors(made.wiring.gauge)) {
      const Radial radial(made, {&size, nullptr, units::Amperes(15.0)}, BatteryState::resting);
      const RadialSolution solution = radial.solve(loading);
      REQUIRE(solution.outcome != Outcome::not_converged);
      const bool runs = solution.outcome == Outcome::solved;
      REQUIRE((runs || !all_ran || any_kind));  // what ran on a thinner wire runs on this one
      double currents_a = 0.0;
      for (std::size_t k = 0; k < outlets; ++k) {
        if (all_ran && !any_kind) REQUIRE(solution.device_voltage_v[k] >= thinner[k] - 1e-12);
        currents_a += solution.load_current_a[k];
      }
      CHECK(currents_a == doctest::Approx(solution.total_current_a).epsilon(1e-10));
      // Power: what the battery's inside gives is lost in the loops or taken by the loads.
      const Tree tree = tree_of(made, {&size, nullptr, units::Amperes(15.0)}, BatteryState::resting);
      std::vector<double> through(solution.load_current_a);
      double taken_w = solution.total_current_a * solution.total_current_a * (tree.source_ohm + tree.supply_ohm);
      for (std::size_t k = outlets; k-- > 0;) {
        taken_w += solution.device_voltage_v[k] * solution.load_current_a[k] +
                   solution.load_current_a[k] * solution.load_current_a[k] * tree.points[k].tail_ohm +
                   through[k] * through[k] * tree.points[k].path_ohm;
        for (std::size_t p = 0; p < k; ++p) {
          if (made.outlets[p].id == made.outlets[k].fed_from) through[p] += through[k];
        }
      }
      CHECK(taken_w == doctest::Approx(tree.emf_v * solution.total_current_a).epsilon(1e-9));
      thinner = solution.device_voltage_v;
      all_ran = runs;
    }
  }
}

TEST_CASE("the operating point is the highest there is, found by plain repetition from above") {
  // With every load at the voltage of the last round, the next round's voltages are never higher, and
  // never pass a point where all loads run. No Newton, no matrix: shared resistance times current.
  Random random(13);
  int ran = 0, could_not = 0;
  for (int run = 0; run < run_count(3000); ++run) {
    const std::size_t outlets = 1 + random.below(6);
    circuit::Circuit made = network_test::random_circuit(random, outlets);
    for (circuit::Outlet& outlet : made.outlets) {
      outlet.devices.front().load.kind = random.chance(0.7) ? circuit::LoadKind::constant_power : circuit::LoadKind::constant_current;
      outlet.devices.front().load.rating *= random.uniform(0.5, 2.5);
    }
    const Fitted fitted{tables::conductor_by_id("16awg"), nullptr, units::Amperes(15.0)};
    const Tree tree = tree_of(made, fitted, BatteryState::resting);
    const double nominal_v = made.supply.nominal.number(), emf_v = tree.emf_v;
    std::vector<std::vector<bool>> on_path(outlets, std::vector<bool>(outlets, false));
    for (std::size_t k = 0; k < outlets; ++k) {
      for (std::size_t p = 0; p < k; ++p) {
        if (made.outlets[p].id == made.outlets[k].fed_from) on_path[k] = on_path[p];
      }
      on_path[k][k] = true;
    }
    std::vector<double> voltage(outlets, emf_v), next(outlets), current(outlets);
    bool all_run = true;
    double moved = 1.0;
    for (int round = 0; round < 20000 && all_run && moved > 1e-14; ++round) {
      for (std::size_t m = 0; m < outlets; ++m) {
        const circuit::Load& load = made.outlets[m].devices.front().load;
        const double rated_a = load.rating_in_watts ? load.rating / nominal_v : load.rating;
        current[m] = load.kind == circuit::LoadKind::constant_power ? rated_a * nominal_v / voltage[m] : rated_a;
      }
      moved = 0.0;
      for (std::size_t k = 0; k < outlets; ++k) {
        next[k] = emf_v - tree.points[k].tail_ohm * current[k];
        for (std::size_t m = 0; m < outlets; ++m) {
          double shared = (tree.source_ohm + tree.supply_ohm);
          for (std::size_t j = 0; j < outlets; ++j) {
            if (on_path[k][j] && on_path[m][j]) shared += tree.points[j].path_ohm;
          }
          next[k] -= shared * current[m];
        }
        moved = std::max(moved, std::abs(next[k] - voltage[k]));
        const bool loaded = made.outlets[k].devices.front().load.rating > 0.0;
        all_run = all_run && (!loaded || next[k] >= fold_voltage(made.outlets[k].devices.front().load, made.supply.nominal).number());
      }
      voltage = next;
    }
    if (all_run && moved > 1e-12) continue;  // too near the end to tell this way
    const RadialSolution solution = Radial(made, fitted, BatteryState::resting).solve(Loading(outlets, 1.0));
    INFO("run ", run);
    REQUIRE(solution.outcome == (all_run ? Outcome::solved : Outcome::no_operating_point));
    (all_run ? ran : could_not) += 1;
    for (std::size_t k = 0; all_run && k < outlets; ++k) REQUIRE(std::abs(solution.device_voltage_v[k] - voltage[k]) < 1e-9);
  }
  MESSAGE("seed 13, all loads ran ", ran, ", some could not ", could_not);
  CHECK(ran > run_count(500));
  CHECK(could_not > run_count(100));
}

TEST_CASE("a load that cannot run folds alone: its neighbour nearer the block keeps running") {
  circuit::Circuit made = circuit::new_circuit(tables::GaugeSystem::awg);
  made.outlets.clear();
  for (std::uint32_t k = 0; k < 2; ++k) {
    circuit::Outlet outlet;
    outlet.id = {k + 1};
    outlet.fed_from = {k};
    made.outlets.push_back(outlet);
  }
  made.outlets[0].devices.front().load = {circuit::LoadKind::constant_power, true, 60.0, {}};
  made.outlets[1].run.length = units::Metres(30.0);  // 60 m of 14 AWG, about 0.56 ohm: at most 12.6^2 / 2.2 = 72 W
  made.outlets[1].devices.front().load = {circuit::LoadKind::constant_power, true, 90.0, {}};
  const RadialSolution solution =
      Radial(made, {tables::conductor_by_id("14awg"), nullptr, units::Amperes(15.0)}, BatteryState::resting).solve({1.0, 1.0});
  CHECK(solution.outcome == Outcome::no_operating_point);
  CHECK_FALSE(solution.folded[0]);
  CHECK(solution.folded[1]);
  CHECK(solution.load_current_a[0] * solution.device_voltage_v[0] == doctest::Approx(60.0).epsilon(1e-9));
}

TEST_CASE("sensitivity is what a small change of loading does") {
  Random random(12);
  int compared = 0;
  for (int run = 0; run < run_count(1500); ++run) {
    const std::size_t outlets = 1 + random.below(7);
    circuit::Circuit made = network_test::random_circuit(random, outlets);
    for (circuit::Outlet& outlet : made.outlets) {
      outlet.devices.front().load.kind = kAllKinds[random.below(3)];
      outlet.devices.front().load.rating = random.uniform(0.5, 6.0);
      outlet.devices.front().load.rating_in_watts = false;
      outlet.devices.front().load.minimum_voltage.reset();
    }
    const Radial radial(made, {tables::conductor_by_id("8awg"), nullptr, units::Amperes(30.0)}, BatteryState::resting);
    Loading loading(outlets);
    for (double& on : loading) on = random.uniform(0.2, 0.9);
    const RadialSolution at = radial.solve(loading);
    if (at.outcome != Outcome::solved) continue;
    const std::size_t watched = random.below(outlets);
    const std::vector<double> slope = radial.sensitivity(watched, loading, at);
    for (std::size_t m = 0; m < outlets; ++m) {
      const double rated_a = circuit::rated_current(made.outlets[m].devices.front().load, made.supply.nominal).number();
      const double step = 1e-4;
      Loading more = loading, less = loading;
      more[m] += step;
      less[m] -= step;
      const double falls_v = radial.solve(less).device_voltage_v[watched] - radial.solve(more).device_voltage_v[watched];
      const double per_rated_a = falls_v / (2.0 * step * rated_a);
      REQUIRE(slope[m] > 0.0);
      REQUIRE(slope[m] == doctest::Approx(per_rated_a).epsilon(1e-5));
      ++compared;
    }
  }
  CHECK(compared > run_count(1500));
}

TEST_CASE("one outlet by hand") {
  // One resistive load behind one loop: a voltage divider, by Ohm's law.
  circuit::Circuit made = circuit::new_circuit(tables::GaugeSystem::awg);
  made.outlets[0].devices.front().load = {circuit::LoadKind::resistive, true, 48.0, {}};  // 3 ohm at 12 V
  const Fitted fitted{tables::conductor_by_id("14awg"), nullptr, units::Amperes(10.0)};
  const Tree tree = tree_of(made, fitted, BatteryState::resting);
  const double loop = tree.source_ohm + tree.supply_ohm + tree.points[0].path_ohm + tree.points[0].tail_ohm;
  const RadialSolution full = Radial(made, fitted, BatteryState::resting).solve({1.0});
  CHECK(full.total_current_a == doctest::Approx(tree.emf_v / (loop + 3.0)).epsilon(1e-13));
  const RadialSolution half = Radial(made, fitted, BatteryState::resting).solve({0.5});
  CHECK(half.total_current_a == doctest::Approx(tree.emf_v / (loop + 6.0)).epsilon(1e-13));
  const RadialSolution off = Radial(made, fitted, BatteryState::resting).solve({0.0});
  CHECK(off.total_current_a == 0.0);
  CHECK(off.device_voltage_v[0] == doctest::Approx(tree.emf_v).epsilon(1e-15));
}
