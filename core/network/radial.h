// The healthy branch as a tree of loop resistances, solved in one sweep out and one back per
// iteration: what sizing calls thousands of times. Same answer as build() + solve() within
// 1e-9 V (a test holds them together). Red and black carry the same current in a healthy
// branch, so each run is one loop resistance.
#pragma once

#include <string>
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
  // (filled in by the implementation)
};

}  // namespace network
