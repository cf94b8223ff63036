// The tree solved in one sweep out and one back per iteration: what sizing calls thousands of
// times. Same answer as build() + solve() within 1e-9 V (a test holds them together). Loadings,
// voltages and currents are by point of the tree: the places of load_slots().
#pragma once

#include <cstddef>
#include <vector>

#include "network/branch_network.h"
#include "network/load_law.h"
#include "network/solve.h"
#include "network/tree.h"

namespace network {

struct RadialSolution {
  Outcome outcome = Outcome::invalid;
  std::vector<double> device_voltage_v;
  std::vector<double> load_current_a;
  std::vector<bool> folded;               // the load cannot run there
  double total_current_a = 0.0;           // through the fuse
  double battery_voltage_v = 0.0;         // at the posts
  int iterations = 0;
};

class Radial {
 public:
  explicit Radial(const Tree& tree);
  Radial(const circuit::Circuit& circuit, const Fitted& fitted, BatteryState battery)
      : Radial(tree_of(circuit, fitted, battery)) {}
  [[nodiscard]] RadialSolution solve(const Loading& loading) const;
  // How much the device voltage at `point` falls for each further ampere of rated load at
  // every point, around `at`: the gradient the worst loading climbs. V per rated A.
  [[nodiscard]] std::vector<double> sensitivity(std::size_t point, const Loading& loading,
                                                const RadialSolution& at) const;
  // Loop resistance from the battery's inside to a point.
  [[nodiscard]] units::Ohms loop_to(std::size_t point) const;

 private:
  struct Point {
    std::ptrdiff_t parent = -1;   // less than its own; -1: the block
    double path_ohm = 0.0;
    double tail_ohm = 0.0;
    LoadLaw load{Law::open};      // of the device at full loading; open: nothing fitted
    double rated_a = 0.0;         // at the nominal voltage
    double loop_ohm = 0.0;        // from the battery's inside to here
  };
  class Sweep;
  std::vector<Point> points_;
  double emf_v_ = 0.0;            // less what the other circuits' current takes on the shared way
  double posts_v_ = 0.0;          // at the posts while this circuit draws nothing
  double source_ohm_ = 0.0;       // inside the battery
  double root_ohm_ = 0.0;         // the same with the supply loop up to the clamps
};

}  // namespace network
