#include "sizing/loading.h"

#include <algorithm>
#include <cstring>
#include <numeric>

namespace sizing {
namespace {

using circuit::LoadKind;
using network::Loading;

constexpr int kMostCorners = 8;            // the climb ends by itself after one or two
constexpr double kLeastShare = 0.3;        // of the battery's voltage, for a first guess
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
    rated_a[i] = circuit::rated_current(outlet.devices.front().load, circuit.supply.nominal).number();
    total_a += rated_a[i];
    any_resistive = any_resistive || (outlet.devices.front().load.kind == LoadKind::resistive && rated_a[i] > 0.0);
    any_varying = any_varying || (outlet.devices.front().load.kind != LoadKind::constant_current && rated_a[i] > 0.0);
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
    point[i] = load_point(circuit_.outlets[i].devices.front().load, demand_.rated_a[i], nominal_v, at.solution.outlet_voltage_v[i]);
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

// Amperes a load takes for each rated ampere at about the voltage it gets: the battery's, or
// what is left when it is on by itself, or with the whole cap flowing the whole way to it.
std::vector<double> LoadingFinder::guessed_draw(Guess guess) const {
  const double emf_v = series_.emf.number();
  std::vector<double> draw(demand_.rated_a.size());
  for (std::size_t i = 0; i < draw.size(); ++i) {
    const double flowing_a = guess == Guess::nothing_flows ? 0.0
                             : guess == Guess::alone       ? std::min(demand_.rated_a[i], demand_.cap_a)
                                                           : demand_.cap_a;
    const double volts = emf_v - flowing_a * (loop_ohm_[i] + series_.tail_loop[i].number());
    const double ratio = std::max(volts, kLeastShare * emf_v) / circuit_.supply.nominal.number();
    const LoadKind load = circuit_.outlets[i].devices.front().load.kind;
    draw[i] = load == LoadKind::constant_power ? 1.0 / ratio : load == LoadKind::resistive ? ratio : 1.0;
  }
  return draw;
}

std::vector<double> LoadingFinder::first_guess(Worst kind, std::size_t outlet, Guess guess) const {
  const std::size_t count = demand_.rated_a.size();
  const std::vector<double> draw = guessed_draw(guess);
  std::vector<double> worth(count, 1.0);
  if (kind != Worst::total_current) {
    std::vector<bool> on_path(count, false);
    for (std::size_t at = outlet; at != kNoParent; at = demand_.parent[at]) on_path[at] = true;
    // The battery's own fall counts for the device's voltage, not for the drop from its posts.
    const double source_ohm = kind == Worst::drop ? 0.0 : series_.source.number();
    const double supply_ohm = source_ohm + series_.supply_loop.number();
    for (std::size_t i = 0; i < count; ++i) {  // parents stand before their children
      const double above = demand_.parent[i] == kNoParent ? supply_ohm : worth[demand_.parent[i]];
      worth[i] = on_path[i] ? loop_ohm_[i] - series_.source.number() + source_ohm : above;
    }
    worth[outlet] += series_.tail_loop[outlet].number();
  }
  for (std::size_t i = 0; i < count; ++i) worth[i] *= draw[i];
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

// From corner to corner: all of the cap to what the gradient says is worth most.
void LoadingFinder::climb_corners(Worst kind, std::size_t outlet, Found& best) {
  for (int step = 0; step < kMostCorners; ++step) {
    const Loading next = spend_cap(gradient(kind, outlet, *best.at));
    if (next == best.at->loading) return;
    const Tried& there = tried(next);
    const double value = value_of(kind, outlet, there.solution);
    if (value <= best.value + kWorse) return;
    best = {&there, value};
  }
}

// Between corners: a resistive load is worth less the more of it is on, so amperes are moved
// from the least worthy load that is on to the worthiest that is not wholly on, as far as that
// gains. The two slopes at the ends of the move tell how far.
void LoadingFinder::exchange(Worst kind, std::size_t outlet, Found& best) {
  const std::size_t most_steps = 2 * demand_.rated_a.size() + 4;
  for (std::size_t step = 0; step < most_steps; ++step) {
    const std::vector<double> worth = gradient(kind, outlet, *best.at);
    const Loading& now = best.at->loading;
    std::size_t up = kNoParent;
    std::size_t down = kNoParent;
    double used_a = 0.0;
    for (std::size_t i = 0; i < worth.size(); ++i) {
      const double rated = demand_.rated_a[i];
      if (rated <= 0.0) continue;
      used_a += now[i] * rated;
      if (now[i] < 1.0 && (up == kNoParent || worth[i] > worth[up])) up = i;
      if (now[i] > 0.0 && (down == kNoParent || worth[i] < worth[down])) down = i;
    }
    // Amperes may also come from what is left of the cap, or go back to it.
    const double spare_a = demand_.cap_a - used_a;
    const bool from_spare = spare_a > kWorse && up != kNoParent && worth[up] > 0.0;
    const bool to_spare = down != kNoParent && worth[down] < 0.0 && (up == kNoParent || worth[up] <= 0.0);
    if (from_spare) down = kNoParent;
    else if (to_spare) up = kNoParent;
    else if (up == kNoParent || down == kNoParent || up == down) return;
    const auto gain_of = [&](const std::vector<double>& w) {
      return (up == kNoParent ? 0.0 : w[up]) - (down == kNoParent ? 0.0 : w[down]);
    };
    const double gain = gain_of(worth);
    if (gain <= kWorse) return;
    double most_a = spare_a;
    if (down != kNoParent) most_a = now[down] * demand_.rated_a[down];
    if (up != kNoParent) most_a = std::min(most_a, (1.0 - now[up]) * demand_.rated_a[up]);
    const auto moved = [&](double amperes) {
      Loading next = now;
      if (up != kNoParent) next[up] = std::min(1.0, next[up] + amperes / demand_.rated_a[up]);
      if (down != kNoParent) next[down] = amperes >= most_a && most_a >= now[down] * demand_.rated_a[down]
                                              ? 0.0
                                              : std::max(0.0, next[down] - amperes / demand_.rated_a[down]);
      return next;
    };
    const Tried& end = tried(moved(most_a));
    Found found{&end, value_of(kind, outlet, end.solution)};
    const double end_gain = gain_of(gradient(kind, outlet, end));
    if (end_gain < 0.0) {
      const Tried& middle = tried(moved(most_a * gain / (gain - end_gain)));
      const double value = value_of(kind, outlet, middle.solution);
      if (value > found.value) found = {&middle, value};
    }
    if (found.value <= best.value + kWorse) return;
    best = found;
  }
}

LoadingFinder::Found LoadingFinder::climb(Worst kind, std::size_t outlet, const Loading& start) {
  const Tried& first = tried(start);
  Found best{&first, value_of(kind, outlet, first.solution)};
  climb_corners(kind, outlet, best);
  if (demand_.any_resistive) {
    exchange(kind, outlet, best);
    climb_corners(kind, outlet, best);
  }
  return best;
}

WorstCase LoadingFinder::at(Worst kind, std::size_t outlet, const Loading& loading) {
  const Tried& solved = tried(loading);
  return {&solved.loading, &solved.solution, value_of(kind, outlet, solved.solution)};
}

WorstCase LoadingFinder::worst(Worst kind, std::size_t outlet, const Loading* start, Search search) {
  Found best;
  if (demand_.all_at_once) {
    // More load lowers every voltage and raises the total, so all on is the worst there is. Only
    // the drop may fall again, where a resistive load draws less at the lower voltage.
    const Loading all(demand_.rated_a.size(), 1.0);
    if (kind == Worst::drop && demand_.any_resistive) {
      best = climb(kind, outlet, all);
    } else {
      const Tried& solved = tried(all);
      best = {&solved, value_of(kind, outlet, solved.solution)};
    }
  } else if (search == Search::quick) {
    const Tried& first = tried(start != nullptr ? *start : spend_cap(first_guess(kind, outlet, Guess::alone)));
    best = {&first, value_of(kind, outlet, first.solution)};
    climb_corners(kind, outlet, best);
  } else {
    best = climb(kind, outlet, spend_cap(first_guess(kind, outlet, Guess::alone)));
    // Loads whose current depends on voltage can have several best corners.
    const auto better_of = [&](const Loading& other) {
      const Found found = climb(kind, outlet, other);
      if (found.value > best.value) best = found;
    };
    if (demand_.any_varying) {
      better_of(spend_cap(first_guess(kind, outlet, Guess::whole_cap)));
      better_of(spend_cap(first_guess(kind, outlet, Guess::nothing_flows)));
      if (start != nullptr) better_of(*start);
    }
  }
  return {&best.at->loading, &best.at->solution, best.value};
}

}  // namespace sizing
