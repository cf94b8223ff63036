#include "network/radial.h"

#include <span>

#include "network/element_ohms.h"
#include "network/operating_point.h"

namespace network {

// The linear step on a tree. What hangs below a point takes a + b v from it; going out to in,
// each outlet folds its tail and its children into its parent, and the way back gives voltages.
class Radial::Sweep {
 public:
  Sweep(const Radial& radial, std::span<const double> fixed_siemens, double emf_v)
      : radial_(radial), fixed_siemens_(fixed_siemens), emf_v_(emf_v), below_(radial.points_.size()),
        splice_v_(radial.points_.size()) {}

  bool solve(const std::vector<double>& slope, const std::vector<double>& offset_a, std::vector<double>& voltage_v) {
    const std::size_t n = radial_.points_.size();
    below_.assign(n, {});
    Taken root{};
    for (std::size_t k = n; k-- > 0;) {
      const Point& outlet = radial_.points_[k];
      const Taken device{offset_a[k], slope[k] + fixed_siemens_[k]};
      Taken& here = below_[k];
      if (!add_behind(outlet.tail_ohm, device, here)) return false;
      Taken& parent = outlet.parent < 0 ? root : below_[static_cast<std::size_t>(outlet.parent)];
      if (!add_behind(outlet.path_ohm, here, parent)) return false;
    }
    const double root_divisor = 1.0 + root.siemens * radial_.root_ohm_;
    if (!(root_divisor > kSingular)) return false;
    next_total_a_ = (root.amperes + root.siemens * emf_v_) / root_divisor;
    const double block_v = emf_v_ - radial_.root_ohm_ * next_total_a_;
    for (std::size_t k = 0; k < n; ++k) {
      const Point& outlet = radial_.points_[k];
      const double from_v = outlet.parent < 0 ? block_v : splice_v_[static_cast<std::size_t>(outlet.parent)];
      splice_v_[k] = past(outlet.path_ohm, below_[k], from_v);
      voltage_v[k] = past(outlet.tail_ohm, {offset_a[k], slope[k] + fixed_siemens_[k]}, splice_v_[k]);
    }
    return true;
  }
  void accept(double fraction) { total_a_ += fraction * (next_total_a_ - total_a_); }
  [[nodiscard]] double total_a() const { return total_a_; }

 private:
  struct Taken {
    double amperes = 0.0;
    double siemens = 0.0;
  };
  static constexpr double kSingular = 1e-14;  // a load whose slope eats up its supply: no such point

  static bool add_behind(double ohm, const Taken& taken, Taken& sum) {
    const double divisor = 1.0 + ohm * taken.siemens;
    if (!(divisor > kSingular)) return false;
    sum.amperes += taken.amperes / divisor;
    sum.siemens += taken.siemens / divisor;
    return true;
  }
  static double past(double ohm, const Taken& taken, double from_v) {
    return from_v - ohm * (taken.amperes + taken.siemens * from_v) / (1.0 + ohm * taken.siemens);
  }

  const Radial& radial_;
  std::span<const double> fixed_siemens_;  // resistive loads, by outlet
  double emf_v_;
  std::vector<Taken> below_;
  std::vector<double> splice_v_;
  double next_total_a_ = 0.0;
  double total_a_ = 0.0;
};

namespace {

// Loads as they stand at one loading: laws for the iteration, plain conductances for the rest.
struct Plugged {
  std::vector<LoadLaw> laws;
  std::vector<double> siemens;
};

double part_on(const Loading& loading, std::size_t k) {
  return k < loading.size() && loading[k] > 0.0 ? loading[k] : 0.0;
}

template <class Outlets>
Plugged plug_in(const Outlets& outlets, const Loading& loading) {
  Plugged plugged{std::vector<LoadLaw>(outlets.size()), std::vector<double>(outlets.size())};
  for (std::size_t k = 0; k < outlets.size(); ++k) {
    const auto& outlet = outlets[k];
    const double on = part_on(loading, k);
    if (outlet.load.law == Law::resistance) {
      plugged.siemens[k] = on / outlet.load.value < 1.0 / kLargestOhm ? 0.0 : on / outlet.load.value;
    } else if (outlet.load.constant()) {
      plugged.laws[k] = outlet.load.part(on);
    }
  }
  return plugged;
}

}  // namespace

Radial::Radial(const Tree& tree) {
  // A steady current beside this circuit takes the same volts from the shared way whatever flows here.
  emf_v_ = tree.emf_v - tree.beside_a * (tree.source_ohm + tree.feeder_ohm);
  posts_v_ = tree.emf_v - tree.beside_a * tree.source_ohm;
  source_ohm_ = tree.source_ohm;
  root_ohm_ = source_ohm_ + tree.supply_ohm;
  points_.reserve(tree.points.size());
  for (const TreePoint& from : tree.points) {
    Point point;
    point.parent = from.parent == kNoPoint ? -1 : static_cast<std::ptrdiff_t>(from.parent);
    point.path_ohm = from.path_ohm;
    point.tail_ohm = from.tail_ohm;
    if (from.load != nullptr) {
      const units::Volts nominal(tree.nominal_v);
      point.load = load_law(*from.load, nominal).part(from.share);
      point.rated_a = circuit::rated_current(*from.load, nominal).number() * from.share;
    }
    const double upstream = point.parent < 0 ? root_ohm_ : points_[static_cast<std::size_t>(point.parent)].loop_ohm;
    point.loop_ohm = upstream + point.path_ohm;
    points_.push_back(point);
  }
}

RadialSolution Radial::solve(const Loading& loading) const {
  const Plugged plugged = plug_in(points_, loading);
  Sweep sweep(*this, plugged.siemens, emf_v_);
  detail::LoadSpace at;
  const detail::Walk walk = detail::find_operating_point(plugged.laws, at, sweep);

  RadialSolution solution;
  solution.iterations = walk.iterations;
  solution.folded.resize(points_.size());
  bool any_folded = false;
  for (std::size_t k = 0; k < points_.size(); ++k) {
    const LoadLaw& law = plugged.laws[k];
    if (plugged.siemens[k] > 0.0) at.current_a[k] = plugged.siemens[k] * at.voltage_v[k];
    solution.folded[k] = law.value > 0.0 && at.voltage_v[k] < law.fold_v;
    any_folded = any_folded || solution.folded[k];
  }
  solution.device_voltage_v = std::move(at.voltage_v);
  solution.load_current_a = std::move(at.current_a);
  solution.total_current_a = sweep.total_a();
  solution.battery_voltage_v = posts_v_ - source_ohm_ * solution.total_current_a;
  solution.outcome = !walk.converged ? Outcome::not_converged
                     : any_folded    ? Outcome::no_operating_point
                                     : Outcome::solved;
  return solution;
}

// One ampere drawn at `outlet` lowers the device voltage at m by as much as one ampere at m lowers
// it at `outlet`: resistances look the same from both ends. So one sweep, with the battery's
// voltage at zero, gives the whole row.
std::vector<double> Radial::sensitivity(std::size_t outlet, const Loading& loading, const RadialSolution& at) const {
  const std::size_t n = points_.size();
  const Plugged plugged = plug_in(points_, loading);
  Sweep sweep(*this, plugged.siemens, 0.0);
  std::vector<double> slope(n), offset_a(n), answer_v(n);
  offset_a[outlet] = 1.0;
  for (std::size_t k = 0; k < n; ++k) slope[k] = plugged.laws[k].slope_siemens(at.device_voltage_v[k]);
  if (!sweep.solve(slope, offset_a, answer_v)) {
    for (double& each : slope) each = each > 0.0 ? each : 0.0;
    if (!sweep.solve(slope, offset_a, answer_v)) return std::vector<double>(n, 0.0);
  }
  for (std::size_t k = 0; k < n; ++k) {
    const Point& own = points_[k];
    const double voltage_v = at.device_voltage_v[k];
    // Amperes taken for each rated ampere that is on.
    const double per_rated = own.rated_a > 0.0 ? own.load.current_a(voltage_v) / own.rated_a : 1.0;
    answer_v[k] *= -per_rated;
  }
  return answer_v;
}

units::Ohms Radial::loop_to(std::size_t point) const { return units::Ohms(points_[point].loop_ohm); }

}  // namespace network
