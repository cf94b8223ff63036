// The healthy branch as a tree of loop resistances, solved in one sweep out and one back per
// iteration: what sizing calls thousands of times. Same answer as build() + solve() within
// 1e-9 V (a test holds them together). Red and black carry the same current in a healthy
// branch, so each run is one loop resistance.
#pragma once

#include <cstddef>
#include <vector>

#include "circuit/circuit.h"
#include "network/branch_network.h"
#include "network/solve.h"

namespace network {

struct RadialSolution {
  Outcome outcome = Outcome::invalid;
  std::vector<double> outlet_voltage_v;   // at each device, by outlet index
  std::vector<double> load_current_a;     // by outlet index
  std::vector<bool> folded;               // by outlet index: the load cannot run there
  double total_current_a = 0.0;           // through the fuse
  double battery_voltage_v = 0.0;         // at the posts
  int iterations = 0;
};

class Radial {
 public:
  Radial(const circuit::Circuit& circuit, const Fitted& fitted, BatteryState battery);
  [[nodiscard]] RadialSolution solve(const Loading& loading) const;
  // How much the device voltage at `outlet` falls for each further ampere of rated load at
  // every outlet, around `at`: the gradient the worst loading climbs. V per rated A.
  [[nodiscard]] std::vector<double> sensitivity(std::size_t outlet, const Loading& loading,
                                                const RadialSolution& at) const;
  // Loop resistance from the battery's inside to the far side of an outlet's splice.
  [[nodiscard]] units::Ohms loop_to(std::size_t outlet) const;

 private:
  struct Outlet {
    std::ptrdiff_t parent = -1;   // index of the outlet that feeds it, less than its own; -1: the block
    double path_ohm = 0.0;        // loop from the parent's splice to the far side of its own
    double tail_ohm = 0.0;        // loop from there to the device
    Law law = Law::open;          // of the device at full loading; open: nothing fitted
    double value = 0.0;           // ohm, A or W by law
    double fold_v = 0.0;
    double rated_a = 0.0;         // at the nominal voltage
    double loop_ohm = 0.0;        // from the battery's inside to the far side of its splice
  };
  class Sweep;
  std::vector<Outlet> outlets_;   // by index in circuit.outlets: parents before children
  double emf_v_ = 0.0;
  double source_ohm_ = 0.0;       // inside the battery
  double root_ohm_ = 0.0;         // the same with the supply loop up to the clamps
};

}  // namespace network
