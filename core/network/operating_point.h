// The damped Newton iteration over the loads of a network, whatever solves the linear part:
// solve.cpp brings star-mesh elimination, radial.cpp a tree sweep. Both walk the same path, so
// both find the same operating point. Private to this room.
//
// With the loads taken out the network is linear, so its state is told by the load voltages w
// and by the currents c those voltages belong to; the network is in balance when c is what the
// laws say, c = I(w). Half the power turned over in the resistances less what the batteries give
// plus the integral of each load's law is a function whose slope is that imbalance; it is
// bounded below, every step goes down it, and so the iteration cannot wander for ever.
//
// Start: loads off, so every voltage is at or above its answer. From there Newton on P/V comes
// down without passing the highest answer with every load on. When there is none, the step runs
// past a load's fold; it is cut at the first folds it meets, so that few loads fold at a time and
// the others get the chance to stay on.
#pragma once

#include <algorithm>
#include <cmath>
#include <span>
#include <vector>

#include "network/load_law.h"

namespace network::detail {

// Ties a load that takes a steady current, or none, into the matrix when nothing else does.
// Far below the 1e-7 S of a meter; it bends a step, never an answer.
inline constexpr double kLeakSiemens = 1e-12;
// Loads within this of their law count as settled; one more step is taken after that.
inline constexpr double kSettledA = 1e-11;

// A load across a bolted short keeps its voltage whatever it takes: its step is nothing but this.
inline constexpr double kVoltageRoundingV = 1e-13;

struct LoadSpace {
  std::vector<double> voltage_v, current_a, slope, offset_a, next_voltage_v;
  void resize(std::size_t n) {
    for (auto* each : {&voltage_v, &current_a, &slope, &offset_a, &next_voltage_v}) each->assign(n, 0.0);
  }
};

struct Walk {
  bool converged = false;
  int iterations = 0;
};

// Loads that may fold in one step: one of up to forty, more of many, or a long circuit that is much
// overloaded takes as many steps as it has loads.
inline std::size_t folds_at_once(std::size_t loads) { return 1 + loads / 40; }

// How far along the step the loads may go: to just under the first folds met on the way down.
inline double up_to_first_folds(std::span<const LoadLaw> laws, const LoadSpace& at) {
  std::vector<double> met;   // how far along each fold is met
  for (std::size_t k = 0; k < laws.size(); ++k) {
    const double just_under = laws[k].fold_v * (1.0 - 1e-9);
    const double from = at.voltage_v[k], to = at.next_voltage_v[k];
    if (laws[k].value > 0.0 && from >= laws[k].fold_v && to < just_under) met.push_back((from - just_under) / (from - to));
  }
  if (met.empty()) return 1.0;
  const std::size_t last = std::min(folds_at_once(laws.size()), met.size()) - 1;
  std::nth_element(met.begin(), met.begin() + static_cast<std::ptrdiff_t>(last), met.end());
  return std::min(1.0, met[last]);
}

// Halves the step until it goes down by a fair part of what its first slope promises. 0: nothing does.
inline double descend(std::span<const LoadLaw> laws, const LoadSpace& at, double fraction) {
  double promise_w = 0.0, noise_w = 0.0;
  for (std::size_t k = 0; k < laws.size(); ++k) {
    const double dv = at.next_voltage_v[k] - at.voltage_v[k];
    const double taken = laws[k].current_a(at.voltage_v[k]);
    promise_w += dv * (taken - at.current_a[k]);
    noise_w += 1e-14 * std::abs(dv) * (std::abs(taken) + std::abs(at.current_a[k])) +
               kVoltageRoundingV * std::abs(taken - at.current_a[k]);
  }
  for (int halving = 0; halving < 60; ++halving, fraction *= 0.5) {
    double change_w = 0.0;
    for (std::size_t k = 0; k < laws.size(); ++k) {
      const double dv = at.next_voltage_v[k] - at.voltage_v[k];
      const double di = at.slope[k] * at.next_voltage_v[k] + at.offset_a[k] - at.current_a[k];
      change_w += laws[k].content_w(at.voltage_v[k], at.voltage_v[k] + fraction * dv) -
                  fraction * dv * (at.current_a[k] + 0.5 * fraction * di);
    }
    if (change_w <= 1e-4 * fraction * promise_w + noise_w * fraction) return fraction;
  }
  return 0.0;
}

inline bool is_settled(double taken_a, double current_a) {
  return std::abs(taken_a - current_a) <= kSettledA * (1.0 + std::abs(taken_a));
}

// Would the whole step leave every load at its law?
inline bool all_settled(std::span<const LoadLaw> laws, const LoadSpace& at) {
  for (std::size_t k = 0; k < laws.size(); ++k) {
    const double next_v = at.next_voltage_v[k];
    if (!is_settled(laws[k].current_a(next_v), at.slope[k] * next_v + at.offset_a[k])) return false;
  }
  return true;
}

// Linear: bool solve(slope, offset_a, voltage_v) answers the network with each load taking
// offset + slope * v, false when that is not positive definite; accept(fraction) keeps that
// part of the step. Loads of value 0 take nothing and their voltage is still told.
template <class Linear>
Walk find_operating_point(std::span<const LoadLaw> laws, LoadSpace& at, Linear& linear) {
  const std::size_t n = laws.size();
  at.resize(n);
  for (std::size_t k = 0; k < n; ++k) at.slope[k] = laws[k].value > 0.0 ? kLeakSiemens : 0.0;
  if (!linear.solve(at.slope, at.offset_a, at.next_voltage_v)) return {};
  linear.accept(1.0);
  at.voltage_v = at.next_voltage_v;
  for (std::size_t k = 0; k < n; ++k) at.current_a[k] = at.slope[k] * at.voltage_v[k];
  if (n == 0) return {true, 1};

  const int few_folds_at_a_time = 50 + 2 * static_cast<int>(n);
  const int limit = 2 * few_folds_at_a_time + 100;
  bool settled = false;
  for (int iteration = 1; iteration <= limit; ++iteration) {
    bool all_within = true;
    for (std::size_t k = 0; k < n; ++k) {
      const double taken = laws[k].current_a(at.voltage_v[k]);
      all_within = all_within && is_settled(taken, at.current_a[k]);
      at.slope[k] = laws[k].slope_siemens(at.voltage_v[k]);
      at.offset_a[k] = taken - at.slope[k] * at.voltage_v[k];
    }
    if (all_within && settled) return {true, iteration};
    settled = all_within;
    if (!linear.solve(at.slope, at.offset_a, at.next_voltage_v)) {
      for (std::size_t k = 0; k < n; ++k) {
        if (laws[k].value <= 0.0) continue;
        at.slope[k] = std::max(at.slope[k], kLeakSiemens);
        at.offset_a[k] = laws[k].current_a(at.voltage_v[k]) - at.slope[k] * at.voltage_v[k];
      }
      if (!linear.solve(at.slope, at.offset_a, at.next_voltage_v)) return {settled, iteration};
    }
    double fraction = 1.0;
    if (settled) {
      if (!all_settled(laws, at)) return {true, iteration};  // worse: it stands where it stood
    } else {
      if (iteration <= few_folds_at_a_time) fraction = up_to_first_folds(laws, at);
      fraction = descend(laws, at, fraction);
      if (fraction == 0.0) return {false, iteration};
    }
    for (std::size_t k = 0; k < n; ++k) {
      const double next_a = at.slope[k] * at.next_voltage_v[k] + at.offset_a[k];
      at.voltage_v[k] += fraction * (at.next_voltage_v[k] - at.voltage_v[k]);
      at.current_a[k] += fraction * (next_a - at.current_a[k]);
    }
    linear.accept(fraction);
  }
  return {false, limit};
}

}  // namespace network::detail
