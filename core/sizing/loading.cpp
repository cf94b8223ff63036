#include "sizing/loading.h"

#include <algorithm>
#include <cstring>
#include <numeric>

namespace sizing {
namespace {

using circuit::LoadKind;
using network::Loading;

constexpr int kMostSteps = 8;   // the climb ends by itself after one or two
constexpr double kWorse = 1e-12;

std::uint64_t hash_of(const Loading& loading) {
  std::uint64_t hash = 1469598103934665603ULL;  // FNV-1a over the doubles' bits
  for (const double part : loading) {
    std::uint64_t bits = 0;
    std::memcpy(&bits, &part, sizeof bits);
    hash = (hash ^ bits) * 1099511628211ULL;
    hash ^= hash >> 29;
  }
  return hash;
}

// Current of a whole load at a device voltage, and how it grows with that voltage.
struct LoadPoint {
  double current_a;
  double slope_a_per_v;
};
LoadPoint load_point(const circuit::Load& load, double rated_a, double nominal_v, double volts) {
  const double fold_v = network::fold_voltage(load, units::Volts(nominal_v)).number();
  const double power_w = rated_a * nominal_v;
  switch (load.kind) {
    case LoadKind::constant_current:
      if (volts >= fold_v) return {rated_a, 0.0};
      return {rated_a * volts / fold_v, rated_a / fold_v};
    case LoadKind::constant_power:
      if (volts >= fold_v) return {power_w / volts, -power_w / (volts * volts)};
      return {power_w * volts / (fold_v * fold_v), power_w / (fold_v * fold_v)};
    case LoadKind::resistive:
      return {rated_a * volts / nominal_v, rated_a / nominal_v};
  }
  return {0.0, 0.0};
}

}  // namespace

Demand::Demand(const circuit::Circuit& circuit) {
  const std::size_t count = circuit.outlets.size();
  rated_a.resize(count);
  parent.assign(count, kNoParent);
  for (std::size_t i = 0; i < count; ++i) {
    const circuit::Outlet& outlet = circuit.outlets[i];
    rated_a[i] = circuit::rated_current(outlet.load, circuit.supply.nominal).number();
    total_a += rated_a[i];
    any_resistive = any_resistive || (outlet.load.kind == LoadKind::resistive && rated_a[i] > 0.0);
    any_varying = any_varying || (outlet.load.kind != LoadKind::constant_current && rated_a[i] > 0.0);
    if (outlet.fed_from == circuit::kBlock) continue;
    for (std::size_t j = 0; j < i; ++j) {
      if (circuit.outlets[j].id == outlet.fed_from) parent[i] = j;
    }
  }
  cap_a = total_a;
  if (circuit.at_most_at_once && circuit.at_most_at_once->number() < total_a) {
    cap_a = circuit.at_most_at_once->number();
    all_at_once = false;
  }
}

LoadingFinder::LoadingFinder(const circuit::Circuit& circuit, const Demand& demand, const network::Fitted& fitted,
                             network::BatteryState battery)
    : circuit_(circuit),
      demand_(demand),
      radial_(circuit, fitted, battery),
      series_(network::series_resistances(circuit, fitted, battery)) {
  loop_ohm_.resize(demand.rated_a.size());
  for (std::size_t i = 0; i < loop_ohm_.size(); ++i) {
    const double above = demand.parent[i] == kNoParent ? (series_.source + series_.supply_loop).number()
                                                       : loop_ohm_[demand.parent[i]];
    loop_ohm_[i] = above + (series_.run_loop[i] + series_.joint_loop[i]).number();
  }
}

const LoadingFinder::Tried& LoadingFinder::tried(const Loading& loading) {
  const std::uint64_t hash = hash_of(loading);
  for (const auto& known : storage_) {
    if (known->hash == hash && known->loading == loading) return *known;
  }
  storage_.push_back(std::make_unique<Tried>(Tried{hash, loading, radial_.solve(loading)}));
  return *storage_.back();
}

double LoadingFinder::value_of(Worst kind, std::size_t outlet, const network::RadialSolution& at) const {
  switch (kind) {
    case Worst::total_current: return at.total_current_a;
    case Worst::drop: return at.battery_voltage_v - at.outlet_voltage_v[outlet];
    case Worst::low_voltage: return series_.emf.number() - at.outlet_voltage_v[outlet];
  }
  return 0.0;
}

// How the battery's current grows for each rated ampere switched on at each outlet. In the
// network made linear around `at`, current taken at a device reaches the source in the same
// proportion as the source's voltage reaches that device (reciprocity), so one sweep serves all.
std::vector<double> LoadingFinder::source_gradient(const Tried& at) const {
  const std::size_t count = demand_.rated_a.size();
  const double nominal_v = circuit_.supply.nominal.number();
  std::vector<LoadPoint> point(count);
  std::vector<double> below_s(count + 1, 0.0);  // admittance seen at each splice; last: at the block
  std::vector<double> seen_s(count);            // the same from the far side of the run
  for (std::size_t i = count; i-- > 0;) {
    point[i] = load_point(circuit_.outlets[i].load, demand_.rated_a[i], nominal_v, at.solution.outlet_voltage_v[i]);
    const double device_s = point[i].slope_a_per_v * at.loading[i];
    below_s[i] += device_s / (1.0 + device_s * series_.tail_loop[i].number());
    seen_s[i] = below_s[i] / (1.0 + below_s[i] * (series_.run_loop[i] + series_.joint_loop[i]).number());
    below_s[demand_.parent[i] == kNoParent ? count : demand_.parent[i]] += seen_s[i];
  }
  const double block_gain = 1.0 / (1.0 + below_s[count] * (series_.source + series_.supply_loop).number());
  std::vector<double> gain(count);
  std::vector<double> worth(count, 0.0);
  for (std::size_t i = 0; i < count; ++i) {
    const double above = demand_.parent[i] == kNoParent ? block_gain : gain[demand_.parent[i]];
    gain[i] = above / (1.0 + below_s[i] * (series_.run_loop[i] + series_.joint_loop[i]).number());
    if (demand_.rated_a[i] <= 0.0) continue;
    const double device_s = point[i].slope_a_per_v * at.loading[i];
    const double device_gain = gain[i] / (1.0 + device_s * series_.tail_loop[i].number());
    worth[i] = device_gain * point[i].current_a / demand_.rated_a[i];
  }
  return worth;
}

std::vector<double> LoadingFinder::gradient(Worst kind, std::size_t outlet, const Tried& at) const {
  if (kind == Worst::total_current) return source_gradient(at);
  std::vector<double> worth = radial_.sensitivity(outlet, at.loading, at.solution);
  if (kind == Worst::drop && demand_.any_varying) {
    // The posts fall too, which takes from the drop between posts and device. With constant
    // currents only, each ampere takes the same, and the order does not change.
    const std::vector<double> source = source_gradient(at);
    for (std::size_t i = 0; i < worth.size(); ++i) worth[i] -= series_.source.number() * source[i];
  }
  return worth;
}

std::vector<double> LoadingFinder::first_guess(Worst kind, std::size_t outlet) const {
  const std::size_t count = demand_.rated_a.size();
  std::vector<double> worth(count, 0.0);
  if (kind == Worst::total_current) {
    // Constant power far away draws more than rated, a resistive load far away less.
    for (std::size_t i = 0; i < count; ++i) {
      const LoadKind load = circuit_.outlets[i].load.kind;
      const double sign = load == LoadKind::constant_power ? 1.0 : load == LoadKind::resistive ? -1.0 : 0.0;
      worth[i] = 1e6 + sign * (1.0 + loop_ohm_[i] + series_.tail_loop[i].number());
    }
    return worth;
  }
  std::vector<bool> on_path(count, false);
  for (std::size_t at = outlet; at != kNoParent; at = demand_.parent[at]) on_path[at] = true;
  const double supply_ohm = (series_.source + series_.supply_loop).number();
  for (std::size_t i = 0; i < count; ++i) {  // parents stand before their children
    const double above = demand_.parent[i] == kNoParent ? supply_ohm : worth[demand_.parent[i]];
    worth[i] = on_path[i] ? loop_ohm_[i] : above;
  }
  worth[outlet] += series_.tail_loop[outlet].number();
  return worth;
}

Loading LoadingFinder::spend_cap(const std::vector<double>& worth) const {
  std::vector<std::size_t> order(worth.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return worth[a] > worth[b]; });
  Loading loading(worth.size(), 0.0);
  double left_a = demand_.cap_a;
  for (const std::size_t i : order) {
    if (left_a <= 0.0 || worth[i] <= 0.0) break;
    if (demand_.rated_a[i] <= 0.0) continue;
    const double part = demand_.all_at_once ? 1.0 : std::min(1.0, left_a / demand_.rated_a[i]);
    loading[i] = part;
    left_a -= part * demand_.rated_a[i];
  }
  return loading;
}

WorstCase LoadingFinder::worst(Worst kind, std::size_t outlet, const Loading* start) {
  const Tried* best = nullptr;
  // More load lowers every voltage and raises the total, so all on is the worst there is. Only
  // the drop may fall again, where a resistive load draws less at the lower voltage.
  const bool all_on_is_worst = demand_.all_at_once && (kind != Worst::drop || !demand_.any_resistive);
  if (demand_.all_at_once) {
    best = &tried(Loading(demand_.rated_a.size(), 1.0));
  } else {
    best = &tried(start != nullptr ? *start : spend_cap(first_guess(kind, outlet)));
  }
  double value = value_of(kind, outlet, best->solution);
  for (int step = 0; step < kMostSteps && !all_on_is_worst; ++step) {
    const Loading next = spend_cap(gradient(kind, outlet, *best));
    if (next == best->loading) break;
    const Tried& there = tried(next);
    const double there_value = value_of(kind, outlet, there.solution);
    if (there_value <= value + kWorse) break;
    best = &there;
    value = there_value;
  }
  return {&best->loading, &best->solution, value};
}

}  // namespace sizing
