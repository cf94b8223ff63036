#include "sizing/loading.h"

#include <algorithm>
#include <cstring>
#include <limits>
#include <map>
#include <numeric>

namespace sizing {
namespace {

using circuit::LoadKind;
using network::Loading;

constexpr int kMostCorners = 8;            // the climb ends by itself after one or two
constexpr std::size_t kMostRunaways = 4;
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

}  // namespace

Demand::Demand(const circuit::Circuit& circuit) {
  const std::vector<network::LoadSlot> slots = network::load_slots(circuit);
  std::map<circuit::OutletId, std::size_t> goes_on;   // the point that what an outlet feeds hangs on
  for (std::size_t i = 0; i < slots.size(); ++i) {
    const circuit::Outlet& at = circuit.outlets[slots[i].outlet];
    const bool first_of_outlet = i == 0 || slots[i - 1].outlet != slots[i].outlet;
    const auto before = goes_on.find(at.fed_from);
    parent.push_back(!first_of_outlet ? i - 1 : before == goes_on.end() ? kNoParent : before->second);
    const bool device_of_several = at.devices.size() > 1 && !first_of_outlet;
    if (!device_of_several) goes_on[at.id] = i;
    outlet.push_back(slots[i].outlet);
    if (first_of_outlet) point_of_outlet.push_back(at.devices.size() > 1 ? i + 1 : i + static_cast<std::size_t>(at.taps) - 1);
    const bool has_device = slots[i].device != network::kNoPoint;
    const circuit::Load* own = has_device ? &at.devices[slots[i].device].load : nullptr;
    load.push_back(own);
    const double whole_a = own != nullptr ? circuit::rated_current(*own, circuit.supply.nominal).number() : 0.0;
    rated_a.push_back(whole_a / at.taps);
    total_a += rated_a.back();
    any_resistive = any_resistive || (own != nullptr && own->kind == LoadKind::resistive && whole_a > 0.0);
    any_varying = any_varying || (own != nullptr && own->kind != LoadKind::constant_current && whole_a > 0.0);
  }
  cap_a = total_a;
  if (circuit.at_most_at_once && circuit.at_most_at_once->number() < total_a) {
    cap_a = circuit.at_most_at_once->number();
    all_at_once = false;
  }
}

LoadingFinder::LoadingFinder(const circuit::Circuit& circuit, const Demand& demand, const network::Fitted& fitted,
                             network::BatteryState battery)
    : demand_(demand), tree_(network::tree_of(circuit, fitted, battery)), radial_(tree_) {
  loop_ohm_.resize(demand.rated_a.size());
  laws_.resize(demand.rated_a.size());
  for (std::size_t i = 0; i < loop_ohm_.size(); ++i) {
    const double above = demand.parent[i] == kNoParent ? tree_.supply_ohm : loop_ohm_[demand.parent[i]];
    loop_ohm_[i] = above + tree_.points[i].path_ohm;
    const network::TreePoint& at = tree_.points[i];
    if (at.load != nullptr) laws_[i] = network::load_law(*at.load, units::Volts(tree_.nominal_v)).part(at.share);
  }
  if (!demand.all_at_once) runaways_ = find_runaways();
}

// Most volts first, each by itself with no more than the cap.
std::vector<std::size_t> LoadingFinder::find_runaways() const {
  const auto lost_v = [&](std::size_t i) { return std::min(demand_.rated_a[i], demand_.cap_a) * loop_ohm_[i]; };
  std::vector<std::size_t> found;
  for (std::size_t i = 0; i < loop_ohm_.size(); ++i) {
    const bool power = demand_.load[i] != nullptr && demand_.load[i]->kind == LoadKind::constant_power;
    if (power && demand_.rated_a[i] > 0.0) found.push_back(i);
  }
  std::stable_sort(found.begin(), found.end(), [&](std::size_t a, std::size_t b) { return lost_v(a) > lost_v(b); });
  if (found.size() > kMostRunaways) found.resize(kMostRunaways);
  return found;
}

const LoadingFinder::Tried& LoadingFinder::tried(const Loading& loading) {
  const std::uint64_t hash = hash_of(loading);
  for (const auto& known : storage_) {
    if (known->hash == hash && known->loading == loading) return *known;
  }
  storage_.push_back(std::make_unique<Tried>(Tried{hash, loading, radial_.solve(loading), {}}));
  return *storage_.back();
}

double LoadingFinder::value_of(Worst kind, std::size_t point, const network::RadialSolution& at) const {
  switch (kind) {
    case Worst::total_current: return at.total_current_a;
    case Worst::drop: return at.battery_voltage_v - at.device_voltage_v[point];
    case Worst::low_voltage: return tree_.emf_v - at.device_voltage_v[point];
  }
  return 0.0;
}

// How the battery's current grows for each rated ampere switched on at each outlet. In the
// network made linear around `at`, current taken at a device reaches the source in the same
// proportion as the source's voltage reaches that device (reciprocity), so one sweep serves all.
const std::vector<double>& LoadingFinder::source_gradient(const Tried& at) const {
  if (at.source_gradient.empty()) at.source_gradient = find_source_gradient(at);
  return at.source_gradient;
}

std::vector<double> LoadingFinder::find_source_gradient(const Tried& at) const {
  const std::size_t count = demand_.rated_a.size();
  std::vector<double> drawn_a(count, 0.0);      // by the whole load, at the voltage that it gets
  std::vector<double> device_s(count, 0.0);     // how that grows with the voltage, for the part that is on
  std::vector<double> below_s(count + 1, 0.0);  // admittance seen at each splice; last: at the block
  std::vector<double> seen_s(count);            // the same from the far side of the run
  for (std::size_t i = count; i-- > 0;) {
    if (demand_.rated_a[i] > 0.0) {
      drawn_a[i] = laws_[i].current_a(at.solution.device_voltage_v[i]);
      device_s[i] = laws_[i].slope_siemens(at.solution.device_voltage_v[i]) * at.loading[i];
    }
    below_s[i] += device_s[i] / (1.0 + device_s[i] * tree_.points[i].tail_ohm);
    seen_s[i] = below_s[i] / (1.0 + below_s[i] * tree_.points[i].path_ohm);
    below_s[demand_.parent[i] == kNoParent ? count : demand_.parent[i]] += seen_s[i];
  }
  const double block_gain = 1.0 / (1.0 + below_s[count] * (tree_.source_ohm + tree_.supply_ohm));
  std::vector<double> gain(count);
  std::vector<double> worth(count, 0.0);
  for (std::size_t i = 0; i < count; ++i) {
    const double above = demand_.parent[i] == kNoParent ? block_gain : gain[demand_.parent[i]];
    gain[i] = above / (1.0 + below_s[i] * tree_.points[i].path_ohm);
    if (demand_.rated_a[i] <= 0.0) continue;
    const double device_gain = gain[i] / (1.0 + device_s[i] * tree_.points[i].tail_ohm);
    worth[i] = device_gain * drawn_a[i] / demand_.rated_a[i];
  }
  return worth;
}

const std::vector<double>& LoadingFinder::gradient(Worst kind, std::size_t point, const Tried& at) {
  if (kind == Worst::total_current) return source_gradient(at);
  LastGradient& last = last_gradient_;
  if (last.at == &at && last.kind == kind && last.point == point) return last.worth;
  last = {kind, point, &at, radial_.sensitivity(point, at.loading, at.solution)};
  if (kind == Worst::drop && demand_.any_varying) {
    // A drop counts from the battery's posts to the device, and more current lowers the volts at the posts as
    // well: that part is no drop. Loads of constant current all lower it alike for each ampere, and need no
    // correction: their order stays.
    const std::vector<double>& source = source_gradient(at);
    for (std::size_t i = 0; i < last.worth.size(); ++i) last.worth[i] -= tree_.source_ohm * source[i];
  }
  return last.worth;
}

std::vector<double> LoadingFinder::most_lost_so_far() const {
  std::vector<double> most(demand_.rated_a.size(), 0.0);
  for (const auto& known : storage_) {
    const network::RadialSolution& solved = known->solution;
    for (std::size_t i = 0; i < most.size(); ++i) {
      most[i] = std::max(most[i], solved.battery_voltage_v - solved.device_voltage_v[i]);
    }
  }
  return most;
}

// Amperes a load takes for each rated ampere at about the voltage it gets: the battery's, or
// what is left when it is on by itself, or with the whole cap flowing the whole way to it.
std::vector<double> LoadingFinder::guessed_draw(Guess guess) const {
  const double emf_v = tree_.emf_v;
  std::vector<double> draw(demand_.rated_a.size());
  for (std::size_t i = 0; i < draw.size(); ++i) {
    const double flowing_a = guess == Guess::nothing_flows ? 0.0
                             : guess == Guess::alone       ? std::min(demand_.rated_a[i], demand_.cap_a)
                                                           : demand_.cap_a;
    const double volts = emf_v - flowing_a * (tree_.source_ohm + loop_ohm_[i] + tree_.points[i].tail_ohm);
    draw[i] = demand_.rated_a[i] > 0.0 ? laws_[i].current_a(std::max(volts, kLeastShare * emf_v)) / demand_.rated_a[i] : 1.0;
  }
  return draw;
}

std::vector<double> LoadingFinder::first_guess(Worst kind, std::size_t point, Guess guess) const {
  const std::size_t count = demand_.rated_a.size();
  const std::vector<double> draw = guessed_draw(guess);
  std::vector<double> worth(count, 1.0);
  if (kind != Worst::total_current) {
    std::vector<bool> on_path(count, false);
    for (std::size_t at = point; at != kNoParent; at = demand_.parent[at]) on_path[at] = true;
    // The battery's own fall counts for the device's voltage, not for the drop from its posts.
    const double source_ohm = kind == Worst::drop ? 0.0 : tree_.source_ohm;
    const double supply_ohm = source_ohm + tree_.supply_ohm;
    for (std::size_t i = 0; i < count; ++i) {  // parents stand before their children
      const double above = demand_.parent[i] == kNoParent ? supply_ohm : worth[demand_.parent[i]];
      worth[i] = on_path[i] ? loop_ohm_[i] + source_ohm : above;
    }
    worth[point] += tree_.points[point].tail_ohm;
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
void LoadingFinder::climb_corners(Worst kind, std::size_t point, Found& best) {
  for (int step = 0; step < kMostCorners; ++step) {
    const Loading next = spend_cap(gradient(kind, point, *best.at));
    if (next == best.at->loading) return;
    const Tried& there = tried(next);
    const double value = value_of(kind, point, there.solution);
    if (value <= best.value + kWorse) return;
    best = {&there, value};
  }
}

// Between corners: a resistive load is worth less the more of it is on, so amperes are moved
// from the least worthy load that is on to the worthiest that is not wholly on, as far as that
// gains. The two slopes at the ends of the move tell how far.
void LoadingFinder::exchange(Worst kind, std::size_t point, Found& best) {
  const std::size_t most_steps = 2 * demand_.rated_a.size() + 4;
  for (std::size_t step = 0; step < most_steps; ++step) {
    const std::vector<double>& worth = gradient(kind, point, *best.at);
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
    Found found{&end, value_of(kind, point, end.solution)};
    const double end_gain = gain_of(gradient(kind, point, end));   // `worth` is gone from here
    if (end_gain < 0.0) {
      const Tried& middle = tried(moved(most_a * gain / (gain - end_gain)));
      const double value = value_of(kind, point, middle.solution);
      if (value > found.value) found = {&middle, value};
    }
    if (found.value <= best.value + kWorse) return;
    best = found;
  }
}

LoadingFinder::Found LoadingFinder::climb(Worst kind, std::size_t point, const Loading& start) {
  const Tried& first = tried(start);
  Found best{&first, value_of(kind, point, first.solution)};
  climb_corners(kind, point, best);
  if (demand_.any_resistive) {
    exchange(kind, point, best);
    climb_corners(kind, point, best);
  }
  return best;
}

WorstCase LoadingFinder::at(Worst kind, std::size_t point, const Loading& loading) {
  const Tried& solved = tried(loading);
  return {&solved.loading, &solved.solution, value_of(kind, point, solved.solution)};
}

WorstCase LoadingFinder::worst(Worst kind, std::size_t point, const Loading* start, Search search) {
  Found best;
  if (demand_.all_at_once) {
    // More load lowers every voltage and raises the total, so all on is the worst there is. Only
    // the drop may fall again, where a resistive load draws less at the lower voltage.
    const Loading all(demand_.rated_a.size(), 1.0);
    if (kind == Worst::drop && demand_.any_resistive) {
      best = climb(kind, point, all);
    } else {
      const Tried& solved = tried(all);
      best = {&solved, value_of(kind, point, solved.solution)};
    }
  } else if (search == Search::quick) {
    const Tried& first = tried(start != nullptr ? *start : spend_cap(first_guess(kind, point, Guess::alone)));
    best = {&first, value_of(kind, point, first.solution)};
    climb_corners(kind, point, best);
  } else {
    best = climb(kind, point, spend_cap(first_guess(kind, point, Guess::alone)));
    // Loads whose current depends on voltage can have several best corners.
    const auto better_of = [&](const Loading& other) {
      const Found found = climb(kind, point, other);
      if (found.value > best.value) best = found;
    };
    if (demand_.any_varying) {
      better_of(spend_cap(first_guess(kind, point, Guess::whole_cap)));
      better_of(spend_cap(first_guess(kind, point, Guess::nothing_flows)));
      if (start != nullptr) better_of(*start);
      for (const std::size_t first : runaways_) {
        std::vector<double> worth = first_guess(kind, point, Guess::whole_cap);
        worth[first] = std::numeric_limits<double>::max();
        better_of(spend_cap(worth));
      }
    }
  }
  return {&best.at->loading, &best.at->solution, best.value};
}

}  // namespace sizing
