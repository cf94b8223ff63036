// The worst simultaneous loading against brute force: every corner of 'each load off or on, one
// of them partly, within the cap', and random loadings inside.
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "sizing/context.h"
#include "sizing/loading.h"
#include "sizing/random_circuit.h"

namespace {

using network::BatteryState;
using network::Loading;
using sizing::Demand;
using sizing::LoadingFinder;
using sizing::Worst;

// Corners: a set that is wholly on, and at most one load that takes what is left of the cap.
std::vector<Loading> corners(const Demand& demand) {
  const std::size_t n = demand.rated_a.size();
  std::vector<Loading> all;
  for (std::size_t set = 0; set < (std::size_t{1} << n); ++set) {
    Loading loading(n, 0.0);
    double used_a = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
      if ((set >> i & 1U) == 0) continue;
      loading[i] = 1.0;
      used_a += demand.rated_a[i];
    }
    if (used_a > demand.cap_a + 1e-12) continue;
    all.push_back(loading);
    for (std::size_t i = 0; i < n; ++i) {
      if (loading[i] > 0.0 || demand.rated_a[i] <= 0.0) continue;
      Loading partly = loading;
      partly[i] = std::min(1.0, (demand.cap_a - used_a) / demand.rated_a[i]);
      all.push_back(std::move(partly));
    }
  }
  return all;
}

Loading inside(random_circuits::Engine& engine, const Demand& demand) {
  Loading loading(demand.rated_a.size());
  double used_a = 0.0;
  for (std::size_t i = 0; i < loading.size(); ++i) {
    loading[i] = random_circuits::uniform(engine, 0.0, 1.0);
    used_a += loading[i] * demand.rated_a[i];
  }
  if (used_a > demand.cap_a) {
    for (double& part : loading) part *= demand.cap_a / used_a;
  }
  return loading;
}

double value(Worst kind, std::size_t outlet, const network::RadialSolution& at, double emf_v) {
  if (kind == Worst::total_current) return at.total_current_a;
  return (kind == Worst::drop ? at.battery_voltage_v : emf_v) - at.device_voltage_v[outlet];
}

}  // namespace

TEST_CASE("the worst loading found against every corner, and loadings inside") {
  constexpr std::uint64_t kSeed = 20261125;
  MESSAGE("seed ", kSeed);
  random_circuits::Engine engine(kSeed);
  const std::size_t circuits = random_circuits::count(1200);
  std::size_t questions = 0;
  std::size_t missed = 0;
  double worst_miss = 0.0;
  for (std::size_t round = 0; round < circuits; ++round) {
    const circuit::Circuit circuit = random_circuits::small(engine, 7);
    const Demand demand(circuit);
    if (demand.total_a <= 0.0) continue;
    const auto sizes = tables::conductors(tables::GaugeSystem::awg);
    const tables::Conductor& size = sizes[round % 9];
    const network::Fitted fitted{&size, nullptr, units::Amperes(15.0)};
    for (const BatteryState state : {BatteryState::resting, BatteryState::low}) {
      LoadingFinder finder(circuit, demand, fitted, state);
      const network::Radial radial(circuit, fitted, state);
      const double emf_v = finder.tree().emf_v;
      std::vector<network::RadialSolution> tried;
      bool folds = false;
      for (const Loading& corner : corners(demand)) tried.push_back(radial.solve(corner));
      for (int i = 0; i < 20; ++i) tried.push_back(radial.solve(inside(engine, demand)));
      for (const auto& solution : tried) folds = folds || solution.outcome != network::Outcome::solved;
      if (folds) continue;   // no operating point somewhere: refused by itself, not by its drop
      for (const Worst kind : {Worst::total_current, Worst::drop, Worst::low_voltage}) {
        for (std::size_t outlet = 0; outlet < demand.rated_a.size(); ++outlet) {   // by point of the tree
          const double found = finder.worst(kind, outlet).value;
          double brute = 0.0;
          for (const auto& solution : tried) brute = std::max(brute, value(kind, outlet, solution, emf_v));
          ++questions;
          if (brute - found <= 1e-9) continue;
          ++missed;
          CHECK(demand.any_varying);   // with constant currents only, the answer is exact
          worst_miss = std::max(worst_miss, (brute - found) / brute);
        }
      }
    }
  }
  MESSAGE(questions, " questions, ", missed, " missed, by at most ", worst_miss * 100.0, " %");
  CHECK(questions > circuits);
  // Loads whose current follows the voltage can have several best corners, and the search is no
  // proof there: it may miss by less than a part is known, and seldom.
  CHECK(missed * 200 <= questions);
  CHECK(worst_miss < 0.01);
}

TEST_CASE("the worst loading is computed, not taken to lie at the far end") {
  // Two branches: the far outlet B is light, the near outlet A heavy. With 10 A at once, A on
  // hurts B's shared feed most after B itself is on.
  circuit::Circuit circuit = circuit::new_circuit(tables::GaugeSystem::awg);
  circuit.outlets[0].run.length = units::Metres(4.0);
  circuit.outlets[0].devices.front().load.rating = 10.0;
  circuit::Outlet far = circuit.outlets[0];
  far.id = circuit::OutletId{2};
  far.name = "Outlet B";
  far.fed_from = circuit::OutletId{1};
  far.run.length = units::Metres(1.0);
  far.devices.front().load.rating = 1.0;
  circuit.outlets.push_back(far);
  circuit.next_outlet_id = 3;
  circuit.at_most_at_once = units::Amperes(10.0);
  const Demand demand(circuit);
  LoadingFinder finder(circuit, demand, {tables::conductor_by_id("10awg"), nullptr, units::Amperes(15.0)},
                       BatteryState::resting);
  const auto worst = finder.worst(Worst::drop, 1);
  CHECK((*worst.loading)[1] == doctest::Approx(1.0));
  CHECK((*worst.loading)[0] == doctest::Approx(0.9));   // 9 A of its 10
}

TEST_CASE("the fall at the source is followed exactly: gradient against a small difference") {
  // A constant-power load draws more as its voltage falls, so more is drawn in all when it is far.
  circuit::Circuit circuit = circuit::new_circuit(tables::GaugeSystem::awg);
  circuit.outlets[0].devices.front().load = {circuit::LoadKind::resistive, false, 8.0, std::nullopt};
  circuit::Outlet far = circuit.outlets[0];
  far.id = circuit::OutletId{2};
  far.name = "Outlet B";
  far.fed_from = circuit::OutletId{1};
  far.run.length = units::Metres(6.0);
  far.devices.front().load = {circuit::LoadKind::constant_power, true, 96.0, std::nullopt};
  circuit.outlets.push_back(far);
  circuit.next_outlet_id = 3;
  circuit.at_most_at_once = units::Amperes(8.0);
  const Demand demand(circuit);
  LoadingFinder low(circuit, demand, {tables::conductor_by_id("14awg"), nullptr, units::Amperes(15.0)},
                    BatteryState::low);
  LoadingFinder charging(circuit, demand, {tables::conductor_by_id("14awg"), nullptr, units::Amperes(15.0)},
                         BatteryState::charging);
  CHECK((*low.worst(Worst::total_current, 0).loading)[1] == doctest::Approx(1.0));
  CHECK((*charging.worst(Worst::total_current, 0).loading)[0] == doctest::Approx(1.0));
}
