#include "sizing/worst_outlets.h"

#include <algorithm>
#include <limits>
#include <numeric>

namespace sizing {
namespace {

using network::BatteryState;

// The most that may be lost at each outlet whatever is on within the cap: the cap is spent first
// on the outlet itself, then on what shares the most of its way, and every load is taken to draw
// as much as it ever can.
class Bounds {
 public:
  Bounds(const Demand& demand, LoadingFinder& finder) : demand_(demand), finder_(finder) {
    most_per_rated_ = most_per_rated();
    below_a_ = demand.rated_a;
    for (std::size_t i = below_a_.size(); i-- > 0;) {
      if (demand.parent[i] != kNoParent) below_a_[demand.parent[i]] += below_a_[i];
    }
    const network::Tree& tree = finder.tree();
    beside_drop_v_ = tree.beside_a * tree.feeder_ohm;
    beside_fall_v_ = tree.beside_a * (tree.source_ohm + tree.feeder_ohm);
  }
  // Posts to device.
  [[nodiscard]] double drop_v(std::size_t point) const {
    double left_a = demand_.cap_a;
    double sum_v = spend(left_a, demand_.rated_a[point], finder_.loop_ohm(point) + finder_.tree().points[point].tail_ohm);
    double counted_a = demand_.rated_a[point];
    for (std::size_t at = point; at != kNoParent && left_a > 0.0; at = demand_.parent[at]) {
      sum_v += spend(left_a, below_a_[at] - counted_a, finder_.loop_ohm(at));
      counted_a = below_a_[at];
    }
    sum_v += spend(left_a, demand_.total_a - counted_a, finder_.tree().supply_ohm);
    return sum_v * most_per_rated_ + beside_drop_v_;
  }
  // What may be lost from a point on the way to `searched` on to every other point, where none can lose
  // more than `searched` itself: the volts along a way only grow. By point; `lost_v` is what was found there.
  [[nodiscard]] std::vector<double> past_v(std::size_t searched, double lost_v) const {
    std::vector<double> until_v(demand_.rated_a.size(), -1.0);   // at the splice; below 0: not reached yet
    for (std::size_t at = searched; at != kNoParent; at = demand_.parent[at]) until_v[at] = lost_v;
    std::vector<double> most_v(until_v.size());
    const network::Tree& tree = finder_.tree();
    for (std::size_t i = 0; i < until_v.size(); ++i) {   // parents stand before their children
      if (until_v[i] < 0.0) {
        const double before_v = demand_.parent[i] == kNoParent ? lost_v : until_v[demand_.parent[i]];
        until_v[i] = before_v + std::min(below_a_[i], demand_.cap_a) * most_per_rated_ * tree.points[i].path_ohm;
      }
      most_v[i] = until_v[i] + std::min(demand_.rated_a[i], demand_.cap_a) * most_per_rated_ * tree.points[i].tail_ohm;
    }
    return most_v;
  }
  // The battery's own voltage to the device.
  [[nodiscard]] double fall_v(double drop_v) const {
    const double source_v = finder_.tree().source_ohm * std::min(demand_.cap_a, demand_.total_a) * most_per_rated_;
    return drop_v + source_v + beside_fall_v_ - beside_drop_v_;
  }

 private:
  static double spend(double& left_a, double rated_a, double ohm) {
    const double part_a = std::clamp(rated_a, 0.0, left_a);
    left_a -= part_a;
    return part_a * ohm;
  }
  // Amperes drawn for each rated one, at most.
  [[nodiscard]] double most_per_rated() const {
    if (!demand_.any_varying) return 1.0;
    const network::Tree& tree = finder_.tree();
    const WorstCase all = finder_.at(Worst::total_current, 0, network::Loading(demand_.rated_a.size(), 1.0));
    const bool runs = all.solution->outcome == network::Outcome::solved;
    double most = 1.0;
    for (std::size_t i = 0; i < demand_.rated_a.size(); ++i) {
      if (demand_.rated_a[i] <= 0.0) continue;
      const circuit::Load& load = *demand_.load[i];
      if (load.kind == circuit::LoadKind::resistive) most = std::max(most, tree.emf_v / tree.nominal_v);
      if (load.kind != circuit::LoadKind::constant_power) continue;
      const double fold_v = network::fold_voltage(load, units::Volts(tree.nominal_v)).number();
      const double least_v = runs ? std::max(fold_v, all.solution->device_voltage_v[i]) : fold_v;
      most = std::max(most, tree.nominal_v / least_v);
    }
    return most;
  }

  const Demand& demand_;
  LoadingFinder& finder_;
  double most_per_rated_ = 1.0;
  double beside_drop_v_ = 0.0;
  double beside_fall_v_ = 0.0;
  std::vector<double> below_a_;   // rated, at a point and beyond
};

// With many outlets the worst drop is found to within a thousandth or so of itself, and shown for the
// others to within a fiftieth of the limit; whether a limit holds is exact all the same.
constexpr std::size_t kFewOutlets = 25;
constexpr double kNearForJudging = 0.003;
constexpr double kNearForShowing = 0.02;

bool settled(const network::RadialSolution& solution) {
  return solution.outcome == network::Outcome::solved || solution.outcome == network::Outcome::no_operating_point;
}

class Finding {
 public:
  Finding(const Context& context, LoadingFinder& resting, LoadingFinder& low, WarmStart& warm, Search search)
      : context_(context), demand_(context.demand), resting_(resting), low_(low), warm_(warm), search_(search),
        count_(context.circuit.outlets.size()), resting_bounds_(demand_, resting), low_bounds_(demand_, low),
        searched_(count_, false), searched_low_(count_, false) {}

  OutletsFound run(Detail detail) {
    near_enough_ = count_ < kFewOutlets ? 0.0 : detail == Detail::every_outlet ? kNearForShowing : kNearForJudging;
    fill_with_bounds();
    const bool exact = !demand_.any_varying && !any_may_fold_;
    search_worst_drop(detail == Detail::every_outlet && !exact);
    search_lowest_voltage(detail == Detail::every_outlet && !exact);
    for (std::size_t i = 0; i < count_; ++i) {
      if (detail == Detail::judged && near_enough_ > 0.0 && found_.cannot_run) break;   // one is enough to refuse it
      if (may_fold_[i]) search_drop(i);
      if (may_fold_low_[i]) search_low(i);
    }
    pick_worst();
    return std::move(found_);
  }

 private:
  [[nodiscard]] std::size_t point(std::size_t outlet) const { return demand_.point_of_outlet[outlet]; }
  [[nodiscard]] double share(std::size_t i) const { return found_.results[i].drop_fraction / found_.results[i].drop_limit; }

  void fill_with_bounds() {
    found_.results.resize(count_);
    found_.low_v.resize(count_);
    may_fold_.assign(count_, false);
    may_fold_low_.assign(count_, false);
    needed_v_.resize(count_);
    const double nominal_v = context_.nominal_v();
    for (std::size_t i = 0; i < count_; ++i) {
      const circuit::Outlet& outlet = context_.circuit.outlets[i];
      OutletResult& result = found_.results[i];
      const double drop_v = resting_bounds_.drop_v(point(i));
      const double volts = resting_.tree().emf_v - resting_bounds_.fall_v(drop_v);
      found_.low_v[i] = low_.tree().emf_v - low_bounds_.fall_v(low_bounds_.drop_v(point(i)));
      result.id = outlet.id;
      result.drop_limit = context_.drop_limit(i);
      result.drop_fraction = drop_v / nominal_v;
      result.voltage = units::Volts(volts);
      result.voltage_low = units::Volts(found_.low_v[i]);
      needed_v_[i] = voltage_needed(outlet);
      for (const circuit::Device& device : outlet.devices) {
        if (device.load.rating <= 0.0 || device.load.kind == circuit::LoadKind::resistive) continue;
        const double fold_v = network::fold_voltage(device.load, units::Volts(nominal_v)).number();
        if (volts < fold_v) may_fold_[i] = true;
        if (found_.low_v[i] < fold_v && !device.load.minimum_voltage) may_fold_low_[i] = true;
      }
      any_may_fold_ = any_may_fold_ || may_fold_[i] || may_fold_low_[i];
    }
  }

  // From the outlet that may be worst down, while any other may pass what was found: by more than
  // `near_enough_` of it, or past the limit that what was found keeps.
  void search_worst_drop(bool all) {
    std::vector<std::size_t> order(count_);
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [this](std::size_t a, std::size_t b) { return share(a) > share(b); });
    double worst = -std::numeric_limits<double>::infinity();
    for (const std::size_t i : order) {
      const bool surely_same = share(i) <= 1.0 || worst > 1.0;
      const bool enough = share(i) <= worst || (surely_same && share(i) <= worst * (1.0 + near_enough_));
      if (all ? known_near_enough(i) : enough) continue;
      search_drop(i);
      worst = std::max(worst, share(i));
      tighten_drops(i);
    }
  }

  // To show an outlet, its bound and the most it was seen to lose may stand for what lies between.
  [[nodiscard]] bool known_near_enough(std::size_t i) const {
    if (near_enough_ <= 0.0 || seen_v_.empty()) return false;
    const OutletResult& result = found_.results[i];
    const double seen = seen_v_[point(i)] / context_.nominal_v();
    return result.drop_fraction - seen <= near_enough_ * result.drop_limit && result.drop_fraction <= result.drop_limit;
  }

  // What was found at one outlet bounds the others on its way, and those just off it.
  void tighten_drops(std::size_t i) {
    if (near_enough_ <= 0.0) return;
    const double nominal_v = context_.nominal_v();
    const std::vector<double> most_v = resting_bounds_.past_v(point(i), found_.results[i].drop_fraction * nominal_v);
    for (std::size_t j = 0; j < count_; ++j) {
      if (searched_[j]) continue;
      OutletResult& result = found_.results[j];
      const double fraction = most_v[point(j)] / nominal_v;
      if (fraction >= result.drop_fraction) continue;
      result.voltage += units::Volts((result.drop_fraction - fraction) * nominal_v);
      result.drop_fraction = fraction;
    }
    seen_v_ = resting_.most_lost_so_far();
  }

  void search_lowest_voltage(bool all) {
    std::vector<std::size_t> order;
    for (std::size_t i = 0; i < count_; ++i) {
      if (all || needed_v_[i]) order.push_back(i);
    }
    const auto spare = [this](std::size_t i) { return found_.low_v[i] - (needed_v_[i] ? needed_v_[i]->number() : 0.0); };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return spare(a) < spare(b); });
    double least = std::numeric_limits<double>::infinity();
    for (const std::size_t i : order) {
      const double near_v = near_enough_ * context_.nominal_v() * found_.results[i].drop_limit;
      const bool surely_same = spare(i) >= 0.0 || least < 0.0;
      const bool enough = spare(i) >= least || (surely_same && spare(i) >= least - near_v);
      // An outlet whose devices tell no lowest voltage is shown at its bound.
      if (all && near_enough_ > 0.0 && !needed_v_[i]) continue;
      if (enough && (!all || near_enough_ > 0.0)) continue;
      search_low(i);
      least = std::min(least, spare(i));
      tighten_lows(i);
    }
  }

  void tighten_lows(std::size_t i) {
    if (near_enough_ <= 0.0 || !needed_v_[i]) return;
    const double emf_v = low_.tree().emf_v;
    const std::vector<double> most_v = low_bounds_.past_v(point(i), emf_v - found_.low_v[i]);
    for (std::size_t j = 0; j < count_; ++j) {
      if (searched_low_[j]) continue;
      found_.low_v[j] = std::max(found_.low_v[j], emf_v - most_v[point(j)]);
      found_.results[j].voltage_low = units::Volts(found_.low_v[j]);
    }
  }

  void search_drop(std::size_t i) {
    if (searched_[i]) return;
    searched_[i] = true;
    const auto start = warm_.drop.find(i);
    const WorstCase drop = resting_.worst(Worst::drop, point(i), start != warm_.drop.end() ? &start->second : nullptr, search_);
    OutletResult& result = found_.results[i];
    result.drop_fraction = drop.value / context_.nominal_v();
    result.voltage = units::Volts(drop.solution->device_voltage_v[point(i)]);
    note_folds(*drop.solution, false);
    warm_.drop[i] = *drop.loading;
    flowing_a_[i] = drop.solution->total_current_a;
  }

  // Only a told lowest voltage is judged; for the others the loading of the worst drop is shown.
  void search_low(std::size_t i) {
    if (searched_low_[i]) return;
    searched_low_[i] = true;
    search_drop(i);
    const network::Loading& drop = warm_.drop[i];
    const auto start = warm_.low.find(i);
    const WorstCase low = needed_v_[i] ? low_.worst(Worst::low_voltage, point(i), start != warm_.low.end() ? &start->second : &drop, search_)
                                       : low_.at(Worst::low_voltage, point(i), drop);
    found_.low_v[i] = low.solution->device_voltage_v[point(i)];
    found_.results[i].voltage_low = units::Volts(found_.low_v[i]);
    note_folds(*low.solution, true);
    warm_.low[i] = *low.loading;
  }

  void note_folds(const network::RadialSolution& solution, bool low) {
    if (!settled(solution)) found_.unsettled = true;
    for (std::size_t j = 0; j < solution.folded.size(); ++j) {
      if (!solution.folded[j] || demand_.rated_a[j] <= 0.0) continue;
      // With the battery low, a told minimum voltage is judged by itself.
      if (low && demand_.load[j]->minimum_voltage) continue;
      const std::size_t outlet = demand_.outlet[j];
      if (!low) found_.results[outlet].runs = false;
      if (!found_.cannot_run || (found_.cannot_run_low && !low)) {
        found_.cannot_run = outlet;
        found_.cannot_run_low = low;
      }
    }
  }

  void pick_worst() {
    found_.worst = static_cast<std::size_t>(std::find(searched_.begin(), searched_.end(), true) - searched_.begin());
    if (found_.worst == count_) found_.worst = 0;
    for (std::size_t i = 0; i < count_; ++i) {
      if (searched_[i] && share(i) > share(found_.worst)) found_.worst = i;
    }
    search_drop(found_.worst);
    found_.worst_loading = warm_.drop[found_.worst];
    found_.worst_flowing_a = flowing_a_[found_.worst];
  }

  const Context& context_;
  const Demand& demand_;
  LoadingFinder& resting_;
  LoadingFinder& low_;
  WarmStart& warm_;
  Search search_;
  std::size_t count_;
  Bounds resting_bounds_;
  Bounds low_bounds_;
  std::vector<bool> searched_, searched_low_, may_fold_, may_fold_low_;
  std::vector<std::optional<units::Volts>> needed_v_;
  std::map<std::size_t, double> flowing_a_;
  double near_enough_ = 0.0;         // of a drop; 0 with few outlets, where each is searched to the last bit
  std::vector<double> seen_v_;       // by point, the most lost in any loading solved
  bool any_may_fold_ = false;
  OutletsFound found_;
};

}  // namespace

std::optional<units::Volts> voltage_needed(const circuit::Outlet& outlet) {
  std::optional<units::Volts> needed;
  for (const circuit::Device& device : outlet.devices) {
    if (device.load.rating <= 0.0 || !device.load.minimum_voltage) continue;
    if (!needed || *device.load.minimum_voltage > *needed) needed = device.load.minimum_voltage;
  }
  return needed;
}

OutletsFound find_outlets(const Context& context, LoadingFinder& resting, LoadingFinder& low, WarmStart& warm,
                          Search search, Detail detail) {
  return Finding(context, resting, low, warm, search).run(detail);
}

}  // namespace sizing
