// Node voltages and branch currents of a netlist: a damped Newton iteration over the nodal
// equations, the linear step by star-mesh elimination (conductances only, no subtraction), so
// that a 10 Mohm meter beside milliohm joints costs no digits.
#pragma once

#include <string>
#include <vector>

#include "network/netlist.h"

namespace network {

enum class Outcome {
  solved,              // every node balances within kCurrentBalance
  no_operating_point,  // solved, but a load had to fold: it cannot run there. folded[] tells which
  not_converged,       // iteration limit; the last iterate is given
  invalid,             // a branch value is out of range; message names it
};
inline constexpr double kCurrentBalanceA = 1e-9;

struct Solution {
  Outcome outcome = Outcome::invalid;
  std::string message = "solve() has not run";
  std::vector<double> node_voltage_v;    // by NodeId; a floating part stands at 0 somewhere in it
  std::vector<double> branch_current_a;  // by BranchId, positive from `from` to `to`
  std::vector<bool> floating;            // by NodeId: no path to the reference
  std::vector<BranchId> folded;          // loads below their fold voltage
  double worst_imbalance_a = 0.0;
  int iterations = 0;
  [[nodiscard]] bool usable() const { return outcome == Outcome::solved || outcome == Outcome::no_operating_point; }
  [[nodiscard]] units::Volts between(NodeId plus, NodeId minus) const;
  [[nodiscard]] units::Amperes through(BranchId branch) const;
};
Solution solve(const Netlist& netlist);

}  // namespace network
